//! What can be behind a look: causes, the numbers that decide them, and
//! where the knowledge comes from.

/// A fact about numbers that bears on a cause, as the readings prove it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fact {
    /// A valve guide or stem is worn beyond its limit.
    GuideWorn,
    /// A bore is out of round beyond its limit.
    BoreOutOfRound,
    /// A bore is tapered beyond its limit.
    BoreTapered,
    /// A ring's end gap is above its limit.
    RingGapLarge,
    /// A ring's end gap is below its limit.
    RingGapSmall,
    /// A ring's side clearance is above its limit.
    GrooveWorn,
    /// Piston-to-wall clearance is above its limit.
    WallClearanceLarge,
    /// Piston-to-wall clearance is below its limit.
    WallClearanceSmall,
    /// A skirt has become smaller than its limit.
    PistonCollapsed,
    /// The clearance of the pin is above its limit.
    PinClearanceLarge,
    /// The clearance of the pin is below its limit.
    PinClearanceSmall,
    /// A rod is bent or twisted beyond its limit.
    RodBent,
    /// Oil clearance is above its limit.
    OilClearanceLarge,
    /// Oil clearance is below its limit.
    OilClearanceSmall,
    /// A journal is tapered beyond its limit.
    JournalTapered,
    /// A journal is larger in the middle, beyond its limit.
    JournalBarrel,
    /// A journal is smaller in the middle, beyond its limit.
    JournalHourGlass,
    /// A bearing housing is above its limit.
    HousingTooLarge,
    /// A bearing housing is below its limit.
    HousingTooSmall,
    /// A bearing housing is out of round beyond its limit.
    HousingOutOfRound,
    /// A bearing housing is tapered beyond its limit.
    HousingTapered,
    /// A bearing housing is smaller in the middle, beyond its limit.
    HousingHourGlass,
    /// The crank's end play is above its limit.
    EndPlayLarge,
    /// The crank runs out beyond its limit.
    CrankBent,
    /// The main housings are out of line beyond their limit.
    LineBowed,
}

impl Fact {
    /// All facts.
    pub const ALL: [Self; 25] = [
        Self::GuideWorn,
        Self::BoreOutOfRound,
        Self::BoreTapered,
        Self::RingGapLarge,
        Self::RingGapSmall,
        Self::GrooveWorn,
        Self::WallClearanceLarge,
        Self::WallClearanceSmall,
        Self::PistonCollapsed,
        Self::PinClearanceLarge,
        Self::PinClearanceSmall,
        Self::RodBent,
        Self::OilClearanceLarge,
        Self::OilClearanceSmall,
        Self::JournalTapered,
        Self::JournalBarrel,
        Self::JournalHourGlass,
        Self::HousingTooLarge,
        Self::HousingTooSmall,
        Self::HousingOutOfRound,
        Self::HousingTapered,
        Self::HousingHourGlass,
        Self::EndPlayLarge,
        Self::CrankBent,
        Self::LineBowed,
    ];
}

/// Who says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Source {
    /// Common practice of the trade.
    Practice,
    /// A public training manual.
    Navy,
    /// Training articles about the leak test.
    LeakTest,
    /// It follows from arithmetic.
    Arithmetic,
    /// It follows from what the words mean.
    Words,
}

impl Source {
    /// As it is named beside what it says.
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            Self::Practice => "common practice",
            Self::Navy => "US Navy Engineman 1 & C (NAVEDTRA 14075), chapter 3",
            Self::LeakTest => "training articles about the leak test",
            Self::Arithmetic => "arithmetic: flow grows with the clearance to the third power",
            Self::Words => "what the words mean",
        }
    }
}

/// What a cause is asked for: one answer for the engine, or one for each
/// part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Scope {
    /// The engine.
    Engine,
    /// Each cylinder with its piston, rod and rod bearing.
    Cylinder,
    /// Each main bearing.
    Main,
    /// Each bearing of mains and rods.
    Bearing,
}

use Scope::{Bearing, Cylinder, Engine, Main};
use Source::{LeakTest, Navy, Practice};

