//! Drawing parts that several designs share: outlines in design units, ready to cut or leave.

pub mod birds;
pub mod boats;
pub mod figures;
pub mod harbour;
pub mod houses;
pub mod land;
pub mod lines;
pub mod sea;
pub mod sky;
