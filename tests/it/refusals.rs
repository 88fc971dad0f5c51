//! Every refusal says what is wrong and what is allowed instead.
//!
//! The tables have no line for "all else": a refusal that is new does not
//! compile here until it says what may be done.

use fenderbench::archive::{self, ImportError};
use fenderbench::assess::assess;
use fenderbench::present::{
    Fender, GaugeRow, Key, Keypad, LimitsForm, NewSession, Pressed, Reads, SetForm, check_again,
    describe_gauge, gauges, given_edit, given_form, not_opened, route, set_price,
};
use fenderbench::quantity::{Entered, EnteredDeviation, ParseLengthError, Unit};
use fenderbench::remedy::{Item, Price, PriceRefused};
use fenderbench::session::{
    Against, GaugeKind, Indication, Kind, Quantity, Refused, Replica, Sense, Session, SessionId,
    SetTo, Stamp,
};
use fenderbench::verdict::LimitsRefused;

/// A refusal as shown, and the part of it that says what is allowed.
fn says(told: &str, allowed: &str) {
    assert!(told.contains(allowed), "{told:?} does not say {allowed:?}");
    assert!(allowed.len() < told.len(), "{told:?} does not say why");
    assert!(told.ends_with(['.', '?']), "{told:?} is no sentence");
}

fn mm(text: &str) -> Entered {
    Entered::parse(text, Unit::Millimetre).unwrap()
}

#[test]
fn lengths() {
    let allowed = |why: &ParseLengthError| match why {
        ParseLengthError::Empty => "type a number",
        ParseLengthError::NotANumber(_) => "digits and one point only",
        ParseLengthError::ManyPoints => "type the number without thousands marks",
        ParseLengthError::TooFine => "leave off the rest",
        ParseLengthError::TooLarge => "is the point in its place?",
    };
    for text in ["", "wide", "-82", "1,234.5", "0.1234567", "10001"] {
        let why = Entered::parse(text, Unit::Millimetre).unwrap_err();
        says(&why.to_string(), allowed(&why));
    }
    let why = EnteredDeviation::parse("--", Unit::Inch).unwrap_err();
    says(&why.to_string(), allowed(&why));
}

#[test]
fn prices() {
    let allowed = |why: &PriceRefused| match why {
        PriceRefused::Negative => "leave it blank if it is not known",
        PriceRefused::NoAmount => "an amount with at most two decimals",
        PriceRefused::TooMuch => "look at the decimal point",
    };
    for text in ["-1", "€ 5", "12.345", "99999999999"] {
        let why = Price::parse(text).unwrap_err();
        says(&why.to_string(), allowed(&why));
        assert_eq!(set_price(Item::Piston, text).unwrap_err(), why.to_string());
    }
}

#[test]
fn what_a_session_refuses() {
    let allowed = |why: &Refused| match why {
        Refused::Count { .. } => "from 1 to",
        Refused::Degrees => "from −40 to 60 °C",
        Refused::TooLong => "At most 200 characters",
        Refused::Steps => "leave out what you would not buy",
        Refused::StepUnits => "list them all in one",
        Refused::NoLook => "note it on the part where it was",
        Refused::NoSize => "type one above zero",
        Refused::NotSet => "has to be set first: in Set-up, Gauges",
        Refused::OtherUnit(_) => "say in in too",
        Refused::OutOfRange(_) => "reads from 25 mm to 50 mm: take another, or read again",
        Refused::Gauge => "needs a graduation, and a range that starts below its end",
        Refused::Full => "start another",
        Refused::Unknown(_) => "load the page again",
        Refused::Limits(_, _, why) => match why {
            LimitsRefused::LowAboveHigh => "look both up again",
            LimitsRefused::ServiceInsideNew => "look them up again",
            LimitsRefused::Zero => "leave blank what the manual does not give",
        },
    };
    let limits = |why| Refused::Limits(Kind::RodJournal, Quantity::OutOfRound, why);
    for why in [
        Refused::Count {
            what: "cylinders",
            most: 16,
        },
        Refused::Degrees,
        Refused::TooLong,
        Refused::Steps,
        Refused::StepUnits,
        Refused::NoLook,
        Refused::NoSize,
        Refused::NotSet,
        Refused::OtherUnit(Unit::Inch),
        Refused::OutOfRange((mm("25"), mm("50"))),
        Refused::Gauge,
        Refused::Full,
        Refused::Unknown(Stamp {
            counter: 7,
            replica: Replica::new(1),
        }),
        limits(LimitsRefused::LowAboveHigh),
        limits(LimitsRefused::ServiceInsideNew),
        limits(LimitsRefused::Zero),
    ] {
        says(&why.to_string(), allowed(&why));
    }
}