macro_rules! causes {
    ($($(#[$told:meta])+ $cause:ident $key:literal $scope:expr, $source:expr, $check:literal;)+) => {
        /// What can be behind what was seen.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Cause {
            $($(#[$told])+ $cause,)+
        }

        /// All causes, what they are asked for, what to check besides
        /// numbers, and who says so.
        const CAUSES: &[(Cause, Scope, &str, Source)] =
            &[$((Cause::$cause, $scope, $check, $source),)+];

        impl Cause {
            /// The word in reports.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self {
                    $(Self::$cause => $key,)+
                }
            }
        }
    };
}

causes! {
    /// Valve guides, stems or seals let oil past.
    Guides "guides" Engine, Practice, "guides; stems and their seals";
    /// Rings or bore let oil and gas past.
    RingsOrBore "rings_or_bore" Cylinder, Navy, "the other ways of oil loss and low compression first; ring faces; gaps";
    /// Ring grooves or lands are worn.
    RingGrooves "ring_grooves" Cylinder, Practice, "side clearance with a new ring";
    /// Oil rings are stuck.
    StuckRings "stuck_rings" Cylinder, Practice, "return holes; heat; long oil changes; coolant in the oil";
    /// The bore is glazed.
    GlazedBore "glazed_bore" Cylinder, Practice, "taper; hatch; long running at light load";
    /// Oil is lost elsewhere.
    OtherOilLoss "other_oil_loss" Engine, Navy, "crankcase ventilation; seals of a turbo; kind and level of oil; leaks; loose bearings; oil too hot";
    /// The bore is worn at the top.
    WornAtTop "worn_at_top" Cylinder, LeakTest, "taper of the bore";
    /// The piston is damaged.
    PistonDamaged "piston_damaged" Cylinder, LeakTest, "crown and lands for cracks";
    /// A valve does not seal.
    ValveSeat "valve_seat" Cylinder, LeakTest, "seats with marking blue";
    /// Gasket or casting lets gas or coolant past.
    GasketOrCrack "gasket_or_crack" Cylinder, LeakTest, "gasket; flatness; cracks";
    /// Valve timing is off or a cam is worn.
    ValveTiming "valve_timing" Engine, LeakTest, "timing drive; lift of each lobe";
    /// Steel parts shed metal.
    SteelShed "steel_shed" Engine, Practice, "cam; lifters; rings; gears; crank";
    /// A bearing sheds its lining.
    LiningShed "lining_shed" Engine, Practice, "every shell";
    /// Shells are through their lining, or bushes or guides wear.
    CopperShed "copper_shed" Engine, Practice, "shells; bushes; guides";
    /// Aluminium parts wear.
    AluminiumShed "aluminium_shed" Engine, Practice, "pistons; shells of aluminium; pump body";
    /// Chips were left by machining.
    Chips "chips" Engine, Practice, "galleries; drillings and what was machined last";
    /// Oil does not get to the bearings.
    OilSupply "oil_supply" Engine, Practice, "in this order: gauge and sender; level; foam; pickup; thin oil; relief valve; pump; cam bearings; bearing clearances; plugs of the galleries; bypass";
    /// A rod bearing is loose.
    LooseRodBearing "loose_rod_bearing" Cylinder, Practice, "its oil clearance";
    /// A main bearing is loose.
    LooseMainBearing "loose_main_bearing" Main, Practice, "its oil clearance";
    /// The thrust bearing is worn.
    ThrustWorn "thrust_worn" Engine, Practice, "end play; clutch load; a converter that swells";
    /// The piston slaps.
    PistonSlap "piston_slap" Cylinder, Practice, "piston-to-wall; whether the skirt has collapsed";
    /// The pin is loose.
    LoosePin "loose_pin" Cylinder, Practice, "pin; pin bore and small end";
    /// Lifters, lobes or valves are worn or out of adjustment.
    ValveGear "valve_gear" Engine, Practice, "lifters; lobes; valves";
    /// The mixture burned by knocking.
    Detonation "detonation" Cylinder, Practice, "fuel; ignition timing";
    /// The timing drive is worn.
    TimingDrive "timing_drive" Engine, Practice, "chain or belt; guides; tensioner";
    /// Dirt in the oil.
    Dirt "dirt" Engine, Practice, "cleanliness when assembled; filter and its bypass; galleries";
    /// No film of oil.
    NoFilm "no_film" Bearing, Practice, "feed holes; pump; pickup; priming; thinned oil";
    /// Too little oil clearance.
    TightBearing "tight_bearing" Bearing, Practice, "in this order: dirt; cap mixed up or turned; wrong undersize; too much crush";
    /// Load or pounding tired the metal.
    Overload "overload" Bearing, Practice, "load and timing; fit of the shell";
    /// Journal or housing is tapered.
    Tapered "tapered" Bearing, Practice, "taper of journal and housing";
    /// The crank was ground badly.
    GrindFault "grind_fault" Engine, Practice, "taper and hour-glass of every journal";
    /// A rod is bent or twisted.
    BentRod "bent_rod" Cylinder, Practice, "the rod's alignment; the wear of its piston";
    /// The journal is smaller in its middle.
    HourGlass "hour_glass" Bearing, Practice, "a reading in the middle of the journal";
    /// The shell rides on the fillets.
    FilletRide "fillet_ride" Bearing, Practice, "fillets with a gauge; width of the shell";
    /// The journal is larger in its middle, or the housing smaller.
    Barrel "barrel" Bearing, Practice, "a reading in the middle of journal and housing";
    /// A cap has shifted or was mixed up.
    CapShifted "cap_shifted" Bearing, Practice, "marks of the caps; dowels";
    /// The housing pinches the shells at the joints.
    Pinched "pinched" Bearing, Practice, "housing square to the joint and near it; crush";
    /// The shells are loose in their housing.
    LooseShells "loose_shells" Bearing, Practice, "size of the housing; crush; tangs";
    /// Dirt behind a shell.
    DirtBehind "dirt_behind" Bearing, Practice, "backs of the shells and their seats";
    /// Water, acid or old oil etched it.
    Corrosion "corrosion" Engine, Practice, "coolant leaks; age of the oil";
    /// Bubbles collapsing in the oil.
    Cavitation "cavitation" Bearing, Practice, "clearance; speed; knocking";
    /// The main line is bowed or the crank is bent.
    BowedLine "bowed_line" Engine, Practice, "line of the housings; run-out of the crank";
    /// It ran too hot.
    TooHot "too_hot" Cylinder, Practice, "coolant; mixture; clearance";
    /// The pin is too tight.
    TightPin "tight_pin" Cylinder, Practice, "fit of the pin";
    /// Too little piston-to-wall clearance.
    TightPiston "tight_piston" Cylinder, Practice, "clearance now and as it should be";
    /// A hole that oils the wall is blocked.
    OilHole "oil_hole" Cylinder, Practice, "the rod's oil hole and jets";
    /// The ring gap is too small.
    TightRingGap "tight_ring_gap" Cylinder, Practice, "end gap of each ring";
    /// The mixture lit before the spark.
    PreIgnition "pre_ignition" Cylinder, Practice, "plug; injector; lean mixture";
    /// The ring fluttered in its groove.
    RingFlutter "ring_flutter" Cylinder, Practice, "side clearance; speed";
    /// The ring struck the ridge.
    RidgeStruck "ridge_struck" Cylinder, Practice, "the ridge at the top of the bore";
    /// Dust came in with the air.
    Dust "dust" Engine, Practice, "air filter; joints of the induction";
    /// Water stood in the bore.
    StoodWater "stood_water" Cylinder, Practice, "depth of the pits before a size is chosen";
}

impl Cause {
    /// All causes.
    pub fn all() -> impl Iterator<Item = Self> {
        CAUSES.iter().map(|(cause, ..)| *cause)
    }

    fn row(self) -> Option<&'static (Self, Scope, &'static str, Source)> {
        CAUSES.get(self as usize)
    }

    /// What it is asked for.
    #[must_use]
    pub fn scope(self) -> Scope {
        self.row().map_or(Engine, |row| row.1)
    }

    /// What to check besides, and who says so.
    #[must_use]
    pub fn check(self) -> (&'static str, Source) {
        self.row().map_or(("", Practice), |row| (row.2, row.3))
    }
}

/// What to suspect where a clearance is impossible (less than nothing, or
/// huge), in this order. Common practice.
pub const IMPOSSIBLE_CLEARANCE: [&str; 4] = [
    "a misread value: one turn of the thimble",
    "the wrong partner: shells of an undersize, another oversize",
    "the wrong place or direction: near the joint, across a chord",
    "parts at different temperatures",
];
