//! By chance, what only a newer version would know.

use std::collections::BTreeMap;

use fenderbench::session::Session;
use proptest::prelude::*;
use proptest::sample::select;

use crate::make;

/// A name no version uses, some of them nasty.
fn unknown_name() -> impl Strategy<Value = String> {
    prop_oneof![
        Just("__proto__".to_owned()),
        Just("constructor".to_owned()),
        "x [a-z\"\\\\é\\n]{0,6}",
    ]
}

/// JSON text that must be kept to the letter.
fn unknown_text() -> impl Strategy<Value = String> {
    select(
        &[
            "null",
            "1e400",
            "-0.10",
            "\"\"",
            "\"\\u00e9 \\/ é\"",
            "[ 1,2 , {\"a\" : [] } ]",
            "{\"b\":1, \"a\" :2,\"unit\":\"mm\"}",
            "123456789012345678901234567890",
        ][..],
    )
    .prop_map(str::to_owned)
}

fn unknown() -> impl Strategy<Value = BTreeMap<String, String>> {
    prop::collection::btree_map(unknown_name(), unknown_text(), 0..3)
}

/// What a newer version could have written beside what this one knows: in
/// the file, in the session, in a section, in each record, and whole records.
pub fn newer() -> impl Strategy<Value = Newer> {
    let records = prop::collection::vec((any_record(), 500_u64..600), 0..4);
    (
        unknown(),
        unknown(),
        prop::collection::vec(unknown(), 4),
        records,
    )
        .prop_map(|(file, session, records, whole)| Newer {
            file,
            session,
            records,
            whole,
        })
}

#[derive(Clone, Debug)]
pub struct Newer {
    file: BTreeMap<String, String>,
    session: BTreeMap<String, String>,
    records: Vec<BTreeMap<String, String>>,
    whole: Vec<((String, String), u64)>,
}

/// A section and a record in it that this version does not know.
fn any_record() -> impl Strategy<Value = (String, String)> {
    select(
        &[
            (
                "readings",
                r#"{"station":"housing/1/whole/first/0","value":"1e9"}"#,
            ),
            (
                "gauges",
                r#"{"kind":"bore_gauge", "graduation":"0.01","unit":"mm","at":"1@b2"}"#,
            ),
            ("set_up", r#"{"value":"diesel","at":"2@b2"}"#),
            ("limits", r#"{"value":"0.1","unit":"mm","at":"3@b2"}"#),
            ("visual_checks", r#"{"seen": "crack"}"#),
            ("prices", "{}"),
            ("choices", r#"{"__proto__":{"a":1}}"#),
        ][..],
    )
    .prop_map(|(section, text)| (section.to_owned(), text.to_owned()))
}

impl Newer {
    /// The session with all this in it.
    pub fn into_session(self, mut session: Session) -> Session {
        let mut records = self.records.iter().cycle();
        let mut next = || {
            let fields = records.next().into_iter().flatten();
            make::unknown(fields.map(|(name, text)| (name.as_str(), text.as_str())))
        };
        session
            .fields
            .iter_mut()
            .for_each(|(_, r)| r.extra = next());
        session
            .gauges
            .iter_mut()
            .for_each(|(_, r)| r.extra = next());
        session
            .settings
            .iter_mut()
            .for_each(|(_, r)| r.extra = next());
        session
            .readings
            .iter_mut()
            .for_each(|(_, r)| r.extra = next());
        for (place, extra) in [("", self.file), ("session", self.session)] {
            for (name, text) in extra {
                session.extras.insert((place.to_owned(), name), text);
            }
        }
        for ((section, text), counter) in self.whole {
            let key = match section.as_str() {
                "readings" | "gauges" => format!("{counter}@ee"),
                _ => format!("new/{counter}"),
            };
            session.extras.insert((section, key), text);
        }
        session
    }
}
