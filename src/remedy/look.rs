//! What is seen, heard or felt and not measured: the words for it, where
//! each can be, and what it says by itself.
//!
//! A look is answered at a spot: seen, or looked for and not seen. What
//! nobody answered is not known. Words of the trade; keys are for ever.

/// What a look is at. The first three are answered with the engine still
/// together, the others as it comes apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Subject {
    /// How the engine ran.
    Engine,
    /// One cylinder, tested before it came apart.
    Cylinder,
    /// What was in the oil and its filter.
    Oil,
    /// The two shells of a main bearing.
    MainShell,
    /// The two shells of a connecting rod.
    RodShell,
    /// A piston with its rings.
    Piston,
    /// A cylinder bore.
    Bore,
    /// A main journal.
    MainJournal,
    /// A rod journal.
    RodJournal,
    /// A connecting rod with its bolts.
    Rod,
    /// The block and its main line.
    Block,
    /// A cylinder head.
    Head,
}

/// What a look says of its part, before any cause is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meaning {
    /// As it should be.
    Normal,
    /// A trace of what happened: something for [`super::causes`] alone.
    Trace,
    /// The condition of a running surface.
    Surface(Surface),
    /// It overrides good numbers.
    Unsound(Unsound),
}

/// The condition of a running surface, the better first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Surface {
    /// Nothing to see, or what belongs there.
    Clean,
    /// Lines or glaze; no nail catches.
    Light,
    /// A finger nail catches.
    NailCatching,
    /// Deep marks, to be measured by their depth.
    Deep,
}

/// Why a part is not to be used as it is, the graver last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unsound {
    /// To be tested for cracks before anything else.
    CrackTest,
    /// A specialist has to say whether it can be saved.
    Specialist,
    /// Not to be used again.
    Replace,
}

use Meaning::{Normal, Surface as On, Trace, Unsound as Not};
use Subject::{
    Block, Bore, Cylinder, Engine, Head, MainJournal, MainShell, Oil, Piston, Rod, RodJournal,
    RodShell,
};

const SHELLS: &[Subject] = &[MainShell, RodShell];
const JOURNALS: &[Subject] = &[MainJournal, RodJournal];

