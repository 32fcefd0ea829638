//! `keyblock issue`: issues an edition. It compiles the site, and adds the edition to the register.

mod committed;
mod refusal;

use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::time::Instant;

use clap::Args;

use super::compile::{self, Sweep};
use super::finding_options::FindingOptions;
use super::outcome::Outcome;
use super::plural::counted;
use super::progress::Progress;
use super::streams::say;
use crate::issue::Publishing;
use crate::issue::register::StagedRegister;
use crate::model::place::Placed;
use crate::model::register::{IssuedEdition, REGISTER_FILE};
use crate::press::{self, Cache, PictureWork};
use crate::read::Inputs;

use committed::Committed;
use refusal::Refusal;

pub(super) const ABOUT: &str = "\
Issues the edition that catalogue.toml names (edition, dated): compiles the site, and writes to register.toml \
every address with the number of each design, the numeral of each state and the identification of each impression in \
this edition.

From then on these addresses are kept. A record that vanishes is an error that says how to restore it, how to lead its \
address to another, or how to withdraw it; the pages say what earlier editions called a state; the page of changes and \
its feed say what each edition changed, by entry and by holder.

Nothing is issued, and every reason is given, while there are errors, while an issued address would lead nowhere \
or elsewhere, where the edition was already issued, and where records differ from what is committed in git.

All or nothing, as with compile. The register is written last: after a crash, issue the edition again. Commit \
register.toml with the records.";

/// The arguments of `keyblock issue`.
#[derive(Args)]
pub(super) struct IssueArguments {
    /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
    pub(super) dir: Option<PathBuf>,
    /// The folder of the site, as for compile. DIR/web where none is named
    #[arg(long, value_name = "DIR")]
    pub(super) to: Option<PathBuf>,
    /// Issue although records differ from what is committed, for this reason; the register keeps it
    #[arg(long, value_name = "REASON")]
    pub(super) uncommitted: Option<String>,
    #[command(flatten)]
    findings: FindingOptions,
}

/// Issues the edition of the catalogue in `dir`.
pub(super) fn run(
    dir: &Path,
    arguments: &IssueArguments,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    let begun = Instant::now();
    let target = match compile::target_of(dir, arguments.to.as_deref())? {
        Ok(target) => target,
        Err(outcome) => return Ok(outcome),
    };
    let publishing = match Publishing::begin(&target) {
        Ok(publishing) => publishing,
        Err(fault) => return Ok(compile::not_done(&fault)),
    };
    let inputs = Inputs::of(dir);
    let committed = Committed::of(dir);
    let progress = Progress::of("pictures");
    let mut judged = press::judge_inputs(
        dir,
        &inputs,
        &PictureWork::Prepare(&|done, of| progress.tell(done, of)),
        Cache::of(dir).with_spare(publishing.spare_folder().as_deref()),
    );
    drop(progress);
    compile::has_errors(dir, &judged, &publishing, &arguments.findings);
    let reason = arguments.uncommitted.as_deref().map(str::trim);
    let reason = reason.filter(|reason| !reason.is_empty());
    let refusals = refusal::refusals(&judged, &committed, reason);
    if !refusals.is_empty() {
        say_refusals(&refusals);
        return Ok(Outcome::NotDone);
    }
    if let Committed::Unknown(why) = &committed {
        say(format_args!(
            "keyblock: {why}, so it is not known whether the records are committed"
        ));
    }
    let settings = &judged.catalogue.settings;
    let (Some(edition), Some(dated)) = (&settings.edition, &settings.dated) else {
        return Ok(Outcome::NotDone);
    };
    let edition = IssuedEdition {
        edition: Placed::new(edition.clone(), settings.place),
        dated: dated.clone(),
        address: settings.address.value.clone(),
        uncommitted: reason.filter(|_| committed.differs()).map(str::to_owned),
    };
    let name = edition.edition.value.clone();
    let before = judged.catalogue.register.as_ref();
    let before = before.map_or(0, |register| register.entries.len());
    let register = judged.with_edition(edition);
    let addresses = register.entries.len();
    // Written beside the old one first: a disk that refuses it refuses it before the site is published.
    let staged = match StagedRegister::write(dir, register) {
        Ok(staged) => staged,
        Err(error) => {
            say(format_args!(
                "keyblock: {REGISTER_FILE} cannot be written: {error}"
            ));
            say("  nothing was published; make room or give the right to write, and issue again");
            return Ok(Outcome::NotDone);
        }
    };
    let sweep = Sweep::AfterAMonth;
    let asked = (dir, &arguments.findings);
    if compile::publish(judged, publishing, (&target, begun), sweep, asked, out)?.is_none() {
        return Ok(Outcome::NotDone);
    }
    if let Err(error) = staged.put() {
        say(format_args!(
            "keyblock: {REGISTER_FILE} cannot be replaced: {error}"
        ));
        say("  the site is published and the edition is not in the register yet; issue it again");
        return Ok(Outcome::NotDone);
    }
    let added = addresses.saturating_sub(before);
    writeln!(
        out,
        "edition {name} is issued: {REGISTER_FILE} lists {}, {added} of them new",
        counted(addresses, "address", "addresses"),
    )?;
    match committed {
        Committed::Unknown(_) => writeln!(out, "keep {REGISTER_FILE} with the records")?,
        _ => writeln!(
            out,
            "commit {REGISTER_FILE} with the records: git add {REGISTER_FILE}"
        )?,
    }
    Ok(Outcome::Done)
}

fn say_refusals(refusals: &[Refusal]) {
    say("keyblock: the edition is not issued, and nothing was published:");
    for refusal in refusals {
        say(format_args!("- {}", refusal.why));
        say(format_args!("  {}", refusal.help));
        for line in &refusal.lines {
            say(format_args!("    {line}"));
        }
    }
}
