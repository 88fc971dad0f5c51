//! Parts that several screens share.

pub mod bar;
pub mod keypad;
pub mod mark;
pub mod notices;
pub mod theme;
