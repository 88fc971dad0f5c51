//! The words of a plan and of causes in JSON.

use crate::remedy::{Aftermath, Ask, Basis, Fact, Gate, Reason, Recheck, Standing, Trouble, Word};
use crate::verdict::Decision;

pub(super) const fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Price => "price",
        Basis::Weight => "weight",
    }
}

pub(super) const fn ask(ask: Ask) -> &'static str {
    match ask {
        Ask::Soundness => "soundness",
        Ask::Form => "form",
        Ask::Surface => "surface",
        Ask::Clearance => "clearance",
        Ask::CleanUp => "clean_up",
    }
}

pub(super) const fn reason(reason: Reason) -> &'static str {
    match reason {
        Reason::Proved => "proved",
        Reason::Axis => "axis",
        Reason::Readings => "readings",
        Reason::NoReference => "no_reference",
        Reason::Unknown => "unknown",
        Reason::Wear => "wear",
        Reason::TooMuch => "too_much",
        Reason::Mistyped => "mistyped",
        Reason::Form => "form",
        Reason::Score => "score",
        Reason::Clearance => "clearance",
        Reason::Neighbours => "neighbours",
    }
}

pub(super) const fn decision(decision: Decision) -> &'static str {
    match decision {
        Decision::In => "in",
        Decision::Out => "out",
        Decision::Open => "open",
    }
}

pub(super) const fn gate(gate: Gate) -> &'static str {
    match gate {
        Gate::Soundness => "soundness",
        Gate::Sense => "sense",
        Gate::Form => "form",
        Gate::Surface => "surface",
        Gate::Partner => "partner",
        Gate::Set => "set",
    }
}

pub(super) const fn word(word: Word) -> &'static str {
    match word {
        Word::UseAgain => "use_again",
        Word::HandWork => "hand_work",
        Word::Shop => "shop",
        Word::Replace => "replace",
        Word::MeasureAgain => "measure_again",
        Word::AskSpecialist => "ask_specialist",
    }
}

pub(super) const fn trouble(trouble: Trouble) -> &'static str {
    match trouble {
        Trouble::NoParts => "no_parts",
        Trouble::NoSizes => "no_sizes",
        Trouble::NoPistons => "no_pistons",
        Trouble::OutOfReach => "out_of_reach",
        Trouble::Uneven => "uneven",
    }
}

pub(super) const fn recheck(recheck: Recheck) -> &'static str {
    match recheck {
        Recheck::RingSet => "ring_set",
        Recheck::GasketBore => "gasket_bore",
        Recheck::Wall => "wall",
        Recheck::Compression => "compression",
        Recheck::PistonWeight => "piston_weight",
        Recheck::KnockMargin => "knock_margin",
        Recheck::PistonClearance => "piston_clearance",
        Recheck::RingGapAtBottom => "ring_gap_at_bottom",
        Recheck::RingType => "ring_type",
        Recheck::ShellSet => "shell_set",
        Recheck::Fillet => "fillet",
        Recheck::EndPlay => "end_play",
        Recheck::SealLand => "seal_land",
        Recheck::Stroke => "stroke",
        Recheck::DeckHeight => "deck_height",
        Recheck::Cracks => "cracks",
        Recheck::OilHoles => "oil_holes",
        Recheck::TimingDrive => "timing_drive",
        Recheck::Seal => "seal",
        Recheck::MainClearance => "main_clearance",
        Recheck::CentreDistance => "centre_distance",
        Recheck::BoltTorque => "bolt_torque",
        Recheck::PistonHeight => "piston_height",
        Recheck::Galleries => "galleries",
        Recheck::MeasureAgain => "measure_again",
    }
}

pub(super) const fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Reopened => "reopened",
        Standing::Hint => "hint",
        Standing::Likely => "likely",
        Standing::Measured => "measured",
    }
}

pub(super) const fn fact(fact: Fact) -> &'static str {
    match fact {
        Fact::GuideWorn => "guide_worn",
        Fact::BoreOutOfRound => "bore_out_of_round",
        Fact::BoreTapered => "bore_tapered",
        Fact::RingGapLarge => "ring_gap_large",
        Fact::RingGapSmall => "ring_gap_small",
        Fact::GrooveWorn => "groove_worn",
        Fact::WallClearanceLarge => "wall_clearance_large",
        Fact::WallClearanceSmall => "wall_clearance_small",
        Fact::PistonCollapsed => "piston_collapsed",
        Fact::PinClearanceLarge => "pin_clearance_large",
        Fact::PinClearanceSmall => "pin_clearance_small",
        Fact::RodBent => "rod_bent",
        Fact::OilClearanceLarge => "oil_clearance_large",
        Fact::OilClearanceSmall => "oil_clearance_small",
        Fact::JournalTapered => "journal_tapered",
        Fact::JournalBarrel => "journal_barrel",
        Fact::JournalHourGlass => "journal_hour_glass",
        Fact::HousingTooLarge => "housing_too_large",
        Fact::HousingTooSmall => "housing_too_small",
        Fact::HousingOutOfRound => "housing_out_of_round",
        Fact::HousingTapered => "housing_tapered",
        Fact::HousingHourGlass => "housing_hour_glass",
        Fact::EndPlayLarge => "end_play_large",
        Fact::CrankBent => "crank_bent",
        Fact::LineBowed => "line_bowed",
    }
}

pub(super) const fn aftermath(aftermath: Aftermath) -> &'static str {
    match aftermath {
        Aftermath::Cooler => "cooler",
        Aftermath::Lines => "lines",
        Aftermath::Filter => "filter",
        Aftermath::Pump => "pump",
        Aftermath::Pickup => "pickup",
        Aftermath::Galleries => "galleries",
        Aftermath::CrankDrillings => "crank_drillings",
        Aftermath::SmallWays => "small_ways",
    }
}
