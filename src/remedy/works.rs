//! The works there are, what each needs to be paid, and what it makes
//! necessary to look at again.

use super::Row;

/// What is done to the bores.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BoreWork {
    /// Nothing.
    UseAgain,
    /// Glaze broken by hand.
    Deglaze,
    /// A light hone.
    Hone,
    /// Bored and honed to the pistons of an oversize, by its index in
    /// [`Job::stock`](super::Job::stock).
    Oversize(usize),
    /// A sleeve in every cylinder, finished to its piston.
    Sleeves,
    /// Another block, finished to the pistons.
    NewBlock,
}

/// What is done about the pistons.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PistonWork {
    /// Each goes back where it ran.
    Keep,
    /// New ones of this index in [`Job::stock`](super::Job::stock).
    New(usize),
}

/// What is done to the journals of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JournalWork {
    /// Nothing.
    Keep,
    /// Polished.
    Polish,
    /// Ground to an undersize, by its index in
    /// [`Bearings::undersizes`](super::Bearings::undersizes).
    Grind(usize),
    /// Another crankshaft: of both rows or of none.
    NewCrank,
}

/// What is done to a housing: to all mains the same, to each rod its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HousingWork {
    /// Nothing.
    Keep,
    /// Honed in line, or the rod resized, to the size as made.
    Machine,
    /// Another block, or another rod.
    New,
}

/// What is done about the shells of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShellWork {
    /// They run again.
    Keep,
    /// New ones of one size, by its index in
    /// [`Bearings::shells`](super::Bearings::shells).
    One(usize),
    /// New ones, chosen place by place.
    Places,
    /// New ones that go with the journal as ground or bought.
    ToFit,
}

/// One choice of a plan. A pin is one that the person has made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Work {
    /// Of the bores.
    Bores(BoreWork),
    /// Of the pistons.
    Pistons(PistonWork),
    /// Of the journals of a row.
    Journals(Row, JournalWork),
    /// Of the housings of a row; of a pin for every rod.
    Housings(Row, HousingWork),
    /// Of the shells of a row.
    Shells(Row, ShellWork),
}

impl Work {
    /// Whether the other one chooses about the same thing.
    #[must_use]
    pub fn is_about_the_same(self, other: Self) -> bool {
        match (self, other) {
            (Self::Bores(_), Self::Bores(_)) | (Self::Pistons(_), Self::Pistons(_)) => true,
            (Self::Journals(a, _), Self::Journals(b, _))
            | (Self::Housings(a, _), Self::Housings(b, _))
            | (Self::Shells(a, _), Self::Shells(b, _)) => a == b,
            _ => false,
        }
    }
}

/// What a piece of work makes necessary to look at again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Recheck {
    /// The size of the ring set.
    RingSet,
    /// The bore of the head gasket.
    GasketBore,
    /// The wall of the cylinder.
    Wall,
    /// The compression ratio.
    Compression,
    /// The weight of the pistons, and the balance.
    PistonWeight,
    /// The margin to knocking.
    KnockMargin,
    /// The clearance of the pistons.
    PistonClearance,
    /// The ring gap at the bottom of the bore.
    RingGapAtBottom,
    /// Whether the rings are of a kind for such a bore.
    RingType,
    /// The size of the shell set.
    ShellSet,
    /// The fillets.
    Fillet,
    /// The end play.
    EndPlay,
    /// The land of the oil seal.
    SealLand,
    /// The stroke.
    Stroke,
    /// The height of pistons to deck.
    DeckHeight,
    /// Cracks.
    Cracks,
    /// Whether the oil holes are clean.
    OilHoles,
    /// The drive of the camshaft: its slack.
    TimingDrive,
    /// The seal of the crankshaft: whether it is concentric.
    Seal,
    /// The oil clearance of all mains.
    MainClearance,
    /// The distance of the centres of the rods.
    CentreDistance,
    /// The torque of the rod bolts.
    BoltTorque,
    /// Whether all pistons stand equally high.
    PistonHeight,
    /// Oil galleries washed with their plugs out.
    Galleries,
    /// Everything the shop touched, measured again.
    MeasureAgain,
}

/// What was done, as far as it has consequences of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Done {
    /// Bored to an oversize.
    Oversize,
    /// Deglazed and no more.
    Deglaze,
    /// Journals ground.
    Grind,
    /// Main housings honed in line.
    AlignHone,
    /// Rods resized.
    Resize,
    /// Anything was machined.
    Machined,
}

/// What is to be looked at again after each piece of work (common practice).
pub const CONSEQUENCES: [(Done, &[Recheck]); 6] = {
    use Recheck::*;
    [
        (
            Done::Oversize,
            &[
                RingSet,
                GasketBore,
                Wall,
                Compression,
                PistonWeight,
                KnockMargin,
            ],
        ),
        (Done::Deglaze, &[PistonClearance, RingGapAtBottom, RingType]),
        (
            Done::Grind,
            &[
                ShellSet, Fillet, EndPlay, SealLand, Stroke, DeckHeight, Cracks, OilHoles,
            ],
        ),
        (
            Done::AlignHone,
            &[TimingDrive, Seal, DeckHeight, MainClearance],
        ),
        (
            Done::Resize,
            &[CentreDistance, DeckHeight, BoltTorque, PistonHeight],
        ),
        (Done::Machined, &[Galleries, MeasureAgain]),
    ]
};
