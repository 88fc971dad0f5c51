//! What each combination of works is paid for.

use super::search::{Bottom, Top};
use super::{BoreWork, HousingWork, Item, JournalWork, PistonWork, Row, ShellWork};

/// What is paid once, whichever groups need it, by its bit in a meeting.
const SHARED: [Item; 6] = [
    Item::Wash,
    Item::Polish,
    Item::CrackTest,
    Item::GrindSetUp,
    Item::Crank,
    Item::Block,
];
const WASH: u8 = 1;
const POLISH: u8 = 2;
const GRIND: u8 = 4 | 8;
pub(super) const CRANK: u8 = 16;
pub(super) const BLOCK: u8 = 32;

/// What is paid once for a meeting.
pub(super) fn shared_items(meeting: u8) -> Vec<(Item, usize)> {
    let bits = (0..).zip(SHARED);
    let needed = bits.filter(|(bit, _)| meeting & (1 << bit) != 0);
    needed.map(|(_, item)| (item, 1)).collect()
}

/// What a housing is paid for by itself.
pub(super) const fn housing_item(work: HousingWork) -> Option<Item> {
    match work {
        HousingWork::Keep => None,
        HousingWork::Machine => Some(Item::ResizeRod),
        HousingWork::New => Some(Item::Rod),
    }
}

/// What bores and pistons are paid for, of so many cylinders, and the meeting
/// they need.
pub(super) fn top_items(top: &Top, all: usize) -> (u8, Vec<(Item, usize)>) {
    let mut items = vec![(Item::Rings, all)];
    if let PistonWork::New(_) = top.pistons {
        items.push((Item::Piston, all));
    }
    let (item, is_set_up) = match top.bores {
        BoreWork::UseAgain | BoreWork::NewBlock => (None, false),
        BoreWork::Deglaze => (Some(Item::Deglaze), false),
        BoreWork::Hone => (Some(Item::Hone), false),
        BoreWork::Oversize(_) => (Some(Item::Bore), true),
        BoreWork::Sleeves => (Some(Item::Sleeve), true),
    };
    items.extend(item.map(|item| (item, all)));
    if is_set_up || top.sleeve.is_some() {
        items.push((Item::BoreSetUp, 1));
    }
    items.extend(top.sleeve.map(|_| (Item::Sleeve, 1)));
    let meeting = match top.bores {
        BoreWork::UseAgain if top.sleeve.is_none() => 0,
        BoreWork::NewBlock => WASH | BLOCK,
        _ => WASH,
    };
    (meeting, items)
}

/// What a row is paid for, and the meeting it needs.
pub(super) fn bottom_items(
    row: Row,
    bottom: &Bottom,
    housings: &[HousingWork],
) -> (u8, Vec<(Item, usize)>) {
    let (shells, grind) = match row {
        Row::Mains => (Item::MainShells, Item::GrindMains),
        Row::Rods => (Item::RodShells, Item::GrindRodJournals),
    };
    let mut items = Vec::new();
    if bottom.shells != ShellWork::Keep {
        items.push((shells, housings.len()));
    }
    if let JournalWork::Grind(_) = bottom.journals {
        items.push((grind, 1));
    }
    let mut meeting = match bottom.journals {
        JournalWork::Keep => 0,
        JournalWork::Polish => WASH | POLISH,
        JournalWork::Grind(_) => WASH | GRIND,
        JournalWork::NewCrank => WASH | CRANK,
    };
    match bottom.housings {
        None => items.extend(
            housings
                .iter()
                .filter_map(|work| Some((housing_item(*work)?, 1))),
        ),
        Some(HousingWork::Keep) => {}
        Some(HousingWork::Machine) => {
            items.push((Item::AlignHone, 1));
            meeting |= WASH;
        }
        Some(HousingWork::New) => meeting |= WASH | BLOCK,
    }
    (meeting, items)
}
