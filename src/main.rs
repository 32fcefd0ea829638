//! `keyblock`: words typed in, one call, an exit code out.
#![forbid(unsafe_code)]
fn main() {}
