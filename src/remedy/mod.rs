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
//! A [`plan`] chooses among all of it for the whole set: what is proved to be
//! enough, at the least cost.
//!
//! Beside numbers stand looks: what was seen ([`Sight`]), what that says of
//! a part ([`condition`]), and which causes it supports ([`causes`]).
//!
//! [`Measured`]: crate::uncertainty::Measured
//! [`Exact`]: crate::quantity::Exact

mod bill;
mod book;
mod bores;
mod bound;
mod cause;
mod clean_up;
mod crank;
mod enough;
mod evidence;
mod facts;
mod gates;
mod job;
mod judged;
mod look;
mod pairing;
mod plan;
mod planner;
mod price;
mod prove;
mod rules;
mod search;
mod shells;
mod sight;
mod way;
mod works;

pub use bores::{Boring, Cylinder, Stock, oversizes};
pub use bound::{HALVES_APART, LIGHT_HONE, NEIGHBOURS_APART};
pub use cause::{Cause, Fact, IMPOSSIBLE_CLEARANCE, Scope, Source};
pub use clean_up::{Bracket, Candidate, Sizes, WornBore, WornJournal};
pub use crank::{Grinding, Journal, target, undersizes};
pub use evidence::{Clue, Found, Known, Number, Region, Rule, Says, Sign, Standing, causes};
pub use facts::{Ask, Question};
pub use gates::{Checks, Gate, Judged, Word, judge, soundness};
pub use job::{Bearings, Finish, Harm, Job, Looks, Part, Place, Row};
pub use look::{Look, Meaning, Subject, Surface, Unsound};
pub use pairing::{Mate, Paired, pair};
pub use plan::{About, Basis, Effect, Next, Plan, plan};
pub use price::{Item, Price, PriceRefused, Prices};
pub use prove::{Acceptance, Proof, Prover, Reason, Trouble};
pub use rules::RULES;
pub use shells::{Choice, Line, Mixing, Position, Shell, best, clearance};
pub use sight::{Aftermath, Condition, Sight, Spot, clashes, condition, debris};
pub use way::{Predicted, RowWay, TopWay, Way};
pub use works::{
    BoreWork, CONSEQUENCES, Done, HousingWork, JournalWork, PistonWork, Recheck, ShellWork, Work,
};
