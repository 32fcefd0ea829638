//! `keyblock compile`: makes the site, all or nothing.

use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use super::finding_options::FindingOptions;
use super::not_kept::say_not_kept;
use super::outcome::Outcome;
use super::plural::counted;
use super::progress::Progress;
use super::report;
use super::streams::{say, wants_colour};
use crate::issue::{self, PublishFault, Published, Publishing};
use crate::model::finding::{Finding, Tally};
use crate::model::place::Sources;
use crate::press::cache::KEPT_UNUSED;
use crate::press::last_compile::{CompileIdentity, PrintedReport};
use crate::press::{self, Cache, DiskFault, Judged, PictureWork, PullFault, Pulled};
use crate::read::Inputs;

pub(super) const ABOUT: &str = "\
Reads and checks the records, computes the studies, and writes the site.

All or nothing: where there is an error, or the disk fails, the last good site is left unchanged. \
The new site is set up beside the old one, and the two are exchanged at the end. What has not changed is \
not made again; where nothing has changed (photographs are judged by size and times), only the findings are printed again.

Findings are printed as by audit: three of a code that has more than ten, unless --all asks for every one.

Only what a compile made is ever deleted. Other files in the folder of the site (.git, CNAME, pages of your own) \
stay as they are. Where the new site has a file of the same name, or would replace a page that was changed by hand, \
nothing is published and each such file is named.

Prepared pictures are kept in DIR/.keyblock, which may be deleted at any time. Those that no compile has used for \
30 days are removed by the next compile that does not find everything unchanged; --sweep removes at once whatever \
this compile does not use. Where the cache cannot be written, a compile takes longer and says so.";

/// When unused entries of the cache are removed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sweep {
    /// Once no compile has used them for 30 days.
    AfterAMonth,
    /// At the end of this compile, where it did not use them.
    AtOnce,
}

/// Compiles the catalogue in `dir` into `to`, or into its `web` folder.
pub(super) fn run(
    dir: &Path,
    to: Option<&Path>,
    sweep: Sweep,
    asked: &FindingOptions,
    out: &mut impl Write,
) -> io::Result<Outcome> {
    let begun = Instant::now();
    let target = match target_of(dir, to)? {
        Ok(target) => target,
        Err(outcome) => return Ok(outcome),
    };
    let inputs = Inputs::of(dir);
    let identity = CompileIdentity::of(dir, &inputs, &target);
    let last_report = identity.as_ref().and_then(|i| i.last_report(&target));
    // What is in use is known only where everything is looked for, and the last report has the findings as they are
    // printed where nothing else was asked for.
    let last_report = last_report.filter(|_| sweep == Sweep::AfterAMonth && asked.are_default());
    if let Some(report) = last_report {
        repeat_findings(&report);
        let line = summary(&report, NOTHING_REMADE, &target, begun);
        writeln!(out, "{line}")?;
        return Ok(Outcome::Done);
    }
    // Begun before the pictures are made: two compiles would make them twice.
    let publishing = match Publishing::begin(&target) {
        Ok(publishing) => publishing,
        Err(fault) => return Ok(not_done(&fault)),
    };
    let progress = Progress::of("pictures");
    let judged = press::judge_inputs(
        dir,
        &inputs,
        &PictureWork::Prepare(&|done, of| progress.tell(done, of)),
        Cache::of(dir).with_spare(publishing.spare_folder().as_deref()),
    );
    drop(progress);
    if has_errors(dir, &judged, &publishing, asked) {
        let found = report::tally(judged.tally());
        say(format_args!("{found}; nothing was published"));
        return Ok(Outcome::NotDone);
    }
    let Some(report) = publish(
        judged,
        publishing,
        (&target, begun),
        sweep,
        (dir, asked),
        out,
    )?
    else {
        return Ok(Outcome::NotDone);
    };
    // A file that was changed during the compile may or may not be in the site as it is now.
    match identity {
        Some(identity)
            if CompileIdentity::of(dir, &inputs, &target).as_ref() == Some(&identity) =>
        {
            identity.keep(report, &target);
        }
        _ => {}
    }
    Ok(Outcome::Done)
}

