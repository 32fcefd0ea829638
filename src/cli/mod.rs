//! The command line: a coat over the library.
//!
//! In: the words typed. Out: one call, what people or programs read, and an [`Outcome`]. One file a
//! command; [`report`] prints findings for people, [`audit_document`] for programs, [`progress`] draws bars on
//! a terminal, [`streams`] writes where nobody may be listening. Nothing below this stage knows of arguments, terminals or colour.
#![allow(
    clippy::disallowed_methods,
    reason = "commands look at folders and write what is asked"
)]

mod align;
mod audit;
mod audit_document;
mod census;
mod compile;
mod designs;
mod identify;
mod outcome;
mod plural;
mod progress;
mod proof;
pub mod report;
mod start;
mod streams;

use std::ffi::OsString;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use clap::{CommandFactory, Parser, Subcommand};

pub use outcome::Outcome;
use plural::counted;
use streams::{MayClose, say, wants_colour};

#[derive(Parser)]
#[command(
    name = "keyblock",
    version,
    about = "Compiles plain records into the web catalogue raisonné of a printmaker",
    long_about = "Keyblock compiles plain TOML records with Markdown notes into the cross-linked web \
                  catalogue raisonné of a printmaker: one record per design, one per known impression.",
    after_help = "Exit codes: 0 done, whatever the doubts and hints; 1 errors found, or not done; 2 usage.",
    max_term_width = 100,
    arg_required_else_help = true
)]
struct Words {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Lay down an empty catalogue with commented templates
    #[command(long_about = start::ABOUT)]
    Start {
        /// The folder to lay it down in; made where it is not there, refused where it holds files
        dir: PathBuf,
    },
    /// Read, judge and write the site; all or nothing
    #[command(long_about = compile::ABOUT)]
    Compile {
        /// The catalogue's folder
        #[arg(default_value = ".")]
        dir: PathBuf,
        /// Where the site goes; an empty folder, or one compiled into before [default: DIR/web]
        #[arg(long, value_name = "DIR")]
        to: Option<PathBuf>,
    },
    /// Say what is wrong or doubtful; write nothing
    #[command(long_about = audit::ABOUT)]
    Audit {
        /// The catalogue's folder
        #[arg(default_value = ".")]
        dir: PathBuf,
        /// One JSON document on standard output
        #[arg(long)]
        json: bool,
    },
    /// Pull a proof: serve the catalogue on this machine and follow its records
    #[command(long_about = proof::ABOUT)]
    Proof {
        /// The catalogue's folder
        #[arg(default_value = ".")]
        dir: PathBuf,
        /// The port on the loopback address; 0 takes a free one
        #[arg(long, default_value_t = 7414)]
        port: u16,
    },
    /// Say which state and printing a sheet can be, and why
    #[command(long_about = identify::ABOUT)]
    Identify(identify::Words),
    /// Say how many sheets are known, where, and how sure that is
    #[command(long_about = census::ABOUT)]
    Census(census::Words),
    /// Lay the photographs of a design on its reference picture, and say how well each lies
    #[command(long_about = align::ABOUT)]
    Align(align::Words),
    /// Print completions for a shell
    Completions {
        /// The shell
        shell: clap_complete::Shell,
    },
}

/// Runs the command that `words` (the program's name first) ask for.
pub fn run(words: impl IntoIterator<Item = OsString>) -> Outcome {
    let words = match Words::try_parse_from(words) {
        Ok(words) => words,
        Err(refusal) => {
            // A closed pipe is no failure of help or of a usage message.
            let _ = refusal.print();
            return if refusal.use_stderr() {
                Outcome::Usage
            } else {
                Outcome::Done
            };
        }
    };
    let out = &mut MayClose(io::stdout().lock());
    let done = match words.command {
        Command::Start { dir } => start::run(&dir, out),
        Command::Compile { dir, to } => {
            with_catalogue(&dir, |dir| compile::run(dir, to.as_deref(), out))
        }
        Command::Audit { dir, json } => with_catalogue(&dir, |dir| audit::run(dir, json, out)),
        Command::Proof { dir, port } => with_catalogue(&dir, |dir| proof::run(dir, port, out)),
        Command::Identify(words) => {
            with_catalogue(&words.dir, |dir| identify::run(dir, &words, out))
        }
        Command::Align(words) => with_catalogue(&words.dir, |dir| align::run(dir, &words, out)),
        Command::Census(words) => with_catalogue(&words.dir, |dir| census::run(dir, &words, out)),
        Command::Completions { shell } => {
            let mut text = Vec::new();
            clap_complete::generate(shell, &mut Words::command(), "keyblock", &mut text);
            out.write_all(&text).map(|()| Outcome::Done)
        }
    };
    match done.and_then(|outcome| out.flush().map(|()| outcome)) {
        Ok(outcome) => outcome,
        Err(error) => {
            say(format_args!("keyblock: {error}"));
            Outcome::NotDone
        }
    }
}

/// Calls a command on a folder that can be one of a catalogue.
fn with_catalogue(
    dir: &Path,
    command: impl FnOnce(&Path) -> io::Result<Outcome>,
) -> io::Result<Outcome> {
    if dir.is_dir() {
        return command(dir);
    }
    let dir = dir.display();
    say(format_args!("keyblock: there is no folder `{dir}`"));
    say("  name the folder that holds catalogue.toml, or lay one down with `keyblock start`");
    Ok(Outcome::Usage)
}
