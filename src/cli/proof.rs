//! `keyblock proof`: serves the catalogue on this machine, and updates its pages whenever a record changes.

use std::io::{self, Write};
use std::path::Path;

use super::outcome::Outcome;
use super::report;
use super::streams::{say, wants_colour};
use crate::proof::{self, Revision};

pub(super) const ABOUT: &str = "\
Pulls a proof: serves the catalogue on the loopback address of this machine, and pulls another whenever \
a record changes. The open page is reloaded and keeps its place. While a record has an error, the last good \
page stays, and the error is shown in the terminal and on the page. Nothing is published; stop with Ctrl-C.";

/// Serves the catalogue in `dir` until stopped.
pub(super) fn run(dir: &Path, port: u16, out: &mut impl Write) -> io::Result<Outcome> {
    let listener = match std::net::TcpListener::bind((std::net::Ipv4Addr::LOCALHOST, port)) {
        Ok(listener) => listener,
        Err(error) if error.kind() == io::ErrorKind::AddrInUse => {
            say(format_args!(
                "keyblock: port {port} is in use; name another, or 0 for a free one"
            ));
            return Ok(Outcome::NotDone);
        }
        Err(error) => return Err(error),
    };
    writeln!(
        out,
        "proof of “{}” at http://{}/",
        dir.display(),
        listener.local_addr()?
    )?;
    out.flush()?;
    let colour = wants_colour(&io::stderr());
    proof::serve(dir, &listener, &|revision: &Revision| {
        let findings =
            report::findings(&revision.report.findings, &revision.report.sources, colour);
        say(findings + &revision.in_words());
    })?;
    Ok(Outcome::Done)
}
