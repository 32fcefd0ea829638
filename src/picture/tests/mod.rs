//! Tests of the whole stage, on pictures made here.

mod colour;
mod hostile;
mod inks;
mod keeping;
mod mutated;
mod profiles;
mod reading;
mod samples;
mod tiffs;
mod tiles;
mod vector_code;
