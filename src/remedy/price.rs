//! What is paid for, the person's own prices, and how heavy each piece of
//! work is where there are none.

use core::fmt;

use litemap::LiteMap;

/// Something that is paid for, and for how much of it the price is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Item {
    /// Everything washed, galleries open: once.
    Wash,
    /// Crankshaft crack-tested before and after grinding: once.
    CrackTest,
    /// Block set up for boring: once.
    BoreSetUp,
    /// Crankshaft set up for grinding: once.
    GrindSetUp,
    /// Rings: for one cylinder.
    Rings,
    /// Deglazing: one cylinder.
    Deglaze,
    /// Crankshaft polished: once.
    Polish,
    /// A light hone: one cylinder.
    Hone,
    /// A pair of main shells.
    MainShells,
    /// A pair of rod shells.
    RodShells,
    /// A piston.
    Piston,
    /// A rod resized.
    ResizeRod,
    /// Main housings honed in line: once.
    AlignHone,
    /// Boring and honing to the piston: one cylinder.
    Bore,
    /// All mains ground.
    GrindMains,
    /// All rod journals ground.
    GrindRodJournals,
    /// A rod.
    Rod,
    /// A sleeve, fitted and finished to the piston: one cylinder.
    Sleeve,
    /// A crankshaft.
    Crank,
    /// A block, finished to the pistons.
    Block,
}

impl Item {
    /// Every item, the lightest first.
    pub const ALL: [Self; 20] = [
        Self::Wash,
        Self::CrackTest,
        Self::BoreSetUp,
        Self::GrindSetUp,
        Self::Rings,
        Self::Deglaze,
        Self::Polish,
        Self::Hone,
        Self::MainShells,
        Self::RodShells,
        Self::Piston,
        Self::ResizeRod,
        Self::AlignHone,
        Self::Bore,
        Self::GrindMains,
        Self::GrindRodJournals,
        Self::Rod,
        Self::Sleeve,
        Self::Crank,
        Self::Block,
    ];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Wash => "wash",
            Self::CrackTest => "crack_test",
            Self::BoreSetUp => "bore_set_up",
            Self::GrindSetUp => "grind_set_up",
            Self::Rings => "rings",
            Self::Deglaze => "deglaze",
            Self::Polish => "polish",
            Self::Hone => "hone",
            Self::MainShells => "main_shells",
            Self::RodShells => "rod_shells",
            Self::Piston => "piston",
            Self::ResizeRod => "resize_rod",
            Self::AlignHone => "align_hone",
            Self::Bore => "bore",
            Self::GrindMains => "grind_mains",
            Self::GrindRodJournals => "grind_rod_journals",
            Self::Rod => "rod",
            Self::Sleeve => "sleeve",
            Self::Crank => "crank",
            Self::Block => "block",
        }
    }

    /// The item of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|item| item.key() == key)
    }

    /// How heavy one is, where no prices are given: our own order of
    /// interventions, from what the hand does over what can be bought again
    /// to what is gone for good. What only goes along with other work weighs
    /// nothing. Each step outweighs all there can be of the one before.
    #[must_use]
    pub(super) const fn weight(self) -> u64 {
        let step = match self {
            Self::Wash | Self::CrackTest | Self::BoreSetUp | Self::GrindSetUp | Self::Rings => {
                return 0;
            }
            Self::Deglaze | Self::Polish => 0,
            Self::Hone | Self::MainShells | Self::RodShells => 1,
            Self::Piston => 2,
            Self::ResizeRod | Self::AlignHone => 3,
            Self::Bore => 4,
            Self::GrindMains | Self::GrindRodJournals => 5,
            Self::Rod | Self::Sleeve => 6,
            Self::Crank => 7,
            Self::Block => 8,
        };
        1 << (6 * step)
    }
}

/// A price, in the smallest coin of whatever money the person reckons in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Price(u64);

/// Why a price cannot be taken. The display is a sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PriceRefused {
    /// Below zero.
    Negative,
    /// Above [`Price::MAX`].
    TooMuch,
    /// Not written as an amount.
    NoAmount,
}

impl fmt::Display for PriceRefused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Negative => {
                "A price cannot be less than nothing; leave it blank if it is not known."
            }
            Self::NoAmount => "Type an amount with at most two decimals, without a sign of money.",
            Self::TooMuch => "This is more than any of it costs; look at the decimal point.",
        })
    }
}

impl core::error::Error for PriceRefused {}

impl Price {
    /// The largest: a thousand million, in hundredths.
    pub const MAX: i64 = 100_000_000_000;

    /// So many of the smallest coin.
    ///
    /// # Errors
    /// [`PriceRefused`] says what is wrong with it.
    ///
    /// ```
    /// use fenderbench::remedy::{Price, PriceRefused};
    /// assert_eq!(Price::new(4_500).map(Price::coins), Ok(4_500));
    /// assert_eq!(Price::new(-1), Err(PriceRefused::Negative));
    /// ```
    pub const fn new(coins: i64) -> Result<Self, PriceRefused> {
        if coins < 0 {
            Err(PriceRefused::Negative)
        } else if Self::MAX < coins {
            Err(PriceRefused::TooMuch)
        } else {
            Ok(Self(coins.unsigned_abs()))
        }
    }

    /// Reads an amount with at most two decimals, after a point or a comma.
    ///
    /// # Errors
    /// [`PriceRefused`] says what is wrong with it.
    ///
    /// ```
    /// use fenderbench::remedy::{Price, PriceRefused};
    /// assert_eq!(Price::parse("45,5").map(|p| p.to_string()), Ok("45.50".to_owned()));
    /// assert_eq!(Price::parse("-3"), Err(PriceRefused::Negative));
    /// ```
    pub fn parse(text: &str) -> Result<Self, PriceRefused> {
        let text = text.trim();
        let (minus, amount) = match text.strip_prefix(['-', '\u{2212}']) {
            Some(amount) => (true, amount),
            None => (false, text),
        };
        let (whole, decimals) = amount.split_once(['.', ',']).unwrap_or((amount, ""));
        let digits = |part: &str| part.bytes().all(|b| b.is_ascii_digit());
        if whole.is_empty() || 2 < decimals.len() || !digits(whole) || !digits(decimals) {
            return Err(PriceRefused::NoAmount);
        }
        let coins = format!("{whole}{decimals:0<2}").parse::<i64>();
        let coins = coins.map_err(|_| PriceRefused::TooMuch)?;
        Self::new(if minus { -coins } else { coins })
    }

    /// In the smallest coin.
    #[must_use]
    pub const fn coins(self) -> u64 {
        self.0
    }
}

impl fmt::Display for Price {
    /// As files have it, with two decimals.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{:02}", self.0 / 100, self.0 % 100)
    }
}

/// The person's own prices; what is not in here is blank: asked for where it
/// is needed, never invented.
pub type Prices = LiteMap<Item, Price>;
