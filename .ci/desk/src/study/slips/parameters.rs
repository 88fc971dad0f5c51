//! What engines, gauges and hands of the slip study are like.
//!
//! Written before there was a detector to please. Lengths are in tenths of a
//! thou (0.0001 in, 2.54 µm) on diameter. "Common practice" is what the trade
//! repeats without a source that could be named; everything else is our own
//! choice, with its reason.

use fenderbench::session::Arrangement;

/// Cylinders, main journals, rods on a throw, and how often an engine that
/// somebody takes apart at home is built like that. Our own choice: fours are
/// the most, then eights, then sixes; small ones for their share of machines.
pub type Layout = (Arrangement, u8, u8, u8);
pub const LAYOUTS: &[(Layout, f64)] = &[
    ((Arrangement::InLine, 4, 5, 1), 45.0),
    ((Arrangement::Vee, 8, 5, 2), 20.0),
    ((Arrangement::InLine, 6, 7, 1), 14.0),
    ((Arrangement::Vee, 6, 4, 2), 8.0),
    ((Arrangement::Flat, 4, 3, 1), 4.0),
    ((Arrangement::InLine, 3, 4, 1), 3.0),
    ((Arrangement::InLine, 2, 2, 1), 3.0),
    ((Arrangement::Single, 1, 2, 1), 3.0),
];

/// Half of all benches work in inches: our own choice, so that both count.
pub const INCH: f64 = 50.0;

/// Sizes in millimetres, to whole or half ones, and in sixteenths of an inch:
/// passenger-car engines from small to large.
pub const BORE_MM: (f64, f64) = (60.0, 112.0);
pub const MAIN_MM: (f64, f64) = (42.0, 80.0);
/// Rod journals are smaller than main journals by so much.
pub const ROD_SMALLER_MM: (f64, f64) = (2.0, 12.0);

/// Of a hundred engines, in how many all bores, all main journals or all rod
/// journals have been machined before. Our own choice: an engine that is
/// taken apart is old, and rod journals suffer before main journals.
pub const REBORED: f64 = 20.0;
pub const MAINS_REGROUND: f64 = 15.0;
pub const RODS_REGROUND: f64 = 20.0;
/// By how much, the usual steps (common practice), and in millimetres.
pub const OVERSIZES_IN: &[(f64, f64)] = &[
    (200.0, 30.0),
    (300.0, 35.0),
    (400.0, 15.0),
    (100.0, 10.0),
    (600.0, 10.0),
];
pub const OVERSIZES_MM: &[(f64, f64)] = &[(0.5, 50.0), (0.25, 25.0), (1.0, 15.0), (0.75, 10.0)];
pub const UNDERSIZES_IN: &[(f64, f64)] = &[(100.0, 60.0), (200.0, 30.0), (300.0, 10.0)];
pub const UNDERSIZES_MM: &[(f64, f64)] = &[(0.25, 60.0), (0.5, 30.0), (0.75, 10.0)];
/// In how many of these the person has seen the mark on crown or shell, and
/// given that size: half, because both are seen while taking apart, and as
/// many are grimy, worn off or not looked for.
pub const MACHINING_KNOWN: f64 = 50.0;
/// In how many engines one bore or journal is not like the others: one
/// sleeved, or built up and ground alone.
pub const ODD_ONE: f64 = 1.0;

/// In how many sessions the manual's limits are given before measuring
/// starts, and in how many the size made to, besides or without. Our own
/// choice: without limits the app can say little, but may be used so.
pub const MANUAL: f64 = 75.0;
pub const NOMINAL: f64 = 40.0;

/// New bores lie within this above the size made to (common practice: a
/// thou), pistons below by their clearance.
pub const BORE_BAND: (f64, f64) = (0.0, 10.0);
/// Piston-to-wall as made: plain cast to forged (common practice, 0.001 to
/// 0.004 in), and how pistons of one set differ.
pub const WALL: (f64, f64) = (10.0, 40.0);
pub const PISTON_SPREAD: f64 = 2.0;
/// Journals are ground within half a thou (common practice) somewhere in the
/// thou below the size made to.
pub const GRIND_PLACE: (f64, f64) = (-8.0, -5.0);
pub const GRIND_BAND: (f64, f64) = (0.0, 5.0);

