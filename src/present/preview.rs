//! What taking in a file would do, before anything is stored.

use super::slip_words::slips;
use crate::archive::Incoming;
use crate::session::Session;

/// What a file holds, and what of it is new here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Preview {
    /// The session's name.
    pub name: String,
    /// Sentences, the most important first.
    pub lines: Vec<String>,
    /// A warning to be read first.
    pub warning: Option<String>,
    /// True if taking it in would change nothing.
    pub nothing_new: bool,
}

/// How many likely slips are told one by one.
const SLIPS_TOLD: usize = 5;

/// Compares a file with what is here of the same session.
#[must_use]
pub fn preview(incoming: &Incoming, here: Option<&Session>) -> Preview {
    let theirs = &incoming.session;
    let standing = theirs.standing().count();
    let cylinders = theirs.cylinders();
    let mut lines = vec![format!(
        "{cylinders} cylinder{}, {standing} standing reading{}, {} struck.",
        plural(cylinders.into()),
        plural(standing),
        theirs.readings.len() - standing
    )];
    let mut nothing_new = false;
    match here {
        None => lines.push("This session is not on this device yet.".to_owned()),
        Some(ours) => {
            let mut merged = ours.clone();
            merged.merge(theirs);
            let gained = merged.beyond(ours);
            let new = gained.readings.keys();
            let new = new.filter(|id| !ours.readings.contains_key(id)).count();
            let restruck = gained.readings.len() - new;
            let set_up = gained.fields.len();
            nothing_new = gained.is_empty();
            lines.push(if nothing_new {
                "All of it is here already: nothing would change.".to_owned()
            } else {
                format!(
                    "Here already; {new} reading{} would be added, {restruck} struck or put \
                     back, {set_up} set-up field{} or limit{} changed.",
                    plural(new),
                    plural(set_up),
                    plural(set_up),
                )
            });
        }
    }
    let slips = slips(theirs);
    if !slips.is_empty() {
        let count = slips.len();
        let told = slips.into_iter().take(SLIPS_TOLD).map(|(_, told)| told);
        lines.push(format!("{count} reading{} may be slips.", plural(count)));
        lines.extend(told);
    }
    if !theirs.extras.is_empty() {
        let count = theirs.extras.len();
        lines.push(format!(
            "{count} record{} of a newer version {} kept and handed on, but not used.",
            plural(count),
            if count == 1 { "is" } else { "are" }
        ));
    }
    Preview {
        name: theirs.name(),
        lines,
        warning: (!incoming.untouched).then(|| {
            "The file was changed after it was written. Compare its readings with your notes \
             before you use them."
                .to_owned()
        }),
        nothing_new,
    }
}

const fn plural(count: usize) -> &'static str {
    if count == 1 { "" } else { "s" }
}
