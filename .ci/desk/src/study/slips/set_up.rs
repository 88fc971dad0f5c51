//! Sessions of the slip study before the first reading: what the engine was
//! made to, what of it the person has told, and the gauges at hand.

use fenderbench::quantity::{Entered, EnteredDeviation, Size, Unit};
use fenderbench::session::{
    Against, Edit, Field, Gauge, GaugeKind, Indication, Kind, LimitKey, Replica, RouteChoice,
    Sense, Session, SessionId, SetTo, Setting,
};

use super::parameters as p;
use crate::study::chance::Chance;

const REPLICA: Replica = Replica::new(0x511b);

/// Millimetres in a tenth of a thou, and tenths in a sixteenth of an inch.
pub const MM_IN_A_TENTH: f64 = 0.002_54;
const SIXTEENTH: f64 = 625.0;
const TENTHS_IN_A_THOU: f64 = 10.0;

/// What the kinds were made to, in tenths of a thou.
#[derive(Clone, Copy)]
pub struct Made {
    pub bore: f64,
    pub main: f64,
    pub rod: f64,
}

/// A session before the first reading, and the truth behind it.
pub struct Begun {
    pub session: Session,
    pub unit: Unit,
    pub made: Made,
    /// Piston-to-wall as made.
    pub wall: f64,
}

/// On which side of the size made to a step lies.
#[derive(Clone, Copy)]
pub enum NearBy {
    Above,
    Below,
}

/// Tenths of a thou in a size.
#[expect(
    clippy::cast_precision_loss,
    reason = "sizes are far below 2^53 quanta"
)]
pub const fn tenths(size: Size) -> f64 {
    size.quanta() as f64 / 25_400.0
}

/// Which sizes engines are made to.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Sizes {
    /// As cars have them.
    Usual,
    /// So that wear carries them over a whole tenth of an inch or ten
    /// millimetres, where leading digits change.
    RollingOver,
}

/// How far before that they are made: a thou, which most parts have worn.
const BEFORE: f64 = 10.0;

pub fn begin(chance: &mut Chance, seed: u64, sizes: Sizes) -> Result<Begun, String> {
    let unit = if chance.in_a_hundred(p::INCH) {
        Unit::Inch
    } else {
        Unit::Millimetre
    };
    let mut standard = standard(chance, unit);
    if sizes == Sizes::RollingOver {
        standard = rolling_over(unit, standard);
    }
    let (made, known) = machined(chance, unit, standard);
    let wall = chance.within_band(p::WALL);
    let (arrangement, cylinders, mains, rods) =
        chance.by_share(p::LAYOUTS).ok_or("There is no layout.")?;
    let route = chance.by_share(&[
        (RouteChoice::Fuller, p::FULLER),
        (RouteChoice::Plain, p::PLAIN),
        (RouteChoice::Standard, 100.0),
    ]);
    let fields = vec![
        Field::Cylinders(cylinders),
        Field::Arrangement(arrangement),
        Field::Mains(mains),
        Field::RodsPerThrow(rods),
        Field::DisplayUnit(unit),
        Field::Route(route.ok_or("There is no route.")?),
    ];
    let mut session = Session::create(SessionId::from_number(seed), fields, REPLICA);
    let mut edits = gauges(chance, unit, &session)?;
    if chance.in_a_hundred(p::MANUAL) {
        edits.extend(limits(chance, unit, known, wall)?);
    }
    if chance.in_a_hundred(p::NOMINAL) {
        for kind in [Kind::Bore, Kind::MainJournal, Kind::RodJournal] {
            let size = length(made_to(known, kind), unit)?;
            edits.push(Edit::Set(Field::Nominal(kind, Some(size))));
        }
    }
    apply(&mut session, &Edit::Batch(edits))?;
    if chance.in_a_hundred(p::DIAL) {
        dial(chance, unit, known, &mut session)?;
    }
    Ok(Begun {
        session,
        unit,
        made,
        wall,
    })
}

