//! What the cylinders displace, and how far the charge is compressed.

use super::Advice;
use crate::form::{Volume, compression_ratio};
use crate::quantity::Exact;
use crate::remedy::{BoreWork, PistonWork, TopWay};
use crate::session::{Dimension, FieldKey, Kind, Session, Space};

/// Displacement and compression, with the bores as they were made and as the
/// plan finishes them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Volumes {
    /// What all cylinders displace, before and after.
    pub displaced: [Volume; 2],
    /// The compression ratio in thousandths, before and after; `None` where
    /// something is missing for it, or nothing is left above the piston.
    pub ratios: Option<[i128; 2]>,
    /// What nobody gave of that which the ratio hangs on.
    pub missing: Vec<FieldKey>,
    /// Whether the finished bore is wider than the bore of the head gasket.
    pub gasket_is_small: bool,
}

/// The volumes of a session; `None` where no stroke was given, or the size
/// of the bores is not known.
#[must_use]
pub fn volumes(session: &Session, advice: &Advice) -> Option<Volumes> {
    let length = |name| session.length(name).map(|length| length.size().into());
    let volume = |name| {
        let volume = session.volume(name)?;
        Some(Volume::cubic_millimetres(volume.get()))
    };
    let stroke: Exact = length(Dimension::Stroke)?;
    let job = &advice.job;
    let before = session.nominal(Kind::Bore);
    let before = before.map_or(job.standard, Exact::from);
    if before <= Exact::ZERO {
        return None;
    }
    let after = match advice.plan.way.top {
        Some(
            TopWay {
                bores: BoreWork::Oversize(size),
                ..
            }
            | TopWay {
                bores: BoreWork::Sleeves | BoreWork::NewBlock,
                pistons: PistonWork::New(size),
                ..
            },
        ) => job.stock.get(size).map(|stock| job.boring().finish(stock)),
        _ => None,
    };
    let bores = [before, after.unwrap_or(before)];
    let swept = |bore| Volume::cylinder(bore, stroke);
    let chamber = volume(Space::Chamber);
    let crown = volume(Space::PistonTop);
    let gasket_bore: Option<Exact> = length(Dimension::GasketBore);
    let gasket = length(Dimension::GasketThickness);
    let deck = session.deck_clearance().map(|deck| deck.deviation().into());
    let ratios = bores.map(|bore| {
        let gasket = Volume::cylinder(gasket_bore?, gasket?);
        let above = chamber? + crown? + gasket + Volume::cylinder(bore, deck?);
        compression_ratio(swept(bore), above)
    });
    let needed = [
        (chamber.is_some(), FieldKey::Volume(Space::Chamber)),
        (crown.is_some(), FieldKey::Volume(Space::PistonTop)),
        (
            gasket_bore.is_some(),
            FieldKey::Length(Dimension::GasketBore),
        ),
        (
            gasket.is_some(),
            FieldKey::Length(Dimension::GasketThickness),
        ),
        (deck.is_some(), FieldKey::DeckClearance),
    ];
    let missing = needed.into_iter().filter(|(is_given, _)| !is_given);
    let all = session.cylinders();
    let [_, finished] = bores;
    Some(Volumes {
        displaced: bores.map(|bore| swept(bore).times(all)),
        ratios: match ratios {
            [Some(before), Some(after)] => Some([before, after]),
            _ => None,
        },
        missing: missing.map(|(_, key)| key).collect(),
        gasket_is_small: gasket_bore.is_some_and(|gasket| gasket < finished),
    })
}
