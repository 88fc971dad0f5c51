//! Charts on the page: the geometry on a canvas at the pixels of the device,
//! the words set over it, the numbers in a table beside it.

use std::cell::Cell;
use std::rc::Rc;

use leptos::prelude::*;
use plotters_canvas::CanvasBackend;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, HtmlCanvasElement, ResizeObserver};

use super::el::{El, el};
use super::press::para;
use crate::device::page;
use crate::present::{Anchor, Chart, INKS, Picture, Table};

/// A chart with its notes and its table; it is drawn by [`draw_all`], which
/// takes the charts in the order in which they stand on the page.
pub fn figure(chart: &Chart) -> El {
    let name = [chart.name.of.as_str(), &chart.name.what].join(": ");
    let title = el("figcaption", "").with(chart.name.what.clone());
    let mut figure = el("figure", "chart").id("chart").with(title);
    if chart.is_drawn() {
        let canvas = el("canvas", "").set("role", "img").set("aria-label", &name);
        figure = figure.with(el("div", "plot").with(canvas));
    }
    for note in &chart.notes {
        figure = figure.with(para("", note.clone()));
    }
    if chart.table.rows.is_empty() {
        return figure;
    }
    let fold = el("details", "more")
        .with(el("summary", "").with("As a table"))
        .with(table(&name, &chart.table));
    figure.with(fold)
}

fn table(name: &str, numbers: &Table) -> El {
    let mut head = el("tr", "");
    for title in &numbers.head {
        // What heads the names of the rows needs no word.
        head = head.with(match title.is_empty() {
            true => el("td", ""),
            false => el("th", "").set("scope", "col").with(*title),
        });
    }
    let mut body = el("tbody", "");
    for row in &numbers.rows {
        let mut line = el("tr", "");
        for (place, cell) in row.iter().enumerate() {
            let cell = cell.clone();
            line = line.with(if place == 0 {
                el("th", "").set("scope", "row").with(cell)
            } else {
                el("td", "").with(cell)
            });
        }
        body = body.with(line);
    }
    el("table", "")
        .set("aria-label", name)
        .with(el("thead", "").with(head))
        .with(body)
}

/// Draws these charts once they stand on the page, again whenever one of them
/// gets another width or is unfolded, at most once a frame and after the
/// frame; and all of them, unfolded, in the inks of paper before it is printed.
///
/// The theme is chosen on another screen, and this one is made anew after it.
pub fn draw_all(charts: Vec<Chart>) {
    let charts: Rc<Vec<Chart>> = Rc::new(charts.into_iter().filter(Chart::is_drawn).collect());
    let is_due = Rc::new(Cell::new(false));
    let drawn = charts.clone();
    let changed: Box<dyn FnMut()> = Box::new(move || {
        if is_due.replace(true) {
            return;
        }
        let (drawn, is_due) = (drawn.clone(), is_due.clone());
        request_animation_frame(move || {
            is_due.set(false);
            draw(&drawn, false);
        });
    });
    let changed = Closure::wrap(changed);
    let observer = ResizeObserver::new(changed.as_ref().unchecked_ref()).ok();
    let held = StoredValue::new_local(Some((observer, changed)));
    request_animation_frame(move || {
        held.try_with_value(|held| {
            let observer = held.as_ref().and_then(|(observer, _)| observer.as_ref());
            for plot in page::all(".plot") {
                observer
                    .map(|observer| observer.observe(&plot))
                    .unwrap_or_default();
            }
        });
    });
    let on_paper = charts.clone();
    let before = window_event_listener_untyped("beforeprint", move |_| {
        page::set("paper", "yes");
        for fold in page::all("details:not([open])") {
            let _ = fold.set_attribute("data-folded", "");
            let _ = fold.set_attribute("open", "");
        }
        draw(&on_paper, true);
    });
    let after = window_event_listener_untyped("afterprint", move |_| {
        page::set("paper", "no");
        for fold in page::all("details[data-folded]") {
            let _ = fold.remove_attribute("data-folded");
            let _ = fold.remove_attribute("open");
        }
        draw(&charts, true);
    });
    on_cleanup(move || {
        before.remove();
        after.remove();
        held.try_update_value(|held| {
            if let Some((Some(observer), _)) = held.take() {
                observer.disconnect();
            }
        });
    });
}

/// Draws what is seen, in other colours or not drawn at this width yet. All widths are read
/// before the first is drawn, or each would be measured anew.
fn draw(charts: &[Chart], anew: bool) {
    let plots = page::all(".plot");
    let sixteenths = page::pixel_sixteenths().max(2 * 16);
    let type_size = page::type_size();
    let due = plots.iter().zip(charts).filter_map(|(plot, chart)| {
        // What is folded away has a width all the same.
        let is_folded = plot.closest("details:not([open])").ok()?.is_some();
        let width = if is_folded { 0 } else { plot.client_width() };
        let canvas: HtmlCanvasElement = plot.first_element_child()?.dyn_into().ok()?;
        let picture = (0 < width).then(|| chart.lay_out(width, type_size))?;
        let is_new = anew || (canvas.width(), canvas.height()) != picture.size(sixteenths);
        is_new.then_some((plot, canvas, picture))
    });
    for (plot, canvas, picture) in due.collect::<Vec<_>>() {
        let (width, height) = picture.size(sixteenths);
        canvas.set_width(width);
        canvas.set_height(height);
        let inks: [_; INKS] = page::inks(&canvas);
        if let Some(backend) = CanvasBackend::with_canvas_object(canvas) {
            // Without a picture the table still tells the numbers.
            let _ = picture.draw(backend, sixteenths, inks);
        }
        let _ = set_words(plot, &picture);
    }
}

/// Sets the words over a picture, in place of those that were there.
fn set_words(plot: &Element, picture: &Picture) -> Option<()> {
    if let Some(old) = plot.query_selector("svg").ok()? {
        old.remove();
    }
    let sheet = page::drawn("svg", "words")?;
    let size = [picture.width, picture.height].map(|side| side.to_string());
    let view = ["0 0", &size[0], &size[1]].join(" ");
    sheet.set_attribute("viewBox", &view).ok()?;
    sheet.set_attribute("aria-hidden", "true").ok()?;
    for word in &picture.words {
        let text = page::drawn("text", if word.is_title { "title" } else { "" })?;
        let (x, y) = word.at;
        text.set_attribute("x", &x.to_string()).ok()?;
        text.set_attribute("y", &y.to_string()).ok()?;
        let anchor = match word.anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        text.set_attribute("text-anchor", anchor).ok()?;
        text.set_text_content(Some(&word.text));
        sheet.append_child(&text).ok()?;
    }
    plot.append_child(&sheet).ok()?;
    Some(())
}
