//! A micrometer as it is read: its scales, how they look, what each part of
//! them is worth, where reading goes wrong, and a quiz.

mod draw;
mod helper;
mod mistake;
mod quiz;
mod scale;

pub use helper::Helper;
pub use quiz::{QUESTIONS, Quiz};
pub use scale::Micrometer;
