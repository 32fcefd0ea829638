//! `keyblock`: words typed in, one call, an exit code out.
#![forbid(unsafe_code)]

use std::process::ExitCode;

fn main() -> ExitCode {
    keyblock::cli::run(std::env::args_os()).into()
}
