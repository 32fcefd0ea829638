//! The list of statements in a cell of dates.

use super::eras::ERAS;
use super::extent::{Extent, Time};
use super::spans::{TimeFound, time};
use super::statement::{Act, DateStatement, When};
use super::verbs::{FILLERS, LATER, NOT_KNOWN, VERBS};
use crate::exchange::intake::reading::outcome::{Doubt, Progress, Reading, bounded};
use crate::exchange::intake::reading::words::Words;

/// Reads a cell of dates.
///
/// ```
/// # use keyblock::exchange::intake::reading::dates::{dates, DateOf};
/// let reading = dates("c.1830–5, reprinted c.1870");
/// let said = reading.is.iter().map(|s| (s.act.date_of(), s.when.date().unwrap().as_str()));
/// assert_eq!(
///     said.collect::<Vec<_>>(),
///     [(DateOf::Design, "1830~/1835~"), (DateOf::Printing, "1870~")]
/// );
/// assert!(reading.left.is_empty());
/// ```
#[must_use]
pub fn dates(text: &str) -> Reading<Vec<DateStatement>> {
    bounded(text, read)
}

/// A statement while the cell is read.
struct Draft {
    act: Act,
    /// Whether a verb said the act.
    has_verb: bool,
    /// Whether it follows another time with no verb between them: `1925, 1930`.
    is_further: bool,
    when: DraftWhen,
    /// The pieces of the time.
    pieces: (usize, usize),
    is_of_era: bool,
}

#[derive(Clone)]
enum DraftWhen {
    Time(Time),
    NotKnown,
    Later,
}

fn read(words: &Words<'_>, progress: &mut Progress) -> Vec<DateStatement> {
    let mut drafts: Vec<Draft> = Vec::new();
    // Verbs and small words that wait for the date they belong to.
    let mut acts: Vec<Act> = Vec::new();
    let mut waiting: Vec<(usize, usize)> = Vec::new();
    let mut at = 0;
    while at < words.len() {
        if let Some(found) = NOT_KNOWN.at(words, at) {
            accept(
                &mut drafts,
                &mut acts,
                &DraftWhen::NotKnown,
                (at, found.end),
                false,
            );
            read_all(progress, &mut waiting, at, found.end);
            at = found.end;
        } else if let Some(found) = time(words, at) {
            accept_time(words, progress, &mut drafts, &mut acts, at, &found);
            read_all(progress, &mut waiting, at, found.end);
            at = found.end;
        } else if let Some(found) = LATER
            .at(words, at)
            .filter(|_| !acts.is_empty() || !drafts.is_empty())
        {
            if acts.is_empty() {
                acts.push(Act::Printed);
            }
            accept(
                &mut drafts,
                &mut acts,
                &DraftWhen::Later,
                (at, found.end),
                false,
            );
            read_all(progress, &mut waiting, at, found.end);
            at = found.end;
        } else if let Some(found) = VERBS.at(words, at) {
            let last = drafts.last_mut().filter(|last| {
                !last.has_verb && last.pieces.1 == at && time(words, found.end).is_none()
            });
            if let Some(last) = last {
                // `1925 gedruckt`, `1925年作`: the verb stands behind.
                last.act = found.is;
                last.has_verb = true;
                progress.read(at, found.end);
            } else {
                acts.push(found.is);
                waiting.push((at, found.end));
            }
            at = found.end;
        } else if let Some(found) = FILLERS.at(words, at) {
            waiting.push((at, found.end));
            at = found.end;
        } else {
            if ERAS.at(words, at).is_some() {
                progress.doubt(Doubt::EraOutOfRange);
            }
            if words.word(at).is_some() || words.figures(at).is_some() {
                // Small words before a word that was not understood belong to it; verbs go on waiting for a date.
                waiting.retain(|(start, _)| FILLERS.at(words, *start).is_none());
            }
            at += 1;
        }
    }
    let drafts = joined(drafts, progress);
    finished(words, drafts)
}

