//! The help and the refusals of the command line, in the catalogue's own words.
//!
//! `clap` parses the arguments. Its layout of help and its sentences about faults are replaced here, so that
//! arguments are refused as records are: what is wrong, then what to do.

use std::error::Error;
use std::fmt;

use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{Arg, ArgAction, Command};

use super::outcome::Outcome;
use super::streams::say;

/// What a command's help holds, in order.
const LAYOUT: &str = "{about-with-newline}\nForm\n  {usage}\n\n{all-args}{after-help}";

const GIVEN: &str = "What to name";
const ADDED: &str = "What may be added";
const COMMANDS: &str = "Commands";

/// The command with its help in our layout, and so with every command below it.
pub(super) fn with_our_help(command: Command) -> Command {
    let commands: Vec<String> = command
        .get_subcommands()
        .map(|below| below.get_name().to_owned())
        .collect();
    let mut command = command
        .help_template(LAYOUT)
        .subcommand_help_heading(COMMANDS)
        .disable_help_subcommand(true)
        .disable_help_flag(true)
        .mut_args(|arg: Arg| {
            let is_given = !arg.get_default_values().is_empty();
            let heading = if arg.is_positional() { GIVEN } else { ADDED };
            let arg = arg.help_heading(heading);
            if is_given {
                arg.hide_default_value(true)
            } else {
                arg
            }
        })
        .arg(
            Arg::new("help")
                .short('h')
                .long("help")
                .help("Show this help; -h shows it in brief")
                .help_heading(ADDED)
                .action(ArgAction::Help),
        );
    for name in commands {
        command = command.mut_subcommand(name, with_our_help);
    }
    command
}

/// Prints help or the version where they were asked for; otherwise says what is wrong with the arguments.
pub(super) fn answer(refusal: &clap::Error) -> Outcome {
    match refusal.kind() {
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => {
            // Write errors are ignored: the pipe may be closed.
            let _ = refusal.print();
            Outcome::Done
        }
        ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => {
            let _ = refusal.print();
            Outcome::Usage
        }
        _ => {
            let (fault, remedy) = sentences(refusal);
            say(format_args!("keyblock: {fault}"));
            say(format_args!("  {remedy}"));
            Outcome::Usage
        }
    }
}

/// What to do about a value that a parser of values refuses.
#[derive(Debug)]
pub(super) struct Remedy(pub(super) String);

impl fmt::Display for Remedy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl Error for Remedy {}

/// What is wrong with the arguments, and what to do.
fn sentences(refusal: &clap::Error) -> (String, String) {
    let word = |kind| refusal.get(kind).map(ContextValue::to_string);
    let argument = word(ContextKind::InvalidArg).map(|arg| arg.replace("...", " …"));
    let argument = argument.unwrap_or_default();
    let value = word(ContextKind::InvalidValue).unwrap_or_default();
    let see_help = || "`--help` after the command shows what it takes".to_owned();
    let nearest = |kind| word(kind).map(|nearest| format!("write `{nearest}`"));
    match refusal.kind() {
        ErrorKind::InvalidSubcommand => {
            let name = word(ContextKind::InvalidSubcommand).unwrap_or_default();
            let nearest = nearest(ContextKind::SuggestedSubcommand);
            let remedy = nearest.unwrap_or_else(|| "`keyblock --help` lists the commands".into());
            (format!("there is no command `{name}`"), remedy)
        }
        ErrorKind::UnknownArgument if argument.starts_with('-') => {
            let nearest = nearest(ContextKind::SuggestedArg);
            let fault = format!("the command does not take `{argument}`");
            (fault, nearest.unwrap_or_else(see_help))
        }
        ErrorKind::UnknownArgument => {
            let fault = format!("the command has no use for `{argument}`");
            let form = word(ContextKind::Usage).unwrap_or_default();
            if form.contains("keyblock identify") && argument.contains('=') {
                let remedy = "write `--see` before what was seen";
                return (fault, format!("{remedy}: --see {argument}"));
            }
            (fault, see_help())
        }
        ErrorKind::MissingRequiredArgument => {
            let fault = format!("the command needs {argument}");
            (fault, see_help())
        }
        ErrorKind::InvalidValue if value.is_empty() => {
            (format!("`{argument}` needs a value"), see_help())
        }
        ErrorKind::InvalidValue | ErrorKind::ValueValidation => {
            let valid = word(ContextKind::ValidValue).filter(|valid| !valid.is_empty());
            let remedy = refusal
                .source()
                .and_then(|why| why.downcast_ref::<Remedy>());
            let remedy = remedy.map(Remedy::to_string);
            let remedy = remedy.or_else(|| valid.map(|valid| format!("it may be {valid}")));
            let fault = format!("{argument} cannot be `{value}`");
            (fault, remedy.unwrap_or_else(see_help))
        }
        ErrorKind::ArgumentConflict => {
            let other = word(ContextKind::PriorArg).unwrap_or_default();
            let fault = if other.is_empty() || other == argument {
                format!("`{argument}` is given twice")
            } else {
                format!("`{argument}` and `{other}` exclude each other")
            };
            (fault, "leave one of them out".to_owned())
        }
        ErrorKind::InvalidUtf8 => (
            "an argument is not text in UTF-8".to_owned(),
            "rename the file or folder".to_owned(),
        ),
        // The remaining kinds are of settings that no command has.
        _ => ("the arguments are not understood".to_owned(), see_help()),
    }
}

