//! Assessment → what is shown. Every word, number and order on a screen is
//! made here and tested natively; screens only place it.

mod bench;
mod burst;
mod chart;
mod draft;
mod drawing;
mod fender;
mod fender_entry;
mod fender_view;
mod finding_row;
mod finding_words;
mod findings;
mod first;
mod gauges;
mod given_form;
mod help;
pub mod instrument;
mod keypad;
mod kinds;
mod limits_form;
mod look_advice;
mod look_words;
mod looks;
mod mark;
mod mixing;
mod new_session;
mod pace;
mod phone;
mod place_words;
mod plan_parts;
mod plan_words;
mod plausible;
mod preview;
mod route;
mod shop_words;
mod size_words;
mod slip_words;
mod spoken;
mod sure;
mod touches;
mod volume_words;
mod what_to_do;
mod wording;

pub use bench::{BenchRow, Filed, bench_row, file_name, kept_words, unfiled};
pub use burst::{Burst, Typist, gauge_typed};
pub use chart::{Anchor, Chart, HOW_TO_READ, INKS, Ink, Picture, Shape, Table, Word};
pub use draft::Draft;
pub use drawing::{Drawing, Spot, State as SpotState, drawing};
pub use fender::Fender;
pub use fender_entry::{entry, keypad};
pub use fender_view::{LastRead, RouteView, last_read, view};
pub use finding_words::COMMON_RULES;
pub use findings::{FeatureView, FindingRow, FindingsView, KindView, LimitRow, findings};
pub use first::{FirstPart, FirstView, KEPT, Practice, first_view};
pub use gauges::{
    GaugeRow, GaugesView, SetForm, SetOn, UseRow, add_gauge, check_again, describe_gauge, gauges,
    study, use_gauge,
};
pub use given_form::{GivenRow, given_edit, given_form};
pub use help::{
    NO_FINDINGS, NO_GAUGE_FOR_IT, NO_GAUGES, NO_PLAN, NOTHING_ASKED, PLAN_RESTS, WHY_FIVE_TIMES,
    WORDS, not_opened, nothing_read, why_set,
};
pub use keypad::{Face, Key, Keypad, Pressed, Reads};
pub use kinds::{KindGroup, KindRow, asked, kinds};
pub use limits_form::{LimitsForm, LimitsRow};
pub use look_advice::{BEFORE_STRIP_DOWN, BY_TEST, aftermath};
pub use looks::{
    CauseRow, LookGroup, LookRow, LooksView, Said, SpotRow, look_answer, looks, looks_at,
    looks_view, next_spot, nothing_else, open_looks, spot_name, spots,
};
pub use mark::{Mark, comparison_words, mark, verdict_mark, verdict_words};
pub use mixing::{MixingChoice, MixingView};
pub use new_session::{BLOCKS, CLIMATES, CRANKS, NewSession, PISTONS};
pub use pace::length_of;
pub use phone::{Choice, PHONE};
pub use plan_parts::{PartRow, Row3};
pub use plan_words::{PLAN_CAUTION, feature_of};
pub use plausible::{about, plausible};
pub use preview::{Preview, preview};
pub use route::{Progress, Purpose, Stop, Why, next_open, other_places, progress, route};
pub use size_words::SizesView;
pub use slip_words::{slip_words, slips};
pub use spoken::{aloud, spoken};
pub use sure::{DoubtRow, SureView};
pub use touches::Touches;
pub use what_to_do::{BillRow, Maybe, Next, Other, PlanLine, PlanView, fix, set_price, what_to_do};
pub use wording::{
    PLAIN_ROUTE_BLIND, PROVED_AT_95, arrangement, bound, climate, counting, direction, feature,
    first_end, gauge, gauge_kind, kind, kind_plural, level, machine_use, material, number, place,
    quantity, route_choice, sense, set_on, station,
};
