//! The invented sessions that come with the app, each under the name of its
//! file.

mod hand;
mod hill_climb_six;
mod pump_twin;
mod quarry_v_twin;

use hand::Hand;

pub use hill_climb_six::limits;

/// What every sample says of its limits.
const SOURCE: &str = "Invented for this sample; no real engine";

type Make = fn() -> Result<Hand, String>;

const SAMPLES: [(&str, Make); 3] = [
    ("hill-climb-six", hill_climb_six::sample),
    ("pump-twin", pump_twin::sample),
    ("quarry-v-twin", quarry_v_twin::sample),
];

/// The names, one a line.
pub fn names() -> String {
    SAMPLES.map(|(name, _)| format!("{name}\n")).concat()
}

/// A sample as the app would export it.
pub fn text(name: &str) -> Result<String, String> {
    let sample = SAMPLES.iter().find(|(known, _)| *known == name);
    let (_, make) =
        sample.ok_or_else(|| format!("{name:?} is no sample: desk sample lists them."))?;
    Ok(make()?.export())
}

#[cfg(test)]
pub mod tests {
    use super::*;
    use fenderbench::assess::{Finding, FindingKey, Which, assess};
    use fenderbench::quantity::show;
    use fenderbench::report::{comparison_key, verdict_key};
    use fenderbench::session::{Feature, Field, Kind, Quantity, Session, limit_keys};

    /// The value and the comparison of a finding.
    pub fn told(
        session: &Session,
        (kind, position): (Kind, u8),
        quantity: Quantity,
        which: Which,
    ) -> (String, &'static str) {
        let key = FindingKey {
            feature: Feature { kind, position },
            quantity,
            which,
        };
        let assessment = assess(session);
        let finding = assessment.get(key).unwrap();
        let unit = session.display_unit();
        let value = show(finding.value().unwrap(), unit, unit.decimals()).text;
        (value, comparison_key(finding.comparison()))
    }

    /// A finding as it is told.
    pub fn is(value: &str, comparison: &'static str) -> (String, &'static str) {
        (value.to_owned(), comparison)
    }

    /// The features with something beyond its limit, in the order of
    /// measuring.
    pub fn beyond(session: &Session) -> Vec<(Kind, u8)> {
        let findings = assess(session).findings.into_iter();
        let beyond = findings.filter(|f| comparison_key(f.comparison()) == "beyond_limit");
        let mut features: Vec<_> = beyond
            .map(|f| (f.key.feature.kind, f.key.feature.position))
            .collect();
        features.dedup();
        features
    }

    #[test]
    fn every_sample_says_that_it_is_invented() {
        for (name, make) in SAMPLES {
            let session = make().unwrap().session;
            assert!(session.name().ends_with("(invented)"), "{name}");
            let limited = |kind: &Kind| !limit_keys(*kind).is_empty();
            for kind in session.kinds().into_iter().filter(limited) {
                let source = Field::LimitSource(kind, SOURCE.to_owned());
                assert_eq!(session.field(source.key()), source, "{name}");
            }
        }
    }

    #[test]
    fn the_samples_show_each_word() {
        let mut words: Vec<&str> = Vec::new();
        for (_, make) in SAMPLES {
            let assessment = assess(&make().unwrap().session);
            let decided = assessment.findings.iter().filter_map(Finding::decided);
            words.extend(decided.map(verdict_key));
        }
        words.sort_unstable();
        words.dedup();
        assert_eq!(
            words,
            [
                "beyond_limit",
                "do_not_assemble",
                "no_limit_given",
                "not_seen_all_round",
                "outside_new_limits",
                "too_close_to_call",
                "within_new_limits",
                "within_service_limit",
            ]
        );
    }

    #[test]
    fn no_two_samples_are_copies_of_one_session() {
        let sessions = SAMPLES.map(|(_, make)| make().unwrap().session);
        let mut ids = sessions
            .each_ref()
            .map(|session| session.id.clone())
            .to_vec();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), sessions.len());
        for session in sessions {
            assert!(assess(&session).outside_layout.is_empty());
            assert!(session.extras.is_empty());
        }
    }

    #[test]
    fn a_name_that_is_none_is_refused() {
        let why = text("hill-climb").unwrap_err();
        assert_eq!(why, "\"hill-climb\" is no sample: desk sample lists them.");
    }
}
