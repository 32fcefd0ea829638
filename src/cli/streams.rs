//! Standard output and standard error, whose readers may leave early (`keyblock audit | head -1`).
//!
//! A closed pipe is no failure: what is written after that goes nowhere, and the command does what
//! it was asked for and ends as it would have ended.

use std::fmt::Display;
use std::io::{self, ErrorKind, IsTerminal, Write};

/// A stream that may be closed at its other end.
pub(super) struct MayClose<W>(pub W);

impl<W: Write> Write for MayClose<W> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        match self.0.write(bytes) {
            Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(bytes.len()),
            written => written,
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        match self.0.flush() {
            Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
            flushed => flushed,
        }
    }
}

/// Says `text` and ends the line, on standard error. Where nobody can be told, nobody is.
pub(super) fn say(text: impl Display) {
    let _ = writeln!(io::stderr(), "{text}");
}

/// Whether colour is wanted: on a terminal, unless `NO_COLOR` is set.
pub(super) fn wants_colour(stream: &impl IsTerminal) -> bool {
    stream.is_terminal() && std::env::var_os("NO_COLOR").is_none_or(|v| v.is_empty())
}
