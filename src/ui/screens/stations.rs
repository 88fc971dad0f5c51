//! Every station of the route, to go to.

use leptos::prelude::*;

use crate::present::{self, Draft, Purpose, Stop};
use crate::session::{Feature, SessionId, Station};
use crate::ui::parts::bar::Bar;
use crate::ui::state::State;
use crate::ui::way::{Sheet, go, sheet_address};

/// The list of stations by feature.
#[component]
pub fn Stations(id: SessionId) -> impl IntoView {
    let state = State::get();
    let stops = state.peek(present::route).unwrap_or_default();
    let here = state.draft(&id).map(|draft| draft.station);
    let address = sheet_address(&id, Sheet::Route);
    let of = id.clone();
    let visit = Callback::new(move |(station, is_read): (Station, bool)| {
        let draft = Draft {
            station,
            purpose: if is_read {
                Purpose::Replace
            } else {
                Purpose::Add
            },
            whole: false,
            typed: String::new(),
        };
        state.keep_draft(&of, &draft);
        go(&address);
    });
    let rows: Vec<AnyView> = stops
        .chunk_by(|a, b| Feature::of(a.station) == Feature::of(b.station))
        .map(|stops| of_feature(stops, here, visit))
        .collect();
    view! {
        <Bar id here=Sheet::Stations/>
        <div class="sheet">
            <h1>"Go to"</h1>
            {rows}
        </div>
    }
}

fn of_feature(stops: &[Stop], here: Option<Station>, visit: Callback<(Station, bool)>) -> AnyView {
    let title = stops
        .first()
        .map(|stop| present::feature(Feature::of(stop.station)));
    let row = |stop: &Stop| {
        let (station, is_read) = (stop.station, stop.is_read());
        let current = (here == Some(station)).then_some("step");
        let read = if is_read { "yes" } else { "no" };
        let values = if is_read {
            stop.values.join(", ")
        } else {
            "open".to_owned()
        };
        view! {
            <li>
                <button type="button" data-read=read aria-current=current on:click=move |_| visit.run((station, is_read))>
                    <span>{present::place(station)}</span>
                    <b>{values}</b>
                </button>
            </li>
        }
        .into_any()
    };
    let rows: Vec<AnyView> = stops.iter().map(row).collect();
    view! { <section class="stops"><h2>{title}</h2><ul>{rows}</ul></section> }.into_any()
}
