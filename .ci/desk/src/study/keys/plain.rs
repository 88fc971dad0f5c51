//! The same numbers typed in full into plain fields, with nothing to check
//! them: every digit and the point, and one touch for the next field.

use fenderbench::present::Key;
use fenderbench::quantity::{Size, Unit, show};

use super::Count;
use super::finger::{Press, keys, means, pressed};
use crate::study::chance::Chance;

/// Types a size until its field holds a number, and counts what that is off.
/// What is no number, such as one with two points, is seen and typed again.
pub fn typed(chance: &mut Chance, meant: Size, unit: Unit, decimals: u8, count: &mut Count) {
    let text = show(meant.into(), unit, decimals).text;
    let mut wanted = keys(&text);
    wanted.push(Press::Enter);
    loop {
        let mut field = String::new();
        let presses = pressed(chance, &wanted).concat();
        count.taps += presses.len();
        for press in presses {
            match means(press, Key::Point) {
                Some(Key::Digit(digit)) => field.push(char::from(b'0' + digit)),
                Some(Key::Point) => field.push('.'),
                Some(_) => {
                    field.pop();
                }
                // The next field: what is still typed goes there.
                None => break,
            }
        }
        if let Some(by) = off(&field, meant, unit) {
            count.wrong(by);
            return;
        }
    }
}

/// What a field is off, in quanta; `None` where it holds no number.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    reason = "far below 2^53"
)]
fn off(field: &str, meant: Size, unit: Unit) -> Option<i64> {
    let number: f64 = field.parse().ok()?;
    let quanta = (number * unit.quanta() as f64).round();
    Some(quanta as i64 - meant.quanta())
}
