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
    let visit = {
        let id = id.clone();
        Callback::new(move |stop: Stop| {
            let purpose = if stop.is_read() { Purpose::Replace } else { Purpose::Add };
            let draft = Draft {
                station: stop.station,
                purpose,
                whole: false,
                typed: String::new(),
            };
            state.keep_draft(&id, &draft);
            go(&address);
        })
    };
    let rows = stops
        .chunk_by(|a, b| Feature::of(a.station) == Feature::of(b.station))
        .map(|stops| view! { <OfFeature stops=stops.to_vec() here visit/> })
        .collect_view();
    view! {
        <Bar id here=Sheet::Stations/>
        <div class="sheet">
            <h1>"Go to"</h1>
            {rows}
        </div>
    }
}

#[component]
fn OfFeature(stops: Vec<Stop>, here: Option<Station>, visit: Callback<Stop>) -> impl IntoView {
    let title = stops.first().map(|stop| present::feature(Feature::of(stop.station)));
    let rows = stops.into_iter().map(|stop| {
        let current = (here == Some(stop.station)).then_some("step");
        let read = if stop.is_read() { "yes" } else { "no" };
        let values = if stop.is_read() { stop.values.join(", ") } else { "open".to_owned() };
        let place = present::place(stop.station);
        view! {
            <li>
                <button type="button" data-read=read aria-current=current on:click=move |_| visit.run(stop.clone())>
                    <span>{place}</span>
                    <b>{values}</b>
                </button>
            </li>
        }
    });
    view! {
        <section class="stops">
            <h2>{title}</h2>
            <ul>{rows.collect_view()}</ul>
        </section>
    }
}