/// The folder of the site of the catalogue in `dir`; the outcome where no site can be published there.
pub(super) fn target_of(dir: &Path, to: Option<&Path>) -> io::Result<Result<PathBuf, Outcome>> {
    let target = std::path::absolute(to.map_or_else(|| dir.join("web"), Path::to_owned))?;
    if let Some(source) = press::source_clash(dir, &target) {
        say(format_args!(
            "keyblock: the site cannot be compiled into `{}`: {source}",
            target.display()
        ));
        say("  name another folder, such as one beside the records");
        return Ok(Err(Outcome::NotDone));
    }
    if let Err(fault) = issue::check_target(&target) {
        return Ok(Err(not_done(&fault)));
    }
    Ok(Ok(target))
}

/// Prints the findings of a catalogue with errors; whether it has any.
pub(super) fn has_errors(
    dir: &Path,
    judged: &Judged,
    publishing: &Publishing,
    asked: &FindingOptions,
) -> bool {
    if judged.tally().errors == 0 {
        return false;
    }
    say_findings(dir, &judged.findings, &judged.catalogue.sources, asked);
    if let Some(fault) = &judged.disk_fault {
        say_disk(fault, &judged.cache, publishing);
    }
    true
}

/// Makes the site of a catalogue without errors and publishes it; `None` where that failed, which is said.
/// `target` is its folder, and when the work began; `asked` the folder of the catalogue, and which findings are printed.
pub(super) fn publish(
    judged: Judged,
    publishing: Publishing,
    (target, begun): (&Path, Instant),
    sweep: Sweep,
    (dir, asked): (&Path, &FindingOptions),
    out: &mut impl Write,
) -> io::Result<Option<PrintedReport>> {
    let pages = AtomicUsize::new(0);
    let progress = Progress::of("aligning");
    let pulled = judged.pull(&|done, of| progress.tell(done, of), &|path, bytes| {
        if path.ends_with(".html") {
            pages.fetch_add(1, Ordering::Relaxed);
        }
        publishing.put(&path, &bytes);
    });
    drop(progress);
    let report = pulled.as_ref().map_or_else(|no| &no.report, |p| &p.report);
    say_findings(dir, &report.findings, &report.sources, asked);
    let pulled = match pulled {
        Ok(pulled) => pulled,
        Err(not_pulled) => {
            match &not_pulled.fault {
                PullFault::Theme(fault) => say(format_args!("keyblock: {fault}")),
                PullFault::Disk(fault) => say_disk(fault, &not_pulled.cache, &publishing),
                fault @ PullFault::PrivateName => say(format_args!("keyblock: {fault}")),
            }
            say(format_args!("nothing was published"));
            return Ok(None);
        }
    };
    let outdated = publishing.outdated().into_iter();
    let outdated = outdated.filter_map(|(path, file)| Some((path, std::fs::read(file).ok()?)));
    let dropped = publishing.dropped_pages();
    let formerly_told = pulled.names_formerly_told(outdated);
    say_not_kept(&pulled.cache);
    let published = match publishing.finish(&pulled.picture_files(), &pulled.tile_bundles()) {
        Ok(published) => published,
        Err(fault) => {
            not_done(&fault);
            return Ok(None);
        }
    };
    for sentence in &formerly_told {
        say(format_args!("keyblock: {sentence}"));
    }
    if !formerly_told.is_empty() {
        say(format_args!(
            "  the site no longer has it; {WHO_HAS_IT_STILL}"
        ));
    }
    say_dropped(&dropped);
    let report = printed_report(dir, &pulled, pages.into_inner());
    let line = summary(&report, &made(&pulled, published), target, begun);
    writeln!(out, "{line}")?;
    clean(&pulled.cache, sweep, out)?;
    Ok(Some(report))
}

/// How many addresses that are dropped are named; the rest are counted.
const DROPPED_NAMED: usize = 20;

/// Warns of addresses that the old site had and the new one has not.
fn say_dropped(pages: &[String]) {
    if pages.is_empty() {
        return;
    }
    let addresses = counted(pages.len(), "address", "addresses");
    say(format_args!(
        "keyblock: the site no longer has {addresses} that it had:"
    ));
    for page in pages.iter().take(DROPPED_NAMED) {
        say(format_args!("  {page}"));
    }
    if let more @ 1.. = pages.len().saturating_sub(DROPPED_NAMED) {
        say(format_args!("  and {more} more"));
    }
    say(
        "  links to them lead to nothing now; restore the records, or name the former key of a record with `was`",
    );
}

pub(super) fn not_done(fault: &PublishFault) -> Outcome {
    say(format_args!("keyblock: {fault}"));
    Outcome::NotDone
}