/// The sizes of the manual.
fn standard(chance: &mut Chance, unit: Unit) -> Made {
    let mut nice = |range| {
        let mm: f64 = chance.within_band(range);
        match unit {
            Unit::Inch => (mm / MM_IN_A_TENTH / SIXTEENTH).round() * SIXTEENTH,
            Unit::Millimetre => (mm * 2.0).round() / 2.0 / MM_IN_A_TENTH,
        }
    };
    let (bore, main, smaller) = (nice(p::BORE_MM), nice(p::MAIN_MM), nice(p::ROD_SMALLER_MM));
    Made {
        bore,
        main,
        rod: main - smaller,
    }
}

/// The sizes nearest to these at which leading digits change by wear.
fn rolling_over(unit: Unit, standard: Made) -> Made {
    let step = match unit {
        Unit::Inch => 1_000.0,
        Unit::Millimetre => 10.0 / MM_IN_A_TENTH,
    };
    let whole = |size: f64| (size / step).round() * step;
    Made {
        bore: whole(standard.bore) - BEFORE,
        main: whole(standard.main) + BEFORE,
        rod: whole(standard.rod) + BEFORE,
    }
}

/// What the engine was machined to since, and what of it the person knows.
fn machined(chance: &mut Chance, unit: Unit, standard: Made) -> (Made, Made) {
    let (mut made, mut known) = (standard, standard);
    let by = |chance: &mut Chance, share, near| {
        let by = if chance.in_a_hundred(share) {
            step(chance, unit, near)
        } else {
            0.0
        };
        let told = if chance.in_a_hundred(p::MACHINING_KNOWN) {
            by
        } else {
            0.0
        };
        (by, told)
    };
    let (bores, told) = by(chance, p::REBORED, NearBy::Above);
    made.bore += bores;
    known.bore += told;
    let (mains, told) = by(chance, p::MAINS_REGROUND, NearBy::Below);
    made.main -= mains;
    known.main -= told;
    let (rods, told) = by(chance, p::RODS_REGROUND, NearBy::Below);
    made.rod -= rods;
    known.rod -= told;
    (made, known)
}

/// One of the usual steps.
pub fn step(chance: &mut Chance, unit: Unit, near: NearBy) -> f64 {
    let steps = match (unit, near) {
        (Unit::Inch, NearBy::Above) => p::OVERSIZES_IN,
        (Unit::Inch, NearBy::Below) => p::UNDERSIZES_IN,
        (Unit::Millimetre, NearBy::Above) => p::OVERSIZES_MM,
        (Unit::Millimetre, NearBy::Below) => p::UNDERSIZES_MM,
    };
    let step = chance.by_share(steps).unwrap_or(0.0);
    match unit {
        Unit::Inch => step,
        Unit::Millimetre => step / MM_IN_A_TENTH,
    }
}

/// The size a kind was made to.
pub const fn made_to(made: Made, kind: Kind) -> f64 {
    match kind {
        Kind::Bore | Kind::Piston => made.bore,
        Kind::MainJournal => made.main,
        _ => made.rod,
    }
}

/// The gauges of the session, as this person's are.
fn gauges(chance: &mut Chance, unit: Unit, session: &Session) -> Result<Vec<Edit>, String> {
    let graduation = chance.by_share(match unit {
        Unit::Inch => p::MICROMETERS_IN,
        Unit::Millimetre => p::MICROMETERS_MM,
    });
    let graduation = graduated(graduation, unit)?;
    let edits = session.gauges.iter().map(|(id, gauge)| {
        let gauge = Gauge {
            graduation: graduation.clone(),
            ..gauge.value.clone()
        };
        Edit::Gauge(*id, gauge)
    });
    Ok(edits.collect())
}

/// A dial bore gauge for the bores, set in a micrometer to what the person
/// takes them to be.
fn dial(chance: &mut Chance, unit: Unit, known: Made, session: &mut Session) -> Result<(), String> {
    let graduation = chance.by_share(match unit {
        Unit::Inch => p::DIALS_IN,
        Unit::Millimetre => p::DIALS_MM,
    });
    let gauge = Gauge {
        kind: GaugeKind::DialBoreGauge,
        graduation: graduated(graduation, unit)?,
        range: None,
        away: false,
    };
    apply(session, &Edit::AddGauge(gauge))?;
    let found = session.gauges.iter().rev();
    let mut found = found.filter(|(_, g)| g.value.kind == GaugeKind::DialBoreGauge);
    let (id, _) = found.next().ok_or("The dial was not taken.")?;
    let id = *id;
    let backward = chance.in_a_hundred(p::DIAL_BACKWARD);
    let nothing = EnteredDeviation::parse("0", unit).map_err(|why| why.to_string())?;
    let set = SetTo {
        against: Against::Micrometer,
        size: length(known.bore, unit)?,
        shows: Indication::Deviation(nothing),
        again: None,
        sense: if backward {
            Sense::PlusSmaller
        } else {
            Sense::PlusLarger
        },
    };
    let setting = Setting {
        set: Some(set),
        ..Setting::as_found(id)
    };
    apply(session, &Edit::AddSetting(setting))?;
    apply(session, &Edit::Set(Field::GaugeOf(Kind::Bore, Some(id))))
}

