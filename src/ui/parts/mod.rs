//! Parts that several screens share.

pub mod bar;
pub mod chart;
pub mod el;
pub mod field;
pub mod held;
pub mod keypad;
pub mod live;
pub mod mark;
pub mod notices;
pub mod phone;
pub mod press;