/// Says why pictures could not be kept, neither in the cache nor beside the site.
fn say_disk(fault: &DiskFault, cache: &Cache, publishing: &Publishing) {
    say(format_args!("keyblock: {fault}"));
    let needed = cache.unkept_bytes();
    if let (1.., Some(free)) = (needed, publishing.free_bytes()) {
        say(format_args!(
            "  the pictures that could not be written need {}; {} are free on the disk of the site",
            issue::in_megabytes(needed),
            issue::free_in_megabytes(free)
        ));
    }
    say(format_args!("  {}", fault.help()));
}

/// Removes from the cache what is no longer used.
fn clean(cache: &Cache, sweep: Sweep, out: &mut impl Write) -> io::Result<()> {
    match sweep {
        Sweep::AfterAMonth => {
            let _ = cache.sweep(KEPT_UNUSED);
            Ok(())
        }
        Sweep::AtOnce => {
            let swept = cache.sweep(Duration::ZERO);
            writeln!(
                out,
                "{}: {} swept, {}",
                shorter(cache.folder()).display(),
                counted(swept.files, "unused file", "unused files"),
                issue::in_megabytes(swept.bytes),
            )
        }
    }
}

/// Prints the findings of the last compile.
fn repeat_findings(report: &PrintedReport) {
    write_findings(if wants_colour(&io::stderr()) {
        &report.findings_in_colour
    } else {
        &report.findings
    });
}

fn say_findings(dir: &Path, findings: &[Finding], sources: &Sources, asked: &FindingOptions) {
    let colour = wants_colour(&io::stderr());
    write_findings(&asked.report(dir, findings, sources, colour));
    asked.say_unknown_files(dir, sources);
}

fn write_findings(text: &str) {
    // Write errors are ignored: they do not keep a site from being published.
    let _ = io::stderr().write_all(text.as_bytes());
}

/// The part of a compile's output that is the same when the compile is repeated.
fn printed_report(dir: &Path, pulled: &Pulled, pages: usize) -> PrintedReport {
    let summary = format!(
        "{}, {}, {}, {}; {}",
        counted(pulled.designs, "design", "designs"),
        counted(pulled.impressions, "impression", "impressions"),
        counted(pages, "page", "pages"),
        pictures_in_words(pulled),
        findings_in_words(pulled.report.tally()),
    );
    let found = &pulled.report;
    let findings =
        |colour| FindingOptions::default().report(dir, &found.findings, &found.sources, colour);
    PrintedReport {
        findings: findings(false),
        findings_in_colour: findings(true),
        summary,
    }
}

/// What to do about a name that was published.
const WHO_HAS_IT_STILL: &str =
    "the history of the records, dated editions and copies that others made may have it still";

const NOTHING_REMADE: &str = "nothing was remade";

/// What was written: "3 files written, 1 picture made".
fn made(pulled: &Pulled, published: Published) -> String {
    if published.written == 0 && published.removed == 0 {
        return NOTHING_REMADE.to_owned();
    }
    let files = counted(published.written, "file written", "files written");
    match pulled.pictures_made() {
        0 => files,
        pictures => {
            let pictures = counted(pictures, "picture made", "pictures made");
            format!("{files}, {pictures}")
        }
    }
}

/// One line: where, what the catalogue holds, what was found, what was made, how long it took.
fn summary(report: &PrintedReport, made: &str, target: &Path, begun: Instant) -> String {
    format!(
        "{}: {}; {made}; {:.2} s",
        shorter(target).display(),
        report.summary,
        begun.elapsed().as_secs_f64(),
    )
}

fn pictures_in_words(pulled: &Pulled) -> String {
    let pictures = counted(pulled.prepared.len(), "picture", "pictures");
    match pulled.not_aligned() {
        0 => pictures,
        n => format!("{pictures} ({n} not aligned, see “keyblock align”)"),
    }
}

fn findings_in_words(tally: Tally) -> String {
    match tally.all() {
        0 => "no findings".to_owned(),
        n => format!(
            "{} ({})",
            counted(n, "finding", "findings"),
            report::tally(tally)
        ),
    }
}

/// The path relative to the current folder, where it lies in that.
fn shorter(target: &Path) -> PathBuf {
    std::env::current_dir()
        .ok()
        .and_then(|here| target.strip_prefix(here).map(Path::to_owned).ok())
        .filter(|path| !path.as_os_str().is_empty())
        .unwrap_or_else(|| target.to_owned())
}
