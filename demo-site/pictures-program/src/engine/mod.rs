//! What every picture is made with; nothing here belongs to one picture.
//!
//! In reading order: pseudo-random numbers (`noise`), outlines (`shape`), coverage (`plane`), what blocks are
//! made of (`grain`), `colour`, `ink`, `paper`, handwriting (`script`), one printed `sheet`, and
//! its photograph (`photo`).

pub mod colour;
pub mod grain;
pub mod ink;
pub mod noise;
pub mod paper;
pub mod photo;
pub mod plane;
pub mod script;
pub mod shape;
pub mod sheet;