/// Growth of bores at the top across the crank: exponential over engines, as
/// the trade's words for taper run from "good under a thou" to "never
/// re-ring at ten" (common practice) and most engines lie in the lower half.
pub const BORE_WEAR_MEAN: f64 = 30.0;
/// Beyond this nobody would still measure.
pub const BORE_WEAR_MOST: f64 = 200.0;
/// Cylinders of one engine differ by this factor (log), and one cylinder in
/// twenty-five has lost its oil film or a ring and is worn three times.
pub const CYLINDER_FACTOR: f64 = 0.35;
pub const CYLINDER_BAD: f64 = 4.0;
pub const CYLINDER_BAD_FACTOR: f64 = 3.0;
/// Wear along the crank as a part of that across it; one bore in twenty has
/// it the other way about, from a casting that was distorted.
pub const ALONG: (f64, f64) = (0.4, 0.9);
pub const ALONG_ODD: f64 = 5.0;
pub const ALONG_ODD_PART: (f64, f64) = (0.9, 1.4);
/// Wear lower down as a part of that at the top: little at the bottom
/// (common practice). One engine in ten has breathed dust and is worn mid and
/// low as well.
pub const MIDDLE: (f64, f64) = (0.35, 0.65);
pub const BOTTOM: (f64, f64) = (0.05, 0.3);
pub const DUST: f64 = 10.0;
pub const DUST_MIDDLE: (f64, f64) = (0.8, 1.1);
pub const DUST_BOTTOM: (f64, f64) = (0.4, 0.7);
/// Castings move: this much at each place of a bore, however unworn.
pub const BORE_SHAPE: f64 = 1.5;

/// Skirts wear by this on average; one in twenty has collapsed by more.
pub const SKIRT_WEAR_MEAN: f64 = 8.0;
pub const SKIRT_COLLAPSED: f64 = 5.0;
pub const SKIRT_COLLAPSED_BY: (f64, f64) = (20.0, 50.0);

/// Wear of a journal's mean size, and the factor by which engines differ.
pub const JOURNAL_WEAR_MEAN: f64 = 5.0;
pub const JOURNAL_FACTOR: f64 = 0.6;
/// Out-of-round: exponential, mean 0.0003 in on mains as in the study of
/// journals, more on rods, which are loaded from one side. Axis anywhere.
pub const MAIN_OVAL_MEAN: f64 = 3.0;
pub const ROD_OVAL_MEAN: f64 = 4.0;
/// Taper over the journal and barrel shape, either way.
pub const JOURNAL_TAPER: f64 = 2.0;
pub const JOURNAL_BARREL: f64 = 1.5;
/// In how many engines one journal has run without oil: how much smaller it
/// is, and how much more oval.
pub const JOURNAL_RUINED: f64 = 4.0;
pub const JOURNAL_RUINED_BY: (f64, f64) = (15.0, 100.0);
pub const JOURNAL_RUINED_OVAL: f64 = 4.0;

/// Graduations and how many have them: verniers are usual in inches, less so
/// in millimetres; dials mostly show half thous and hundredths.
pub const MICROMETERS_IN: &[(&str, f64)] = &[("0.0001", 80.0), ("0.001", 15.0), ("0.0005", 5.0)];
pub const MICROMETERS_MM: &[(&str, f64)] = &[("0.001", 55.0), ("0.01", 45.0)];
pub const DIALS_IN: &[(&str, f64)] = &[("0.0005", 65.0), ("0.0001", 35.0)];
pub const DIALS_MM: &[(&str, f64)] = &[("0.01", 75.0), ("0.001", 25.0)];
/// Bores by dial bore gauge, the rest by telescoping gauge and micrometer.
pub const DIAL: f64 = 30.0;
/// Dials on which plus is smaller.
pub const DIAL_BACKWARD: f64 = 30.0;

/// Standard deviation of one reading, drawn for each person: half of what
/// common practice gives as 95 % for the practised and for the hobbyist.
pub const HAND_MICROMETER: (f64, f64) = (0.5, 1.5);
pub const HAND_TELESCOPING: (f64, f64) = (1.5, 5.0);
pub const HAND_DIAL: (f64, f64) = (0.5, 2.0);
/// Of a hundred telescoping gauges, how many are in the hand for the first
/// weekend, and then (half of ± 0.0015 in).
pub const FIRST_WEEKEND: f64 = 20.0;
pub const HAND_FIRST_WEEKEND: f64 = 7.5;
/// In so many of a hundred readings the feel was lost: this many times worse.
/// Readings are honest all the same.
pub const FEEL_LOST: f64 = 1.0;
pub const FEEL_LOST_FACTOR: f64 = 4.0;
/// How wrongly a gauge is set, the same for all it reads.
pub const SETTING: f64 = 2.0;

/// Most take the standard route, the others one of the other two.
pub const FULLER: f64 = 15.0;
pub const PLAIN: f64 = 15.0;

/// Limits of the manuals of these engines. Invented within what common
/// practice calls usual: size as made, and how far wear may go; shapes new
/// and worn.
pub const BORE_SERVICE: (f64, f64) = (30.0, 60.0);
pub const JOURNAL_SERVICE: (f64, f64) = (10.0, 20.0);
pub const BORE_SHAPE_NEW: f64 = 5.0;
pub const BORE_ROUND_SERVICE: (f64, f64) = (20.0, 50.0);
pub const BORE_TAPER_SERVICE: (f64, f64) = (30.0, 60.0);
pub const JOURNAL_SHAPE_NEW: f64 = 2.0;
pub const JOURNAL_SHAPE_SERVICE: (f64, f64) = (5.0, 10.0);
pub const WALL_SERVICE: (f64, f64) = (50.0, 70.0);
