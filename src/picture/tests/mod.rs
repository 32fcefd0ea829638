//! What the stage promises, on pictures made here.

mod colour;
mod hostile;
mod keeping;
mod reading;
mod samples;
mod tiles;