macro_rules! looks {
    ($($(#[$told:meta])+ $look:ident $key:literal $subjects:expr, $meaning:expr;)+) => {
        /// Something to be seen, heard or felt.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Look {
            $($(#[$told])+ $look,)+
        }

        /// All looks with their words in files, in the order of asking.
        const LOOKS: &[(Look, &str, &[Subject], Meaning)] =
            &[$((Look::$look, $key, $subjects, $meaning),)+];
    };
}

looks! {
    /// Blue smoke at the start, or after a long overrun.
    SmokeAtStart "smoke_at_start" &[Engine], Trace;
    /// Blue smoke under load.
    SmokeUnderLoad "smoke_under_load" &[Engine], Trace;
    /// A US quart of oil in 300 miles (0.95 L in 480 km), or worse.
    OilUse "oil_use" &[Engine], Trace;
    /// High pressure in the crankcase.
    CrankcasePressure "crankcase_pressure" &[Engine], Trace;
    /// Low oil pressure.
    LowOilPressure "low_oil_pressure" &[Engine], Trace;
    /// Light double rap off load, less with one plug shorted.
    KnockRap "knock_rap" &[Engine], Trace;
    /// Deep thud under load, whichever plug is shorted.
    KnockThud "knock_thud" &[Engine], Trace;
    /// A knock that changes with the clutch.
    KnockClutch "knock_clutch" &[Engine], Trace;
    /// A slap when cold that fades as it warms.
    KnockSlap "knock_slap" &[Engine], Trace;
    /// Sharp double click at idle.
    KnockClick "knock_click" &[Engine], Trace;
    /// A tick at half engine speed.
    KnockTick "knock_tick" &[Engine], Trace;
    /// Pinging under load.
    KnockPing "knock_ping" &[Engine], Trace;
    /// A rattle at the timing drive.
    KnockRattle "knock_rattle" &[Engine], Trace;
    /// It ran too hot.
    Overheated "overheated" &[Engine], Trace;
    /// Coolant went missing, or water was in the oil.
    CoolantLost "coolant_lost" &[Engine], Trace;

    /// Low compression.
    LowCompression "low_compression" &[Cylinder], Trace;
    /// Low compression, yet it leaks little.
    LeaksLittle "leaks_little" &[Cylinder], Trace;
    /// It leaks to the crankcase.
    LeaksToCrankcase "leaks_to_crankcase" &[Cylinder], Trace;
    /// It leaks less with the piston part way down.
    LeaksLessBelow "leaks_less_below" &[Cylinder], Trace;
    /// It leaks less after a squirt of oil.
    LeaksLessWet "leaks_less_wet" &[Cylinder], Trace;
    /// It leaks to the exhaust or the intake.
    LeaksAtValve "leaks_at_valve" &[Cylinder], Trace;
    /// Bubbles in the coolant, or air at the neighbour's plug.
    LeaksAtGasket "leaks_at_gasket" &[Cylinder], Trace;
    /// Its plug was oily.
    OilyPlug "oily_plug" &[Cylinder], Trace;

    /// Needles or flakes that a magnet takes.
    DebrisMagnetic "debris_magnetic" &[Oil], Trace;
    /// Dull silver, soft flakes.
    DebrisSoft "debris_soft" &[Oil], Trace;
    /// Copper or bronze.
    DebrisCopper "debris_copper" &[Oil], Trace;
    /// Bright aluminium.
    DebrisAluminium "debris_aluminium" &[Oil], Trace;
    /// Hard glitter with sparkling edges.
    DebrisGlitter "debris_glitter" &[Oil], Trace;

    /// An even grey band, fading to the joints.
    GreyBand "grey_band" SHELLS, Normal;
    /// Embedded specks, fine lines around.
    Specks "specks" SHELLS, Trace;
    /// Wiped or smeared, worst at the centre.
    Wiped "wiped" SHELLS, Trace;
    /// Small craters, metal flaked out, cracks that spread.
    Craters "craters" SHELLS, Trace;
    /// Worn at one edge.
    OneEdge "one_edge" SHELLS, Trace;
    /// The upper worn at one edge, the lower at the other.
    OppositeEdges "opposite_edges" &[RodShell], Trace;
    /// Worn at both edges, the centre clean.
    BothEdges "both_edges" SHELLS, Trace;
    /// Worn in the centre, the edges clean.
    CentreBand "centre_band" SHELLS, Trace;
    /// Worn at the joint of one half, at the other side in the other half.
    JointsCrossed "joints_crossed" SHELLS, Trace;
    /// Worn near the joints of both halves.
    JointsBoth "joints_both" SHELLS, Trace;
    /// The back bright or dark fretted, loose.
    BrightBack "bright_back" SHELLS, Trace;
    /// A hot dot, a dent on the back behind it.
    HotDot "hot_dot" SHELLS, Trace;
    /// Etched, black, the lining gone.
    Etched "etched" SHELLS, Trace;
    /// Pits away from the load, near the grooves.
    Pits "pits" SHELLS, Trace;
    /// One thrust face worn.
    ThrustFace "thrust_face" &[MainShell], Trace;
    /// Turned in its housing.
    Spun "spun" SHELLS, Trace;

    /// Scuffed at four corners beside the pin.
    FourCorners "four_corners" &[Piston], Trace;
    /// Both thrust sides of the skirt scuffed.
    BothSkirts "both_skirts" &[Piston], Trace;
    /// One side of the skirt scuffed.
    OneSkirt "one_skirt" &[Piston], Trace;
    /// Worn aslant across the skirt.
    SlantedSkirt "slanted_skirt" &[Piston], Trace;
    /// Top land and rings scuffed, ring ends butted.
    TopLand "top_land" &[Piston], Trace;
    /// Lands broken, the edge of the crown pitted.
    BrokenLands "broken_lands" &[Piston], Not(Unsound::Replace);
    /// A hole or a melt in the crown.
    Melted "melted" &[Piston], Not(Unsound::Replace);
    /// The gaps of the rings in line.
    GapsInLine "gaps_in_line" &[Piston], Trace;
    /// A sharp step in the groove, or a ring in pieces.
    GrooveStep "groove_step" &[Piston], Trace;
    /// Rings stuck, return holes blocked.
    RingsStuck "rings_stuck" &[Piston], Trace;
    /// A crack in the piston.
    PistonCrack "piston_crack" &[Piston], Not(Unsound::Replace);

    /// The hatch still to be seen.
    Hatch "hatch" &[Bore], On(Surface::Clean);
    /// A shiny mirror.
    Glazed "glazed" &[Bore], On(Surface::Light);
    /// Upright lines no nail catches.
    BoreLines "bore_lines" &[Bore], On(Surface::Light);
    /// Lines a nail catches.
    BoreNail "bore_nail" &[Bore], On(Surface::NailCatching);
    /// A deep score.
    BoreScore "bore_score" &[Bore], On(Surface::Deep);
    /// Rust or pits in one band.
    RustBand "rust_band" &[Bore], On(Surface::Deep);
    /// Dull, matt, with many upright lines.
    DullLines "dull_lines" &[Bore], On(Surface::Light);
    /// Dark, dry patches.
    DarkPatches "dark_patches" &[Bore], Trace;
    /// A crack in the bore.
    BoreCrack "bore_crack" &[Bore], Not(Unsound::Specialist);

    /// Polished, no marks.
    Polished "polished" JOURNALS, On(Surface::Clean);
    /// Lines no nail catches, or dull.
    JournalLines "journal_lines" JOURNALS, On(Surface::Light);
    /// Lines a nail catches.
    JournalNail "journal_nail" JOURNALS, On(Surface::NailCatching);
    /// A ridge a nail feels.
    Ridge "ridge" JOURNALS, On(Surface::NailCatching);
    /// A deep score.
    JournalScore "journal_score" JOURNALS, On(Surface::Deep);
    /// Blue with heat.
    HeatBlue "heat_blue" JOURNALS, Not(Unsound::Replace);
    /// A crack at an oil hole or a fillet.
    JournalCrack "journal_crack" JOURNALS, Not(Unsound::Replace);

    /// A bolt drawn thin.
    NeckedBolt "necked_bolt" &[Rod], Not(Unsound::Replace);
    /// A nick in the shank.
    Nick "nick" &[Rod], Not(Unsound::CrackTest);
    /// Bent to the eye.
    BentRod "bent_rod" &[Rod], Not(Unsound::Specialist);
    /// The big end blue with heat.
    BlueBigEnd "blue_big_end" &[Rod], Not(Unsound::CrackTest);
    /// A crack in the rod or its cap.
    RodCrack "rod_crack" &[Rod], Not(Unsound::Replace);

    /// The shells of the centre mains worn more than the outer ones.
    CentreMains "centre_mains" &[Block], Trace;
    /// All shells worn at the same edge.
    SameEdge "same_edge" &[Block], Trace;
    /// An old weld or other repair.
    OldRepair "old_repair" &[Block, Head], Not(Unsound::CrackTest);
    /// A crack in the block.
    BlockCrack "block_crack" &[Block], Not(Unsound::Specialist);
    /// The port side of an intake valve wet with oil.
    OilyPort "oily_port" &[Head], Trace;
    /// The seals of the valve stems gone hard.
    HardSeals "hard_seals" &[Head], Trace;
    /// A crack in the head.
    HeadCrack "head_crack" &[Head], Not(Unsound::Specialist);
}

impl Subject {
    /// All subjects, in the order of asking.
    pub const ALL: [Self; 12] = [
        Engine,
        Cylinder,
        Oil,
        MainShell,
        RodShell,
        Piston,
        Bore,
        MainJournal,
        RodJournal,
        Rod,
        Block,
        Head,
    ];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Engine => "engine",
            Cylinder => "cylinder",
            Oil => "oil",
            MainShell => "main_shell",
            RodShell => "rod_shell",
            Piston => "piston",
            Bore => "bore",
            MainJournal => "main_journal",
            RodJournal => "rod_journal",
            Rod => "rod",
            Block => "block",
            Head => "head",
        }
    }

    /// The subject of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|subject| subject.key() == key)
    }

    /// Whether it is asked while the engine is still together.
    #[must_use]
    pub const fn is_before(self) -> bool {
        matches!(self, Engine | Cylinder | Oil)
    }

    /// What can be seen of it, in the order of asking.
    pub fn looks(self) -> impl Iterator<Item = Look> {
        Look::all().filter(move |look| look.subjects().contains(&self))
    }
}

impl Look {
    /// All looks, in the order of asking.
    pub fn all() -> impl Iterator<Item = Self> {
        LOOKS.iter().map(|(look, ..)| *look)
    }

    fn row(self) -> Option<&'static (Self, &'static str, &'static [Subject], Meaning)> {
        LOOKS.get(self as usize)
    }

    /// The word in files.
    #[must_use]
    pub fn key(self) -> &'static str {
        self.row().map_or("", |row| row.1)
    }

    /// The look of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        LOOKS.iter().find(|row| row.1 == key).map(|row| row.0)
    }

    /// What it can be seen at.
    #[must_use]
    pub fn subjects(self) -> &'static [Subject] {
        self.row().map_or(&[], |row| row.2)
    }

    /// What it says of its part when it is seen.
    #[must_use]
    pub fn meaning(self) -> Meaning {
        self.row().map_or(Trace, |row| row.3)
    }

    /// Whether it is a crack; looked for and not seen, its part has been
    /// tested for cracks.
    #[must_use]
    pub const fn is_crack(self) -> bool {
        matches!(
            self,
            Self::PistonCrack
                | Self::BoreCrack
                | Self::JournalCrack
                | Self::RodCrack
                | Self::BlockCrack
                | Self::HeadCrack
        )
    }
}
