//! What to tell the machine shop.

use crate::assess::Advice;
use crate::quantity::{Exact, Unit, show};
use crate::remedy::{BoreWork, HousingWork, JournalWork, Row, Way};

/// What to tell the machine shop: the wanted clearance, not a size measured
/// at home, which stands beside it as a cross-check.
pub(super) fn shop(advice: &Advice, way: &Way, unit: Unit) -> Vec<String> {
    let mut told = Vec::new();
    let band = |band: &crate::verdict::Band| {
        let end = |end: Option<Exact>| {
            end.map(|end| format!("{} {}", show(end, unit, unit.decimals()).text, unit.sign()))
        };
        match (end(band.low), end(band.high)) {
            (Some(low), Some(high)) => format!("{low} to {high}"),
            (None, Some(high)) => format!("at most {high}"),
            (Some(low), None) => format!("at least {low}"),
            (None, None) => "as the piston's maker or the manual states".to_owned(),
        }
    };
    let is_bored = way
        .top
        .is_some_and(|top| matches!(top.bores, BoreWork::Oversize(_) | BoreWork::Sleeves));
    if is_bored {
        told.push(format!(
            "Finish each bore to the piston that goes in it, as you measure it: piston-to-wall \
             on diameter at 20 °C (68 °F) {}. Mark which piston is for which bore.",
            band(&advice.job.wanted)
        ));
        told.push(
            "Torque plate and main caps on while boring and honing. Measure cold; write down \
             three levels in two directions."
                .to_owned(),
        );
    }
    for row in [Row::Mains, Row::Rods] {
        let Some(done) = way.row(row) else { continue };
        let name = match row {
            Row::Mains => "mains",
            Row::Rods => "rod journals",
        };
        if matches!(done.journals, JournalWork::Grind(_)) {
            told.push(format!(
                "Grind the {name} to the shells supplied, measured in their torqued housings: oil \
                 clearance {}.",
                band(&advice.job.row(row).wanted)
            ));
            told.extend(cross_check(advice, row, unit));
        }
        if done.housings.contains(&HousingWork::Machine) {
            told.push(match row {
                Row::Mains => "Hone the main housings in line to the low middle of their limits, \
                               caps torqued with the bolts to be used."
                    .to_owned(),
                Row::Rods => "Resize the big ends with the bolts to be used; keep all centre \
                              distances alike."
                    .to_owned(),
            });
        }
    }
    let is_ground = told.iter().any(|line| line.starts_with("Grind"));
    if is_ground {
        told.push(
            "Crack test before grinding and after it, and demagnetise. Keep the fillet radius, \
             no step; round and clean the oil holes; polish in the direction of rotation."
                .to_owned(),
        );
        told.push(
            "Ask: is this shaft hardened, how deep, and what is left after grinding? Are its \
             fillets rolled? Shops and sources differ; it depends on the process."
                .to_owned(),
        );
    }
    told
}

/// What journal the person's own readings would want, from the least to the
/// greatest, with the doubt of the least sure.
fn cross_check(advice: &Advice, row: Row, unit: Unit) -> Option<String> {
    let all = || advice.cross_checks.iter().filter(|check| check.row == row);
    let text = |length: Exact| show(length, unit, unit.decimals()).text;
    let least = text(all().map(|check| check.size).min()?);
    let most = text(all().map(|check| check.size).max()?);
    let guard = text(all().map(|check| check.guard).max()?);
    let sizes = if least == most {
        least
    } else {
        format!("{least} to {most}")
    };
    let sign = unit.sign();
    Some(format!(
        "By your own readings that would be a journal of {sizes} {sign} ± {guard} {sign}: a \
         cross-check, not an order."
    ))
}
