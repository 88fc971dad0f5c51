//! What the trade knows of looks, numbers and causes: one table.

use super::cause::{
    Cause, Fact,
    Source::{Arithmetic, LeakTest, Navy, Practice, Words},
};
use super::evidence::{
    Rule,
    Says::{Against, AgreesWith, Decides, PointsTo},
    Sign,
};
use super::look::Look;

macro_rules! sign {
    (Seen $look:ident) => {
        Sign::Seen(Look::$look)
    };
    (NotSeen $look:ident) => {
        Sign::NotSeen(Look::$look)
    };
    (Number $fact:ident) => {
        Sign::Number(Fact::$fact)
    };
}

macro_rules! rules {
    ($($cause:ident by $source:ident: $says:ident $kind:ident $($what:ident)+;)+) => {
        /// The rules, by what a person complains of first and what is found
        /// later.
        pub const RULES: &[Rule] = &[$($(Rule {
            sign: sign!($kind $what),
            says: $says,
            cause: Cause::$cause,
            source: $source,
        },)+)+];
    };
}

rules! {
    // Oil use
    Guides by Practice: PointsTo Seen SmokeAtStart OilyPort HardSeals OilUse OilyPlug;
    Guides by Practice: AgreesWith NotSeen CrankcasePressure;
    Guides by Practice: Against Seen CrankcasePressure;
    Guides by Practice: Decides Number GuideWorn;
    RingsOrBore by Practice: PointsTo Seen SmokeUnderLoad CrankcasePressure OilUse OilyPlug RingsStuck DarkPatches;
    RingsOrBore by Practice: Against NotSeen CrankcasePressure;
    RingsOrBore by LeakTest: PointsTo Seen LowCompression LeaksToCrankcase LeaksLessWet;
    RingsOrBore by LeakTest: Against Seen LeaksLittle;
    RingsOrBore by Practice: Decides Number BoreOutOfRound BoreTapered RingGapLarge GrooveWorn;
    RingGrooves by Practice: PointsTo Seen GapsInLine GrooveStep;
    RingGrooves by Practice: AgreesWith Seen OilUse;
    RingGrooves by Practice: Decides Number GrooveWorn;
    StuckRings by Practice: PointsTo Seen RingsStuck;
    StuckRings by Practice: AgreesWith Seen Overheated CoolantLost OilUse;
    GlazedBore by Practice: PointsTo Seen Glazed;
    GlazedBore by Practice: AgreesWith Seen OilUse;
    GlazedBore by Words: Against Seen Hatch;
    GlazedBore by Practice: Against Number BoreTapered BoreOutOfRound;
    OtherOilLoss by Navy: PointsTo Seen OilUse;
    OtherOilLoss by Navy: AgreesWith Seen LowOilPressure;

    // Compression
    WornAtTop by LeakTest: PointsTo Seen LeaksLessBelow;
    WornAtTop by LeakTest: AgreesWith Seen LowCompression;
    WornAtTop by LeakTest: Decides Number BoreTapered;
    PistonDamaged by LeakTest: PointsTo Seen PistonCrack BrokenLands Melted;
    PistonDamaged by LeakTest: AgreesWith Seen LeaksToCrankcase;
    PistonDamaged by LeakTest: AgreesWith NotSeen LeaksLessWet;
    PistonDamaged by LeakTest: Against Seen LeaksLessWet;
    ValveSeat by LeakTest: PointsTo Seen LowCompression LeaksAtValve;
    ValveSeat by LeakTest: Against Seen LeaksLittle;
    GasketOrCrack by LeakTest: PointsTo Seen LeaksAtGasket;
    GasketOrCrack by Practice: PointsTo Seen CoolantLost BoreCrack;
    GasketOrCrack by Practice: AgreesWith Seen HeadCrack BlockCrack;
    ValveTiming by LeakTest: PointsTo Seen LeaksLittle;
    ValveTiming by LeakTest: AgreesWith Seen KnockRattle;

    // Metal in the oil
    SteelShed by Practice: PointsTo Seen DebrisMagnetic;
    SteelShed by Practice: AgreesWith Seen KnockTick;
    LiningShed by Practice: PointsTo Seen DebrisSoft;
    LiningShed by Practice: AgreesWith Seen Wiped Craters Spun LowOilPressure;
    CopperShed by Practice: PointsTo Seen DebrisCopper;
    CopperShed by Practice: AgreesWith Seen Wiped Spun;
    AluminiumShed by Practice: PointsTo Seen DebrisAluminium;
    AluminiumShed by Practice: AgreesWith Seen FourCorners BothSkirts OneSkirt TopLand BrokenLands Melted;
    Chips by Practice: PointsTo Seen DebrisGlitter;
    Chips by Practice: AgreesWith Seen Specks;

    // Oil pressure and knocks
    OilSupply by Practice: PointsTo Seen LowOilPressure;
    OilSupply by Practice: AgreesWith Seen Wiped Spun;
    LooseRodBearing by Practice: PointsTo Seen KnockRap Spun;
    LooseRodBearing by Arithmetic: PointsTo Seen LowOilPressure;
    LooseRodBearing by Practice: Decides Number OilClearanceLarge;
    LooseMainBearing by Practice: PointsTo Seen KnockThud Spun;
    LooseMainBearing by Arithmetic: PointsTo Seen LowOilPressure;
    LooseMainBearing by Navy: AgreesWith Seen OilUse;
    LooseMainBearing by Practice: Decides Number OilClearanceLarge;
    ThrustWorn by Practice: PointsTo Seen KnockClutch ThrustFace;
    ThrustWorn by Practice: Decides Number EndPlayLarge;
    PistonSlap by Practice: PointsTo Seen KnockSlap;
    PistonSlap by Practice: Decides Number WallClearanceLarge PistonCollapsed;
    LoosePin by Practice: PointsTo Seen KnockClick;
    LoosePin by Practice: Decides Number PinClearanceLarge;
    ValveGear by Practice: PointsTo Seen KnockTick;
    Detonation by Practice: PointsTo Seen KnockPing BrokenLands OneSkirt;
    Detonation by Practice: AgreesWith Seen Craters Pits;
    TimingDrive by Practice: PointsTo Seen KnockRattle;
    TimingDrive by LeakTest: AgreesWith Seen LeaksLittle;

    // Shells
    Dirt by Practice: PointsTo Seen Specks;
    Dirt by Practice: AgreesWith Seen DebrisGlitter;
    NoFilm by Practice: PointsTo Seen Wiped Spun;
    NoFilm by Practice: AgreesWith Seen LowOilPressure HeatBlue BlueBigEnd;
    TightBearing by Practice: PointsTo Seen Wiped;
    TightBearing by Practice: Decides Number OilClearanceSmall;
    Overload by Practice: PointsTo Seen Craters;
    Overload by Practice: AgreesWith Seen KnockPing;
    Tapered by Practice: PointsTo Seen OneEdge;
    Tapered by Practice: AgreesWith Seen SameEdge;
    Tapered by Practice: Decides Number JournalTapered HousingTapered;
    GrindFault by Practice: PointsTo Seen SameEdge;
    GrindFault by Practice: AgreesWith Seen OneEdge BothEdges;
    GrindFault by Practice: Decides Number JournalTapered JournalHourGlass;
    BentRod by Practice: PointsTo Seen OppositeEdges OneSkirt BentRod;
    BentRod by Navy: PointsTo Seen SlantedSkirt;
    BentRod by Practice: Decides Number RodBent;
    HourGlass by Practice: PointsTo Seen BothEdges;
    HourGlass by Practice: Decides Number JournalHourGlass;
    FilletRide by Practice: PointsTo Seen BothEdges;
    Barrel by Practice: PointsTo Seen CentreBand;
    Barrel by Practice: Decides Number JournalBarrel HousingHourGlass;
    CapShifted by Practice: PointsTo Seen JointsCrossed;
    Pinched by Practice: PointsTo Seen JointsBoth;
    Pinched by Practice: Decides Number HousingTooSmall HousingOutOfRound;
    LooseShells by Practice: PointsTo Seen BrightBack Spun;
    LooseShells by Practice: Decides Number HousingTooLarge;
    DirtBehind by Practice: PointsTo Seen HotDot BrightBack;
    Corrosion by Practice: PointsTo Seen Etched;
    Corrosion by Practice: AgreesWith Seen CoolantLost RustBand;
    Cavitation by Practice: PointsTo Seen Pits;
    Cavitation by Practice: AgreesWith Seen KnockPing;
    BowedLine by Practice: PointsTo Seen CentreMains;
    BowedLine by Practice: Decides Number CrankBent LineBowed;
    NoFilm by Words: Against Seen GreyBand;
    TightBearing by Words: Against Seen GreyBand;
    Tapered by Words: Against Seen GreyBand;
    HourGlass by Words: Against Seen GreyBand;
    FilletRide by Words: Against Seen GreyBand;
    Barrel by Words: Against Seen GreyBand;

    // Pistons and bores
    TooHot by Practice: PointsTo Seen FourCorners BothSkirts TopLand Overheated;
    TooHot by Practice: AgreesWith Seen CoolantLost;
    TightPin by Practice: PointsTo Seen FourCorners;
    TightPin by Practice: Decides Number PinClearanceSmall;
    TightPiston by Practice: PointsTo Seen BothSkirts;
    TightPiston by Practice: Decides Number WallClearanceSmall;
    OilHole by Practice: PointsTo Seen OneSkirt;
    OilHole by Practice: AgreesWith Seen Wiped;
    TightRingGap by Practice: PointsTo Seen TopLand;
    TightRingGap by Practice: Decides Number RingGapSmall;
    PreIgnition by Practice: PointsTo Seen Melted;
    RingFlutter by Practice: PointsTo Seen GrooveStep;
    RingFlutter by Practice: Decides Number GrooveWorn;
    RidgeStruck by Practice: PointsTo Seen GrooveStep;
    Dust by Practice: PointsTo Seen DullLines;
    Dust by Practice: AgreesWith Seen Specks;
    StoodWater by Practice: PointsTo Seen RustBand;
}
