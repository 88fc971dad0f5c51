//! What was seen, as the gates of a plan ask for it.

use litemap::LiteMap;

use crate::remedy::{
    self, Condition, Finish, Harm, Look, Looks, Part, Row, Sight, Spot, Subject, Surface, Unsound,
};
use crate::session::Session;

/// What was seen on each part.
pub(super) fn looks(session: &Session) -> LiteMap<Part, Looks> {
    let sights: Vec<Sight> = session.sights().collect();
    let clashes = remedy::clashes(&sights);
    let mut told: LiteMap<Part, Looks> = LiteMap::new();
    for sight in &sights {
        let Some(part) = part(sight.spot) else {
            continue;
        };
        let condition = remedy::condition(&sights, sight.spot);
        let looks = told.entry(part).or_default();
        looks.harm = looks.harm.max(Some(harm(sight, condition)));
        let finish = condition.surface.map(|surface| match surface {
            Surface::Clean => Finish::Good,
            Surface::Light => Finish::Dull,
            Surface::NailCatching | Surface::Deep => Finish::Scored,
        });
        let finish = finish.max(is_spoilt(sight).then_some(Finish::Scored));
        looks.surface = looks.surface.max(finish);
        looks.contradictory |= clashes.iter().any(|(spot, ..)| *spot == sight.spot);
        // A shell that turned has spoilt the bore that holds it, whatever else
        // is wrong with that.
        if (sight.look, sight.seen) == (Look::Spun, true)
            && let Part::Shells(row, index) = part
        {
            told.entry(Part::Housing(row, index)).or_default().surface = Some(Finish::Scored);
        }
    }
    told
}

/// Whether a part that can be bought is not run again after this look: shells
/// with any mark but the grey band of wear, pistons that scuffed or whose
/// grooves have a step (common practice).
const fn is_spoilt(sight: &Sight) -> bool {
    use Look::{BothSkirts, FourCorners, GreyBand, GrooveStep, OneSkirt, TopLand};
    sight.seen
        && match sight.spot.subject {
            Subject::MainShell | Subject::RodShell => !matches!(sight.look, GreyBand),
            Subject::Piston => matches!(
                sight.look,
                FourCorners | BothSkirts | OneSkirt | TopLand | GrooveStep
            ),
            _ => false,
        }
}

/// What one look says of the soundness of its part. A test for cracks that
/// found none answers what asked for it.
fn harm(sight: &Sight, condition: Condition) -> Harm {
    let own = match sight.look {
        _ if !sight.seen => Harm::None,
        Look::HeatBlue => Harm::HeatBlue,
        Look::BentRod => Harm::Bent,
        Look::Spun => Harm::Spun,
        Look::OldRepair => Harm::Welded,
        look if look.is_crack() => Harm::Cracked,
        _ => Harm::None,
    };
    let general = match condition.unsound {
        Some(Unsound::Replace) => Harm::Broken,
        Some(Unsound::CrackTest) if condition.no_crack => Harm::None,
        Some(Unsound::Specialist | Unsound::CrackTest) => Harm::MayBeCracked,
        None => Harm::None,
    };
    if own == Harm::None { general } else { own }
}

/// The part a spot is on; the cylinder head is none of a plan.
fn part(spot: Spot) -> Option<Part> {
    let index = usize::from(spot.position).checked_sub(1)?;
    Some(match spot.subject {
        Subject::MainShell => Part::Shells(Row::Mains, index),
        Subject::RodShell => Part::Shells(Row::Rods, index),
        Subject::Piston => Part::Piston(index),
        Subject::Bore => Part::Cylinder(index),
        Subject::MainJournal => Part::Journal(Row::Mains, index),
        Subject::RodJournal => Part::Journal(Row::Rods, index),
        Subject::Rod => Part::Housing(Row::Rods, index),
        Subject::Block => Part::Block,
        Subject::Engine | Subject::Cylinder | Subject::Oil | Subject::Head => return None,
    })
}
