//! Standard output and standard error, which may be closed early (`keyblock audit | head -1`).
//!
//! A closed pipe is not a failure: later output is discarded, and the command continues and ends as it would
//! otherwise.

use std::fmt::Display;
use std::io::{self, ErrorKind, IsTerminal, Write};

use super::report;

/// A stream whose reader may close it. Writing to it then does nothing.
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

/// Writes `text` and a line break on standard error, what is typed in quotation marks instead of backticks. Write
/// errors are ignored.
pub(super) fn say(text: impl Display) {
    let _ = writeln!(io::stderr(), "{}", report::quoted(&text.to_string()));
}

/// Whether to write colour: on a terminal, unless `NO_COLOR` is set.
pub(super) fn wants_colour(stream: &impl IsTerminal) -> bool {
    stream.is_terminal() && std::env::var_os("NO_COLOR").is_none_or(|v| v.is_empty())
}