#[test]
fn files() {
    let sample = include_str!("../../public/samples/pump-twin.json");
    let newer = sample.replace("\"version\":1", "\"version\":2");
    let damaged = sample.replace("\"strikes\":0", "\"strikes\":1e400");
    let deep = "[".repeat(100);
    let large = " ".repeat(archive::BYTES_MAX + 1);
    let allowed = |why: &ImportError| match why {
        ImportError::TooNew { .. } => "Update it and try again",
        ImportError::TooLarge { .. }
        | ImportError::TooDeep
        | ImportError::NotJson { .. }
        | ImportError::NotASession
        | ImportError::Damaged { .. } => {
            "Try another copy of it, or choose a file that was exported from here"
        }
    };
    for text in [&newer, &damaged, &deep, &large, "", "a note", "{}"] {
        let why = archive::import(text).unwrap_err();
        let allowed = allowed(&why);
        let told = not_opened(why);
        says(&told, allowed);
        says(&told, "Nothing was changed.");
    }
}

/// Keys as they are typed: digits, the point, `s` for the sign and `w` for
/// the number in full; what is refused on the way, and at ENTER.
fn typed(keypad: &mut Keypad, keys: &str) -> Vec<String> {
    let mut told = Vec::new();
    for key in keys.chars() {
        let key = match key {
            '.' => Key::Point,
            's' => Key::Sign,
            'w' => Key::Whole,
            digit => Key::Digit(digit.to_digit(10).and_then(|d| d.try_into().ok()).unwrap()),
        };
        if let Pressed::Refused(why) = keypad.press(key) {
            told.push(why);
        }
    }
    told.extend(keypad.enter().err());
    told
}

/// So many characters stand on the route's screen at 360 px without pushing
/// the keypad away: three lines.
const SHOWN_MAX: usize = 90;

#[test]
fn keys_and_enter() {
    let dial = SetTo {
        against: Against::Standard,
        size: mm("82.000"),
        shows: Indication::Deviation(EnteredDeviation::parse("0", Unit::Millimetre).unwrap()),
        again: None,
        sense: Sense::PlusLarger,
    };
    let reads = |kind, dial| Reads {
        kind,
        unit: Unit::Millimetre,
        decimals: 3,
        dial,
    };
    let near = Some(mm("82.000").size());
    let of_dial = |step: &str| Some((mm(step), dial.clone()));
    let cases = [
        (
            Kind::EndPlay,
            None,
            None,
            "w0.010",
            "all digits and the point",
        ),
        (
            Kind::Bore,
            None,
            None,
            "w82.000",
            "from then on, three digits do",
        ),
        (Kind::Bore, None, near, "s123", "type its digits"),
        (Kind::Bore, None, near, "1234", "ENTER, or take one back"),
        (Kind::Bore, None, near, "12", "Type the last 3 digits"),
        (Kind::Bore, None, near, "12.3", "type the digits"),
        (Kind::Bore, None, None, "82.0001", "ENTER, or take one back"),
        (Kind::Bore, None, None, "082.0.00", "type the decimals"),
        (Kind::Bore, None, None, "0820.000", "now the point"),
        (
            Kind::Bore,
            None,
            None,
            "82.0",
            "type all of them, zeros too",
        ),
        (Kind::Bore, None, None, "", "type the reading first"),
        (Kind::Bore, None, None, "820.000", "5 to 600 mm can be"),
        (
            Kind::Bore,
            of_dial("0.01"),
            near,
            "12.345",
            "count whole graduations",
        ),
        (
            Kind::Bore,
            of_dial("0.01"),
            near,
            "",
            "0 where it stands there",
        ),
    ];
    for (kind, dial, near, keys, allowed) in cases {
        let mut keypad = Keypad::new(reads(kind, dial), near);
        let told = typed(&mut keypad, keys);
        let first = told.first().unwrap_or_else(|| panic!("{keys} was taken"));
        says(first, allowed);
        for told in told {
            assert!(told.chars().count() <= SHOWN_MAX, "{told:?} is long");
        }
    }
    let mut keypad = Keypad::new(reads(Kind::Bore, of_dial("0.01")), near);
    says(
        &typed(&mut keypad, "12345").concat(),
        "ENTER, or take one back",
    );
    let mut keypad = Keypad::new(reads(Kind::Bore, of_dial("0.1")), near);
    says(&typed(&mut keypad, "9999").concat(), "5 to 600 mm can be");
}

