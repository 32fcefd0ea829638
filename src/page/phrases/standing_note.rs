//! Notes on records that are doubtful, rejected or withdrawn. Their pages stay, give the reason and
//! link to other records.

use super::enumeration;
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
    let see: Vec<CleanHtml> = here
        .public()
        .to_see_instead(stands)
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
