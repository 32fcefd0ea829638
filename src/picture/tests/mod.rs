//! Tests of the whole stage, on pictures made here.

mod colour;
mod hostile;
mod keeping;
mod reading;
mod samples;
mod tiles;
