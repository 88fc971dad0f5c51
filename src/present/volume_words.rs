//! What the cylinders displace and how far the charge is compressed, in
//! words.

use super::given_form;
use crate::assess::{Advice, volumes};
use crate::form::Volume;
use crate::quantity::Unit;
use crate::session::Session;

/// Displacement and compression before and after, a line each; what is
/// missing for the second. Nothing without a stroke.
pub(super) fn lines(session: &Session, advice: &Advice) -> Vec<String> {
    let Some(volumes) = volumes(session, advice) else {
        return Vec::new();
    };
    let both = |[before, after]: [String; 2]| {
        if before == after {
            before
        } else {
            format!("{before} before, {after} after")
        }
    };
    let unit = session.display_unit();
    let displaced = volumes.displaced.map(|volume| amount(volume, unit));
    let mut lines = vec![format!("Displacement, all cylinders: {}.", both(displaced))];
    if let Some(ratios) = volumes.ratios {
        let ratios = ratios.map(|ratio| format!("{} : 1", decimals(ratio, 3, 2)));
        lines.push(format!(
            "Compression: {}, with crowns of the same shape and height.",
            both(ratios)
        ));
    }
    if !volumes.missing.is_empty() {
        let names = volumes.missing.iter();
        let names = names.map(|key| given_form::words(*key).0.to_lowercase());
        lines.push(format!(
            "For compression give under Set-up: {}.",
            names.collect::<Vec<_>>().join(", ")
        ));
    }
    if volumes.gasket_is_small {
        lines.push("The bore of the head gasket is smaller than the finished bore.".to_owned());
    }
    lines
}

fn amount(volume: Volume, unit: Unit) -> String {
    let per = |of, places| {
        let steps = volume.per(of, places).unwrap_or(0);
        decimals(steps, places, places)
    };
    let centimetres = per(Volume::CUBIC_CENTIMETRE, 1);
    match unit {
        Unit::Millimetre => format!("{centimetres} cm³"),
        Unit::Inch => format!("{} in³ ({centimetres} cm³)", per(Volume::CUBIC_INCH, 2)),
    }
}

/// Steps of the last of so many decimals, shown to fewer of them.
fn decimals(steps: i128, places: u8, shown: u8) -> String {
    let one = 10_i128.pow(u32::from(places - shown));
    let steps = crate::quantity::round_half_even(steps, one);
    let unit = 10_i128.pow(shown.into());
    let width = usize::from(shown);
    format!("{}.{:0width$}", steps / unit, steps % unit)
}
