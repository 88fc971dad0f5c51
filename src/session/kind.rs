//! The kinds of features, and what is said of all of a kind.

use super::{Direction, Level, Part};
use crate::uncertainty::Material;

/// A kind of feature.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// Cylinder bore.
    Bore,
    /// Piston.
    Piston,
    /// Main journal of the crankshaft.
    MainJournal,
    /// Rod journal of the crankshaft, one for each throw.
    RodJournal,
    /// Play of the crankshaft along its axis, before it is taken out.
    EndPlay,
    /// Play of the rods of a throw along it, before they are taken off.
    RodSide,
    /// Bore that holds a main shell, cap torqued, without shells.
    MainHousing,
    /// The two shells of a main bearing: their walls.
    MainShell,
    /// Bore of the fitted main shells, cap torqued.
    MainFitted,
    /// Oil clearance of a main bearing by plastic strip.
    MainStrip,
    /// Bore of a rod that holds its shells, cap torqued, without shells.
    BigEnd,
    /// The two shells of a rod: their walls.
    RodShell,
    /// Bore of the fitted rod shells, cap torqued.
    RodFitted,
    /// Oil clearance of a rod bearing by plastic strip.
    RodStrip,
    /// Full swing of an indicator on a main journal in one turn (TIR).
    RunOut,
    /// Piston pin.
    Pin,
    /// The two bores of a piston for its pin.
    PinBore,
    /// Bore of a rod for the piston pin.
    SmallEnd,
    /// End gap of the top ring in its bore.
    TopRingGap,
    /// End gap of the second ring in its bore.
    SecondRingGap,
    /// Play of the top ring in its groove.
    TopRingSide,
    /// Play of the second ring in its groove.
    SecondRingSide,
    /// Flatness of the deck of the block, one for each bank.
    Deck,
    /// Flatness of the face of a cylinder head.
    Head,
    /// Depth of the deepest score or pit in a bore, below the worn surface.
    BoreScore,
    /// The same of a main journal.
    MainScore,
    /// The same of a rod journal.
    RodScore,
}