#[cfg(test)]
mod tests {
    use super::super::arguments;
    use super::*;

    fn refused(words: &[&str]) -> (String, String) {
        let refusal = arguments()
            .try_get_matches_from([&["keyblock"], words].concat())
            .unwrap_err();
        sentences(&refusal)
    }

    #[test]
    fn every_wrong_use_says_what_is_wrong_and_what_to_do() {
        let cases: &[(&[&str], &str, &str)] = &[
            (
                &["identfy"],
                "there is no command `identfy`",
                "write `identify`",
            ),
            (
                &["zzz"],
                "there is no command `zzz`",
                "`keyblock --help` lists the commands",
            ),
            (
                &["audit", "--jsn"],
                "the command does not take `--jsn`",
                "write `--json`",
            ),
            (
                &["audit", "a", "b"],
                "the command has no use for `b`",
                "`--help` after the command shows what it takes",
            ),
            (
                &["identify"],
                "the command needs <DESIGN>",
                "`--help` after the command shows what it takes",
            ),
            (
                &["audit", "--json", "--json"],
                "`--json` is given twice",
                "leave one of them out",
            ),
            (
                &["resolve", "14", "--list", "a.csv"],
                "`[REFERENCES] …` and `--list <FILE.csv>` exclude each other",
                "leave one of them out",
            ),
            (
                &["compile", "--to"],
                "`--to <DIR>` needs a value",
                "`--help` after the command shows what it takes",
            ),
            (
                &["proof", "--port", "none"],
                "--port <PORT> cannot be `none`",
                "`--help` after the command shows what it takes",
            ),
            (
                &["audit", "--code", "value-unknwon"],
                "--code <CODE> cannot be `value-unknwon`",
                "write `value-unknown`",
            ),
            (
                &["audit", "--code", "xyz"],
                "--code <CODE> cannot be `xyz`",
                "`keyblock audit` prints the code below each finding",
            ),
            (
                &["identify", "14", "moon=present"],
                "the command has no use for `moon=present`",
                "write `--see` before what was seen: --see moon=present",
            ),
            (
                &["census", "14", "moon=present"],
                "the command has no use for `moon=present`",
                "`--help` after the command shows what it takes",
            ),
            (
                &["completions", "none"],
                "<SHELL> cannot be `none`",
                "it may be bash, elvish, fish, powershell, zsh",
            ),
        ];
        for (words, fault, remedy) in cases {
            assert_eq!(refused(words), ((*fault).to_owned(), (*remedy).to_owned()));
        }
    }

    #[test]
    fn the_help_of_every_command_has_our_words_and_an_example() {
        let mut commands = arguments();
        commands.build();
        let names: Vec<String> = commands
            .get_subcommands()
            .map(|below| below.get_name().to_owned())
            .collect();
        assert!(names.len() >= 11, "{names:?}");
        for name in names {
            let below = commands.find_subcommand_mut(&name).unwrap();
            let help = below.render_long_help().to_string();
            assert!(help.contains("For example\n  keyblock "), "{help}");
            for stock in [
                "Usage:",
                "Options:",
                "Arguments:",
                "Print help",
                "[default",
                "`",
            ] {
                assert!(!help.contains(stock), "{name}: {stock}\n{help}");
            }
        }
    }
}