/// The limits a manual of such an engine prints, all of them.
fn limits(chance: &mut Chance, unit: Unit, known: Made, wall: f64) -> Result<Vec<Edit>, String> {
    let mut limits = Vec::new();
    let bore = known.bore;
    limits.push(("bore/size/new_low", bore));
    limits.push(("bore/size/new_high", bore + p::BORE_BAND.1));
    limits.push((
        "bore/size/service",
        bore + chance.within_band(p::BORE_SERVICE),
    ));
    limits.push(("bore/out_of_round/new_high", p::BORE_SHAPE_NEW));
    limits.push((
        "bore/out_of_round/service",
        chance.within_band(p::BORE_ROUND_SERVICE),
    ));
    limits.push(("bore/taper/new_high", p::BORE_SHAPE_NEW));
    limits.push((
        "bore/taper/service",
        chance.within_band(p::BORE_TAPER_SERVICE),
    ));
    limits.push(("piston/clearance/new_low", wall - p::BORE_BAND.1 / 2.0));
    limits.push(("piston/clearance/new_high", wall + p::BORE_BAND.1));
    limits.push((
        "piston/clearance/service",
        wall + chance.within_band(p::WALL_SERVICE),
    ));
    let main = known.main;
    limits.push(("main_journal/size/new_low", main + p::GRIND_PLACE.0));
    limits.push(("main_journal/size/new_high", main));
    limits.push((
        "main_journal/size/service",
        main - chance.within_band(p::JOURNAL_SERVICE),
    ));
    let rod = known.rod;
    limits.push(("rod_journal/size/new_low", rod + p::GRIND_PLACE.0));
    limits.push(("rod_journal/size/new_high", rod));
    limits.push((
        "rod_journal/size/service",
        rod - chance.within_band(p::JOURNAL_SERVICE),
    ));
    let worn = chance.within_band(p::JOURNAL_SHAPE_SERVICE);
    for (new, service) in [
        (
            "main_journal/out_of_round/new_high",
            "main_journal/out_of_round/service",
        ),
        ("main_journal/taper/new_high", "main_journal/taper/service"),
        (
            "rod_journal/out_of_round/new_high",
            "rod_journal/out_of_round/service",
        ),
        ("rod_journal/taper/new_high", "rod_journal/taper/service"),
    ] {
        limits.push((new, p::JOURNAL_SHAPE_NEW));
        limits.push((service, worn));
    }
    let field = |(key, tenths): (&str, f64)| {
        let name = LimitKey::parse(key).ok_or_else(|| format!("{key} is no limit."))?;
        let field = Field::Limit(name, Some(length(tenths, unit)?));
        Ok(Edit::Set(field))
    };
    limits.into_iter().map(field).collect()
}

/// A length as a manual prints it: ten-thousandths of an inch, micrometres.
fn length(tenths: f64, unit: Unit) -> Result<Entered, String> {
    let text = match unit {
        Unit::Inch => format!("{:.4}", tenths / TENTHS_IN_A_THOU / 1_000.0),
        Unit::Millimetre => format!("{:.3}", tenths * MM_IN_A_TENTH),
    };
    Entered::parse(&text, unit).map_err(|why| why.to_string())
}

fn graduated(text: Option<&str>, unit: Unit) -> Result<Entered, String> {
    let text = text.ok_or("There is no graduation.")?;
    Entered::parse(text, unit).map_err(|why| why.to_string())
}

fn apply(session: &mut Session, edit: &Edit) -> Result<(), String> {
    let applied = session.apply(edit, REPLICA).map(|_| ());
    applied.map_err(|why| why.to_string())
}
