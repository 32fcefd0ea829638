//! Notes on records that are doubtful, rejected or withdrawn. Their pages stay, give the reason and
//! link to other records.

use std::collections::BTreeSet;

use super::enumeration;
use crate::model::link::Target;
use crate::model::standing::RecordStanding;
use crate::model::words::Standing;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// "doubtful": the standing of a record that is not accepted, as a remark; empty for an accepted one.
pub(crate) fn remark<'h>(here: &Here<'h>, stands: &RecordStanding) -> &'h str {
    match stands.standing {
        Standing::Accepted => "",
        standing => here.words().listed("stands", standing),
    }
}

/// "Withdrawn. Not by the artist. See 16, *The Old Light*."; `None` for an accepted record that names
/// no other.
pub(crate) fn note(here: &Here<'_>, stands: &RecordStanding) -> Option<CleanHtml> {
    if stands.standing == Standing::Accepted && stands.see.is_empty() {
        return None;
    }
    let words = here.words();
    let mut out = CleanHtml::empty();
    if stands.standing != Standing::Accepted {
        out.push_text(words.listed("standing", stands.standing));
        out.push_text(".");
    }
    if let Some(why) = &stands.why {
        out.push_text(" ");
        out.push_text(why);
        if !why.ends_with(['.', '!', '?', '…']) {
            out.push_text(".");
        }
    }
    let see: Vec<CleanHtml> = leads_to(here, stands)
        .iter()
        .map(|target| match here.target(target) {
            Some((address, name)) => here.link(&address, &name),
            None => CleanHtml::text(&target.to_string()),
        })
        .collect();
    if !see.is_empty() {
        let all = enumeration::either(here, &see);
        out.push_text(" ");
        out.push(&words.html("see", None, &[("records", &all)]));
        out.push_text(".");
    }
    out.some()
}

/// The records to see in place of a record. One that was withdrawn itself and names others is passed over, so that no
/// reader is sent on twice.
pub(crate) fn leads_to(here: &Here<'_>, stands: &RecordStanding) -> Vec<Target> {
    let mut found = Vec::new();
    let mut passed = BTreeSet::new();
    follow(here, stands, &mut passed, &mut found);
    found
}

fn follow(
    here: &Here<'_>,
    stands: &RecordStanding,
    passed: &mut BTreeSet<Target>,
    found: &mut Vec<Target>,
) {
    let named = stands.see.iter();
    for target in named.filter_map(|to| to.value.parse::<Target>().ok()) {
        // Faulty records may name each other: each is followed once.
        if !passed.insert(target.clone()) {
            continue;
        }
        let public = here.public();
        let further = match &target {
            Target::Design(key) => public.designs.get(key).map(|design| &design.standing),
            Target::Impression(key) => public.impression(key).map(|sheet| &sheet.standing),
            _ => None,
        };
        match further.filter(|standing| standing.is_withdrawn() && !standing.see.is_empty()) {
            Some(standing) => follow(here, standing, passed, found),
            None => found.push(target),
        }
    }
}
