//! `keyblock proof`: serves the catalogue on this machine, and updates its pages whenever a record changes.

use std::io::{self, Write};
use std::path::Path;

use super::finding_options::FindingOptions;
use super::outcome::Outcome;
use super::streams::{say, wants_colour};
use crate::proof::{self, Revision};

pub(super) const ABOUT: &str = "\
Pulls a proof: serves the catalogue on the loopback address of this machine, and pulls another whenever \
a record changes. The open page is reloaded and keeps its place. While a record has an error, the last good \
page stays, and the error is shown in the terminal and on the page. Nothing is published; stop with Ctrl-C.

Of a code with more than ten findings three are listed, and the page lists those of its own record first. --code, --file and \
--all say which are printed in the terminal.";

/// Serves the catalogue in `dir` until stopped.
pub(super) fn run(
    dir: &Path,
    port: u16,
    asked: &FindingOptions,
    out: &mut impl Write,
) -> io::Result<Outcome> {
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
        let found = &revision.report;
        let findings = asked.report(dir, &found.findings, &found.sources, colour);
        say(findings + &revision.in_words());
        asked.say_unknown_files(dir, &found.sources);
    })?;
    Ok(Outcome::Done)
}
