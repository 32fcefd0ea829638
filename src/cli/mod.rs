//! The command line: parses arguments, calls the library, prints the result.
//!
//! In: the arguments. Out: output for people or for programs, and an [`Outcome`]. Each command has a file,
//! which makes one call of the library. [`report`] prints findings for people, [`audit_document`] for programs, and
//! [`finding_options`] says which; [`catalogue_folder`] finds the catalogue;
//! [`progress`] draws bars on a terminal, [`voice`] words help and refusals of arguments, [`streams`] writes to streams that may be closed. No stage before
//! this one deals with arguments, terminals or colour.
#![allow(
    clippy::disallowed_methods,
    reason = "commands read folders and write files, and read the environment"
)]

mod add;
mod align;
mod audit;
mod audit_document;
mod catalogue_folder;
mod census;
mod compile;
mod designs;
mod finding_options;
mod identify;
mod intake;
mod issue;
mod kept_back;
mod not_kept;
mod outcome;
mod plural;
mod progress;
mod proof;
mod rename;
pub mod report;
mod resolve;
mod start;
mod streams;
mod terms;
mod voice;

use std::ffi::OsString;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use clap::{CommandFactory, FromArgMatches, Parser, Subcommand};

use catalogue_folder::CatalogueFolder;
use compile::Sweep;
use finding_options::FindingOptions;
pub use outcome::Outcome;
use streams::{MayClose, say};

#[derive(Parser)]
#[command(
    name = "keyblock",
    version,
    about = "Compiles plain records into the web catalogue raisonné of a printmaker",
    long_about = "Keyblock compiles plain TOML records with Markdown notes into the cross-linked web \
                  catalogue raisonné of a printmaker: one record per design, one per known impression.",
    after_help = "For example\n  keyblock compile my-catalogue\n\nThe exit code is 0 when the work is done, \
                  whatever the doubts and hints; 1 when errors were found or the work could not be done; 2 when the \
                  command was used wrongly.",
    disable_version_flag = true,
    max_term_width = 100,
    arg_required_else_help = true
)]
struct Arguments {
    /// Print the licences of everything that the program is built from
    #[arg(long, exclusive = true)]
    licences: bool,
    /// Print the version
    #[arg(short = 'V', long, action = clap::ArgAction::Version)]
    version: Option<bool>,
    #[command(subcommand)]
    command: Option<Command>,
}

/// The licences of the packages that are built in, with their notices, and that of the face of the pages.
const LICENCES: &str = concat!(
    include_str!("../../content/licences.txt"),
    "\nThe face of the pages is cut from Source Serif 4 and renamed (SIL Open Font License 1.1):\n\n",
    include_str!("../../themes/laid/assets/type/OFL.txt"),
);