fn session() -> Session {
    let fields = NewSession::default().fields().unwrap();
    Session::create(SessionId::from_number(1), fields, Replica::new(1))
}

fn gauge(of: GaugeKind) -> GaugeRow {
    let session = session();
    let rows = gauges(&session, &assess(&session)).gauges;
    let mut row = rows.into_iter().next().unwrap();
    row.gauge.kind = of;
    row
}

#[test]
fn forms() {
    let row = gauge(GaugeKind::OutsideMicrometer);
    let dial = gauge(GaugeKind::DialBoreGauge);
    let graduation = row.gauge.graduation.clone();
    let form = SetForm::of(&dial.gauge);
    let sized = SetForm {
        size: "82".to_owned(),
        ..form.clone()
    };
    let one_end = describe_gauge(&row, graduation, "25", "");
    for (told, allowed) in [
        (check_again(&row, "25").unwrap_err(), "set it first"),
        (form.edit(&dial).unwrap_err(), "the size it is set to"),
        (
            sized.edit(&dial).unwrap_err(),
            "plus larger, or plus smaller",
        ),
        (one_end.unwrap_err(), "give both ends, or none"),
    ] {
        says(&told, allowed);
    }

    let warm = |degrees: &str| NewSession {
        degrees: degrees.to_owned(),
        ..NewSession::default()
    };
    says(
        &warm("warm").check().unwrap_err(),
        "type degrees Celsius, as 14.5",
    );
    says(&warm("100").check().unwrap_err(), "from −40 to 60 °C");

    let session = session();
    for (at, text, allowed) in [
        (0, "long", "digits and one point only"),
        (4, "little", "type cubic centimetres, as 64.5"),
        (6, "0.25 0", "type one above zero"),
    ] {
        let mut rows = given_form(&session);
        rows[at].text = text.to_owned();
        says(&given_edit(&session, &rows).unwrap_err(), allowed);
    }
    let mut limits = LimitsForm::of(&session, Kind::Bore);
    limits.rows[0].text = "82,0,0".to_owned();
    let told = limits.edit(&session).unwrap_err();
    says(&told, "type the number without thousands marks");
    assert!(
        told.starts_with("Size, new, low: "),
        "it names the row: {told:?}"
    );
}

#[test]
fn the_route_without_a_gauge_says_where_to_get_one() {
    let mut bare = session();
    for (_, register) in bare.gauges.iter_mut() {
        register.value.away = true;
    }
    let stops = route(&bare, &assess(&bare));
    let fender = Fender::start(&bare, &stops, None);
    assert!(fender.is_refused());
    says(
        fender.said().unwrap_or_default(),
        "take one into use in Set-up, Gauges",
    );
}
