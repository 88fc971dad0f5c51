//! What a reading looks like, in one line.

use super::wording;
use crate::session::{Session, Station};
use crate::slip::{Looks, NewNominal, Slip, review};

/// What a reading looks like, and what it would be without the slip.
#[must_use]
pub fn slip_words(slip: &Slip) -> String {
    let looks = match slip.looks {
        Looks::Turn => "one turn of the thimble off".to_owned(),
        Looks::SleeveLines => "lines on the sleeve miscounted".to_owned(),
        Looks::NumberLine => "one number on the sleeve off".to_owned(),
        Looks::Range => "read with a micrometer of the next range".to_owned(),
        Looks::Wrap => "the thimble line beside the right one".to_owned(),
        Looks::Digits => "two digits changed places".to_owned(),
        Looks::Key => "the key beside the right one".to_owned(),
        Looks::Sign => "plus for minus".to_owned(),
        Looks::Unit => "inches for millimetres, or the other way about".to_owned(),
        Looks::Elsewhere(kind) => {
            format!("the size of a {}", wording::kind(kind).to_ascii_lowercase())
        }
        Looks::Neighbour(feature) => {
            format!(
                "the size of {}",
                wording::feature(feature).to_ascii_lowercase()
            )
        }
        Looks::Copies => "the same as all the readings before it".to_owned(),
        Looks::Impossible => "a size it cannot have".to_owned(),
        Looks::Far => "far from everything around it".to_owned(),
    };
    match &slip.would_be {
        Some(would_be) => format!("Looks like {looks}: without that, {would_be}."),
        None => format!("Looks like {looks}."),
    }
}

/// What all of a kind seem to have been machined to.
pub(super) fn machined_words(to: &NewNominal) -> String {
    let size = &to.size;
    if to.witnessed {
        format!("All that were read seem to be made to {size}, and a caliper says the same.")
    } else {
        format!(
            "All that were read seem to be machined to {size}, or to be one turn of the thimble \
             off: look for a mark on a crown or shell, or read one with a caliper."
        )
    }
}

/// The standing readings that look like slips and that nobody stood by, each
/// with its place and what it looks like.
#[must_use]
pub fn slips(session: &Session) -> Vec<(Station, String)> {
    let found = review(session);
    let told = found.iter().filter_map(|(id, slip)| {
        let reading = session.readings.get(id)?;
        let place = wording::station(reading.station);
        let told = format!("{place}, {}: {}", reading.entered, slip_words(slip));
        Some((reading.station, told))
    });
    told.collect()
}