#[derive(Subcommand)]
enum Command {
    /// Create an empty catalogue with commented templates
    #[command(
        long_about = start::ABOUT,
        after_help = "For example\n  keyblock start my-catalogue"
    )]
    Start {
        /// The folder to create it in: a new one, or one without files
        dir: PathBuf,
    },
    /// Read and check the records, and write the site; all or nothing
    #[command(
        long_about = compile::ABOUT,
        after_help = "For example\n  keyblock compile my-catalogue\n  keyblock compile my-catalogue --to /srv/www/prints"
    )]
    Compile {
        /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
        dir: Option<PathBuf>,
        /// The folder of the site: empty, or compiled into before; not among the records. DIR/web where none is named
        #[arg(long, value_name = "DIR")]
        to: Option<PathBuf>,
        /// Remove from the cache at once what this compile did not use
        #[arg(long)]
        sweep: bool,
        #[command(flatten)]
        findings: FindingOptions,
    },
    /// Issue an edition: compile, and register its addresses permanently
    #[command(
        long_about = issue::ABOUT,
        after_help = "For example\n  keyblock issue my-catalogue"
    )]
    Issue(issue::IssueArguments),
    /// Report what is wrong or doubtful; write nothing
    #[command(
        long_about = audit::ABOUT,
        after_help = "For example\n  keyblock audit my-catalogue\n  keyblock audit my-catalogue --code value-unknown --all\n  \
                      keyblock audit my-catalogue --settled"
    )]
    Audit {
        /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
        dir: Option<PathBuf>,
        /// Print the doubts that records say are settled, with the reason of each, instead of the others
        #[arg(long)]
        settled: bool,
        /// Print one JSON document on standard output, with every finding and the settled doubts
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        findings: FindingOptions,
    },
    /// Pull a proof: serve the catalogue on this machine and update it as records change
    #[command(
        long_about = proof::ABOUT,
        after_help = "For example\n  keyblock proof my-catalogue"
    )]
    Proof {
        /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
        dir: Option<PathBuf>,
        /// The port on the loopback address: 7414 where none is named; 0 takes a free one
        #[arg(long, default_value_t = 7414)]
        port: u16,
        #[command(flatten)]
        findings: FindingOptions,
    },
    /// Say which state and printing a sheet can be, and why
    #[command(
        long_about = identify::ABOUT,
        after_help = "For example\n  keyblock identify 14 --see moon=present lamps=2,3:probable\n  keyblock identify 14 --in my-catalogue"
    )]
    Identify(identify::IdentifyArguments),
    /// Count the impressions known, by holder, place, state and printing
    #[command(
        long_about = census::ABOUT,
        after_help = "For example\n  keyblock census\n  keyblock census 14 --doubts doubts.html"
    )]
    Census(census::CensusArguments),
    /// Resolve references: numbers, states, accession numbers, titles, names
    #[command(
        long_about = resolve::ABOUT,
        after_help = "For example\n  keyblock resolve \"OP 14 iii\" 14.7\n  keyblock resolve --list holdings.csv --column number"
    )]
    Resolve(resolve::ResolveArguments),
    /// Align the photographs of a design with its reference picture, and report how well each fits
    #[command(
        long_about = align::ABOUT,
        after_help = "For example\n  keyblock align 14"
    )]
    Align(align::AlignArguments),
    /// Read what a museum or dealer hands in: propose records, and report what was understood
    #[command(
        long_about = intake::ABOUT,
        after_help = "For example\n  keyblock intake holdings.xlsx --as harbour-museum\n  keyblock intake --accept harbour-museum",
        arg_required_else_help = true
    )]
    Intake(intake::IntakeArguments),
    /// Lay down the next record from its template, and say what to fill in
    #[command(
        long_about = add::ABOUT,
        after_help = "For example\n  keyblock add impression 14 --holder harbour-museum --accession 1962.44\n  keyblock add design --title \"The Last Ferry\"\n  keyblock add holder \"Harbour Museum\"",
        arg_required_else_help = true
    )]
    Add(add::AddArguments),
    /// Change a key in every record, and keep the old one as a former key
    #[command(
        long_about = rename::ABOUT,
        after_help = "For example\n  keyblock rename holder old-key new-key\n  keyblock rename state 14/cut-down trimmed"
    )]
    Rename(rename::RenameArguments),
    /// Print the terms of the vocabularies, with synonyms and uses
    #[command(
        long_about = terms::ABOUT,
        after_help = "For example\n  keyblock terms techniques silkscreen\n  keyblock terms papers"
    )]
    Terms(terms::TermsArguments),
    /// Print completions for a shell
    #[command(after_help = "For example\n  keyblock completions bash")]
    Completions {
        /// The shell
        shell: clap_complete::Shell,
    },
}

/// The commands and their arguments, with help in our words.
fn arguments() -> clap::Command {
    voice::with_our_help(Arguments::command())
}

