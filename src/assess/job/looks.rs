//! What was seen, as the gates of a plan ask for it.

use litemap::LiteMap;

use crate::remedy::{
    self, Finish, Harm, Look, Looks, Part, Row, Sight, Spot, Subject, Surface, Unsound,
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
        looks.harm = looks.harm.max(Some(harm(sight, condition.unsound)));
        let finish = condition.surface.map(|surface| match surface {
            Surface::Clean => Finish::Good,
            Surface::Light => Finish::Dull,
            Surface::NailCatching | Surface::Deep => Finish::Scored,
        });
        looks.surface = looks.surface.max(finish);
        looks.contradictory |= clashes.iter().any(|(spot, ..)| *spot == sight.spot);
        // A shell that turned has spoilt the bore that holds it.
        if (sight.look, sight.seen) == (Look::Spun, true)
            && let Part::Shells(row, index) = part
        {
            let housing = told.entry(Part::Housing(row, index)).or_default();
            housing.harm = housing.harm.max(Some(Harm::Spun));
        }
    }
    told
}

/// What one look says of the soundness of its part.
fn harm(sight: &Sight, unsound: Option<Unsound>) -> Harm {
    let own = match sight.look {
        _ if !sight.seen => Harm::None,
        Look::HeatBlue => Harm::HeatBlue,
        Look::BentRod => Harm::Bent,
        Look::Spun => Harm::Spun,
        Look::OldRepair => Harm::Welded,
        look if look.is_crack() => Harm::Cracked,
        _ => Harm::None,
    };
    let general = match unsound {
        Some(Unsound::Replace) => Harm::Broken,
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
