//! What a person chooses for this phone: kept on it, in no session.

/// One thing that is chosen between two words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Under what it is kept, and the attribute by which styles and devices
    /// know it: `hand` is `data-hand` of the root element.
    pub name: &'static str,
    /// What it is called on the screen.
    pub legend: &'static str,
    /// The two words, as they are kept, with what they are called. The first
    /// one counts until a person chooses.
    pub options: [(&'static str, &'static str); 2],
}

/// All that is chosen for this phone.
pub const PHONE: [Choice; 5] = [
    Choice {
        name: "theme",
        legend: "Light",
        options: [("sun", "Sun"), ("night", "Night garage")],
    },
    Choice {
        name: "hand",
        legend: "Hand that types",
        options: [("right", "Right"), ("left", "Left")],
    },
    Choice {
        name: "sound",
        legend: "Sound",
        options: [("on", "Keys and refusals"), ("off", "Off")],
    },
    Choice {
        name: "spoken",
        legend: "Spoken",
        options: [("off", "Off"), ("on", "What was read, and the next place")],
    },
    Choice {
        name: "awake",
        legend: "Screen while measuring",
        options: [("on", "Stays on"), ("off", "As the phone is set")],
    },
];

impl Choice {
    /// The word for what lies kept: the first one where that is nothing, or
    /// no word of this choice.
    #[must_use]
    pub fn word(&self, kept: Option<&str>) -> &'static str {
        let [(usual, _), (other, _)] = self.options;
        if kept == Some(other) { other } else { usual }
    }
}
