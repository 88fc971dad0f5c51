//! Native tests of the pure half and of the house itself. One binary, so that
//! it links once.
//!
//! The helpers are in `make` (sessions by hand), `generators` (sessions by
//! chance), `golden` (tables with their sources in `tests/golden`),
//! `published` (figures of uncertainty out of them), `remedy_make` (measured
//! parts by chance) and `repository` (its own files).
#![cfg(not(target_arch = "wasm32"))]
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

mod generators;
mod given;
mod golden;
mod make;
mod newer;
mod plan_chance;
mod plan_make;
mod plan_naive;
mod plan_naive_rows;
mod published;
mod remedy_make;
mod repository;

mod entered;
mod entered_deviation;
mod exact;
mod fits;
mod form;
mod form_barrel;
mod form_displacement;
mod form_lobes;
mod form_oval;
mod form_run_out;
mod form_shape;
mod nist;
mod show;
mod standard_fits;
mod sure;
mod verdict;

mod uncertainty_conformity;
mod uncertainty_fits;
mod uncertainty_gum;
mod uncertainty_laws;
mod uncertainty_samples;
mod uncertainty_student;
mod uncertainty_temperature;

mod plan_bad;
mod plan_brute;
mod plan_laws;
mod plan_scenes;
mod plan_tables;
mod plan_view;
mod remedy_bores;
mod remedy_pairing;
mod remedy_shells;
mod remedy_sizes;
mod remedy_sizes_laws;

mod document;
mod merge;
mod session;

mod archive;
mod archive_bad;
mod archive_flips;
mod archive_gauges;
mod archive_gauges_bad;
mod archive_records;
mod charts;
mod conditions;
mod shelf;

mod evidence;
mod evidence_laws;
mod facts;

mod advice;
mod amounts;
mod assess;
mod features;
mod oil;
mod report;
mod report_plan;
mod shapes;
mod slips;

mod burst;
mod face;
mod fender_screen;
mod findings;
mod gauge_laws;
mod gauges;
mod given_form;
mod guide;
mod how_sure;
mod instrument;
mod instrument_drawing;
mod instrument_quiz;
mod instrument_words;
mod keypad;
mod limits_form;
mod looks;
mod more_kinds;
mod phone;
mod preview;
mod route;
mod route_order;
mod set_up;
mod spoken;
mod what_to_do;
mod what_to_do_bad;

mod drawings;
mod drawn;
mod drawn_lines;
mod rooms;
mod tidy;
