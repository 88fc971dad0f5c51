//! How sure each value of a feature is, and where the doubt comes from.

use crate::present::{DoubtRow, SureView};
use crate::ui::parts::el::{El, el};
use crate::ui::parts::press::para;

/// How sure what decides is and why, each folded.
pub fn how_sure(views: Vec<SureView>) -> El {
    let mut section = el("div", "how-sure").id("how-sure");
    for view in views {
        let title = format!("How sure: {}", view.title);
        let mut fold = el("details", "more").with(el("summary", "").with(title));
        for told in view.told {
            fold = fold.with(para("", told));
        }
        section = section.with(fold.with(doubts(view.rows)));
    }
    section
}

/// Where a doubt comes from, as a table.
fn doubts(rows: Vec<DoubtRow>) -> El {
    let mut head = el("tr", "");
    for title in ["Doubt from", "Share", "±", "Degrees of freedom"] {
        head = head.with(el("th", "").set("scope", "col").with(title));
    }
    let mut body = el("tbody", "");
    for row in rows {
        let source = el("th", "").set("scope", "row").with(row.source);
        let mut line = el("tr", "").with(source);
        for cell in [row.share, row.doubt, row.dof] {
            line = line.with(el("td", "number").with(cell));
        }
        body = body.with(line);
    }
    el("table", "doubts")
        .with(el("thead", "").with(head))
        .with(body)
}
