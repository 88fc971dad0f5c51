//! From measured values to what to do with a part and with the set.
//!
//! Everything here takes plain data: [`Measured`] values, [`Exact`] lengths
//! and a [`Prover`] that knows the sources of doubt and the rule. Every way to
//! go comes with a [`Proof`]: proved, open or ruled out, why, and the part it
//! rests on. This room knows no session, no station and no words of screens.
//!
//! Wear is seldom even all round, and no gauge that reads diameters can tell.
//! So what cleans up a worn part is a [`Bracket`]: the size that does if the
//! wear is even, and the one that does if it is all on one side.
//!
//! [`Measured`]: crate::uncertainty::Measured
//! [`Exact`]: crate::quantity::Exact

mod bill;
mod book;
mod bores;
mod bound;
mod clean_up;
mod crank;
mod enough;
mod facts;
mod gates;
mod job;
mod judged;
mod pairing;
mod plan;
mod planner;
mod price;
mod prove;
mod search;
mod shells;
mod way;
mod works;

pub use bores::{Boring, Cylinder, Stock, hone, new_pistons, oversizes, stuck, use_again};
pub use bound::{HALVES_APART, LIGHT_HONE, NEIGHBOURS_APART};
pub use clean_up::{Bracket, Candidate, Sizes, WornBore, WornJournal};
pub use crank::{Grinding, Journal, keep, polish, target, undersizes};
pub use facts::{Ask, Question};
pub use gates::{Checks, Gate, Judged, Word, judge, soundness};
pub use job::{Bearings, Harm, Job, Looks, Part, Place, Row, Surface};
pub use pairing::{Mate, Paired, pair};
pub use plan::{Basis, Effect, Next, Plan, Subject, plan};
pub use price::{Item, Price, PriceRefused, Prices};
pub use prove::{Acceptance, Proof, Prover, Reason, Trouble};
pub use shells::{Choice, Line, Mixing, Position, Shell, best, clearance, full_set};
pub use way::{Predicted, RowWay, TopWay, Way};
pub use works::{
    BoreWork, CONSEQUENCES, Done, HousingWork, JournalWork, PistonWork, Recheck, ShellWork, Work,
};