/// Takes what waited, and what it waited for, as read.
fn read_all(progress: &mut Progress, waiting: &mut Vec<(usize, usize)>, start: usize, end: usize) {
    for (start, end) in waiting.drain(..) {
        progress.read(start, end);
    }
    progress.read(start, end);
}

fn accept_time(
    words: &Words<'_>,
    progress: &mut Progress,
    drafts: &mut Vec<Draft>,
    acts: &mut Vec<Act>,
    at: usize,
    found: &TimeFound,
) {
    for doubt in &found.doubts {
        progress.doubt(doubt.clone());
    }
    if at > 0 && words.is_mark(at - 1, &["["]) && words.is_mark(found.end, &["]"]) {
        progress.doubt(Doubt::DateSupplied);
    }
    let when = DraftWhen::Time(found.time.clone());
    let pieces = (at, found.end);
    // A further date without a verb is the one before again, as in another calendar, or one of several.
    if acts.is_empty()
        && let Some(last) = drafts.last()
        && let DraftWhen::Time(before) = &last.when
    {
        if before.date() == found.time.date() {
            return;
        }
        drafts.push(Draft {
            act: last.act,
            has_verb: false,
            is_further: true,
            when,
            pieces,
            is_of_era: found.is_of_era,
        });
        return;
    }
    accept(drafts, acts, &when, pieces, found.is_of_era);
}

/// Adds a statement for each act that waits, or one of the design where none does.
fn accept(
    drafts: &mut Vec<Draft>,
    acts: &mut Vec<Act>,
    when: &DraftWhen,
    pieces: (usize, usize),
    is_of_era: bool,
) {
    let has_verb = !acts.is_empty();
    if acts.is_empty() {
        acts.push(Act::Created);
    }
    acts.dedup();
    for act in acts.drain(..) {
        drafts.push(Draft {
            act,
            has_verb,
            is_further: false,
            when: when.clone(),
            pieces,
            is_of_era,
        });
    }
}

/// Joins times that no verb tells apart to one list: `1925, 1930` is `{1925,1930}`.
fn joined(drafts: Vec<Draft>, progress: &mut Progress) -> Vec<Draft> {
    let mut joined: Vec<Draft> = Vec::new();
    for draft in drafts {
        if draft.is_further
            && !draft.has_verb
            && let Some(last) = joined.last_mut()
            && let (DraftWhen::Time(before), DraftWhen::Time(next)) = (&last.when, &draft.when)
        {
            progress.doubt(if last.is_of_era || draft.is_of_era {
                Doubt::ErasContradict
            } else {
                Doubt::DatesWithoutWords
            });
            if let (Some(mut members), Time::Extent(next)) = (extents(before), next) {
                members.push(next.clone());
                let all = Time::All(members);
                if all.date().is_some() {
                    last.when = DraftWhen::Time(all);
                    last.pieces.1 = draft.pieces.1;
                    continue;
                }
            }
        }
        joined.push(draft);
    }
    joined
}

fn extents(time: &Time) -> Option<Vec<Extent>> {
    match time {
        Time::Extent(extent) => Some(vec![extent.clone()]),
        Time::All(members) => Some(members.clone()),
        _ => None,
    }
}

fn finished(words: &Words<'_>, drafts: Vec<Draft>) -> Vec<DateStatement> {
    let statements = drafts.into_iter().filter_map(|draft| {
        let when = match draft.when {
            DraftWhen::Time(time) => When::Date(time.date()?),
            DraftWhen::NotKnown => When::NotKnown,
            DraftWhen::Later => When::Later,
        };
        let (start, end) = draft.pieces;
        let at = words.at(start)?.span.start..words.at(end - 1)?.span.end;
        Some(DateStatement {
            act: draft.act,
            when,
            at,
        })
    });
    let mut statements: Vec<DateStatement> = statements.collect();
    // "n.d. [c.1925]": the date that was supplied stands for the one that is not written.
    let dated: Vec<Act> = statements
        .iter()
        .filter(|s| s.when.date().is_some())
        .map(|s| s.act)
        .collect();
    statements.retain(|s| s.when != When::NotKnown || !dated.contains(&s.act));
    statements
}