impl Kind {
    /// All kinds, in the order they are measured: what is lost when the
    /// engine is taken apart first.
    pub const ALL: [Self; 27] = [
        Self::EndPlay,
        Self::RodSide,
        Self::Bore,
        Self::BoreScore,
        Self::Piston,
        Self::MainJournal,
        Self::MainScore,
        Self::RunOut,
        Self::RodJournal,
        Self::RodScore,
        Self::MainHousing,
        Self::MainShell,
        Self::MainFitted,
        Self::MainStrip,
        Self::BigEnd,
        Self::RodShell,
        Self::RodFitted,
        Self::RodStrip,
        Self::Pin,
        Self::PinBore,
        Self::SmallEnd,
        Self::TopRingGap,
        Self::SecondRingGap,
        Self::TopRingSide,
        Self::SecondRingSide,
        Self::Deck,
        Self::Head,
    ];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Bore => "bore",
            Self::Piston => "piston",
            Self::MainJournal => "main_journal",
            Self::RodJournal => "rod_journal",
            Self::EndPlay => "end_play",
            Self::RodSide => "rod_side",
            Self::MainHousing => "main_housing",
            Self::MainShell => "main_shell",
            Self::MainFitted => "main_fitted",
            Self::MainStrip => "main_strip",
            Self::BigEnd => "big_end",
            Self::RodShell => "rod_shell",
            Self::RodFitted => "rod_fitted",
            Self::RodStrip => "rod_strip",
            Self::RunOut => "run_out",
            Self::Pin => "pin",
            Self::PinBore => "pin_bore",
            Self::SmallEnd => "small_end",
            Self::TopRingGap => "top_ring_gap",
            Self::SecondRingGap => "second_ring_gap",
            Self::TopRingSide => "top_ring_side",
            Self::SecondRingSide => "second_ring_side",
            Self::Deck => "deck",
            Self::Head => "head",
            Self::BoreScore => "bore_score",
            Self::MainScore => "main_score",
            Self::RodScore => "rod_score",
        }
    }

    /// True where the gauge shows an amount and not the size of a part: a
    /// play, a gap, a swing, a depth. It may be nothing.
    #[must_use]
    pub const fn is_amount(self) -> bool {
        matches!(
            self,
            Self::EndPlay
                | Self::RodSide
                | Self::MainStrip
                | Self::RodStrip
                | Self::RunOut
                | Self::TopRingGap
                | Self::SecondRingGap
                | Self::TopRingSide
                | Self::SecondRingSide
                | Self::Deck
                | Self::Head
                | Self::BoreScore
                | Self::MainScore
                | Self::RodScore
        )
    }

    /// True of what is measured from inside, and grows as it wears.
    #[must_use]
    pub const fn is_hole(self) -> bool {
        matches!(
            self,
            Self::Bore
                | Self::MainHousing
                | Self::MainFitted
                | Self::BigEnd
                | Self::RodFitted
                | Self::PinBore
                | Self::SmallEnd
        )
    }

    /// The kind of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.key() == key)
    }

    /// The levels of this kind in the order along its axis, those outside
    /// the worn length last.
    #[must_use]
    pub const fn levels(self) -> &'static [Level] {
        match self {
            Self::Bore => &[Level::Top, Level::Middle, Level::Bottom, Level::Reference],
            Self::Piston => &[Level::GaugePoint],
            Self::MainJournal | Self::RodJournal | Self::Pin => {
                &[Level::First, Level::Centre, Level::Last]
            }
            Self::MainHousing
            | Self::BigEnd
            | Self::MainShell
            | Self::RodShell
            | Self::MainFitted
            | Self::RodFitted
            | Self::PinBore
            | Self::SmallEnd => &[Level::First, Level::Last],
            Self::TopRingGap | Self::SecondRingGap => &[Level::Top, Level::Bottom],
            Self::Deck | Self::Head => &[
                Level::InletEdge,
                Level::ExhaustEdge,
                Level::FirstEdge,
                Level::LastEdge,
                Level::Diagonal,
                Level::OtherDiagonal,
            ],
            Self::EndPlay
            | Self::RodSide
            | Self::MainStrip
            | Self::RodStrip
            | Self::RunOut
            | Self::TopRingSide
            | Self::SecondRingSide
            | Self::BoreScore
            | Self::MainScore
            | Self::RodScore => &[Level::Centre],
        }
    }

    /// The directions in which stations of this kind are read, by angle: a
    /// bearing's bore square to the joint of its cap and near it on either
    /// side; what is no diameter, in none but the first.
    #[must_use]
    pub const fn directions(self) -> &'static [Direction] {
        use Direction::{D0, D45, D60, D90, D120, D135};
        match self {
            Self::Bore | Self::Piston | Self::MainJournal | Self::RodJournal => {
                &[D0, D45, D90, D135]
            }
            Self::MainHousing | Self::BigEnd | Self::MainFitted | Self::RodFitted => {
                &[D0, D60, D120]
            }
            Self::Pin | Self::PinBore | Self::SmallEnd => &[D0, D90],
            _ => &[D0],
        }
    }

    /// True of what there is one of for each cylinder.
    #[must_use]
    pub const fn goes_with_cylinders(self) -> bool {
        matches!(
            self,
            Self::Bore
                | Self::BoreScore
                | Self::Piston
                | Self::BigEnd
                | Self::RodShell
                | Self::RodFitted
                | Self::RodStrip
                | Self::Pin
                | Self::PinBore
                | Self::SmallEnd
                | Self::TopRingGap
                | Self::SecondRingGap
                | Self::TopRingSide
                | Self::SecondRingSide
        )
    }

    /// The parts stations of this kind are on.
    #[must_use]
    pub const fn parts(self) -> &'static [Part] {
        match self {
            Self::Piston => &[Part::Skirt],
            Self::MainShell | Self::RodShell => &[Part::Upper, Part::Lower],
            _ => &[Part::Whole],
        }
    }

    /// The first of its [`parts`](Self::parts), mostly the only one.
    #[must_use]
    pub const fn part(self) -> Part {
        match self {
            Self::Piston => Part::Skirt,
            Self::MainShell | Self::RodShell => Part::Upper,
            _ => Part::Whole,
        }
    }

    /// What it is mostly made of (common practice).
    #[must_use]
    pub const fn usual_material(self) -> Material {
        match self {
            Self::Bore | Self::MainHousing | Self::Deck => Material::GreyIron,
            Self::Piston | Self::PinBore => Material::PistonAlloy,
            Self::Head => Material::CastAluminium,
            _ => Material::Steel,
        }
    }

    /// True if every engine is measured at it, if nobody says otherwise.
    #[must_use]
    pub const fn is_usual(self) -> bool {
        matches!(
            self,
            Self::Bore | Self::Piston | Self::MainJournal | Self::RodJournal
        )
    }
}