/// Runs the command that `arguments` name. The first is the name of the program.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> Outcome {
    let matched = self::arguments()
        .try_get_matches_from(arguments)
        .and_then(|matches| Arguments::from_arg_matches(&matches));
    let arguments = match matched {
        Ok(arguments) => arguments,
        Err(refusal) => return voice::answer(&refusal),
    };
    let out = &mut MayClose(io::stdout().lock());
    let done = match arguments.command {
        Some(command) => perform(command, out),
        // `--licences`: without any argument the help is printed.
        None => out.write_all(LICENCES.as_bytes()).map(|()| Outcome::Done),
    };
    match done.and_then(|outcome| out.flush().map(|()| outcome)) {
        Ok(outcome) => outcome,
        Err(error) => {
            say(format_args!("keyblock: {error}"));
            Outcome::NotDone
        }
    }
}

fn perform(command: Command, out: &mut impl Write) -> io::Result<Outcome> {
    match command {
        Command::Start { dir } => start::run(&dir, out),
        Command::Compile {
            dir,
            to,
            sweep,
            findings,
        } => with_catalogue(dir.as_deref(), |dir| {
            let sweep = if sweep {
                Sweep::AtOnce
            } else {
                Sweep::AfterAMonth
            };
            compile::run(dir, to.as_deref(), sweep, &findings, out)
        }),
        Command::Issue(arguments) => with_catalogue(arguments.dir.as_deref(), |dir| {
            issue::run(dir, &arguments, out)
        }),
        Command::Audit {
            dir,
            settled,
            json,
            findings,
        } => {
            let printed = match (json, settled) {
                (true, _) => audit::Printed::Document,
                (false, true) => audit::Printed::Settled,
                (false, false) => audit::Printed::Open,
            };
            with_catalogue(dir.as_deref(), |dir| {
                audit::run(dir, printed, &findings, out)
            })
        }
        Command::Proof {
            dir,
            port,
            findings,
        } => with_catalogue(dir.as_deref(), |dir| proof::run(dir, port, &findings, out)),
        Command::Identify(arguments) => with_catalogue(arguments.dir.as_deref(), |dir| {
            identify::run(dir, &arguments, out)
        }),
        Command::Resolve(arguments) => with_catalogue(arguments.dir.as_deref(), |dir| {
            resolve::run(dir, &arguments, out)
        }),
        Command::Align(arguments) => with_catalogue(arguments.dir.as_deref(), |dir| {
            align::run(dir, &arguments, out)
        }),
        Command::Intake(arguments) => with_catalogue(arguments.dir.as_deref(), |dir| {
            intake::run(dir, &arguments, out)
        }),
        Command::Census(arguments) => with_catalogue(arguments.dir.as_deref(), |dir| {
            census::run(dir, &arguments, out)
        }),
        Command::Add(arguments) => {
            with_catalogue(arguments.dir(), |dir| add::run(dir, &arguments, out))
        }
        Command::Rename(arguments) => with_catalogue(arguments.dir.as_deref(), |dir| {
            rename::run(dir, &arguments, out)
        }),
        Command::Terms(arguments) => with_catalogue(arguments.dir.as_deref(), |dir| {
            terms::run(dir, &arguments, out)
        }),
        Command::Completions { shell } => {
            let mut text = Vec::new();
            clap_complete::generate(shell, &mut self::arguments(), "keyblock", &mut text);
            out.write_all(&text).map(|()| Outcome::Done)
        }
    }
}

/// Calls a command on the catalogue's folder that was named, or on the one that is found, where that exists.
fn with_catalogue(
    named: Option<&Path>,
    command: impl FnOnce(&Path) -> io::Result<Outcome>,
) -> io::Result<Outcome> {
    let CatalogueFolder {
        path: dir,
        is_above,
    } = CatalogueFolder::of(named);
    if is_above {
        say(format_args!(
            "keyblock: the catalogue is in `{}`",
            dir.display()
        ));
    }
    if dir.is_dir() {
        return command(&dir);
    }
    let dir = dir.display();
    say(format_args!("keyblock: there is no folder `{dir}`"));
    say("  name the folder that holds catalogue.toml, or create a catalogue with `keyblock start`");
    Ok(Outcome::Usage)
}
