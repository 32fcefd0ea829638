//! Where a sheet is kept: its accession number, with the part of it where several sheets have one number, and the
//! holder's own page of it.

use crate::model::impression::Impression;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// "1962.44", "1962.44, sheet 2"; `None` where no number is recorded.
pub(crate) fn accession(impression: &Impression) -> Option<CleanHtml> {
    let number = impression.accession_and_part()?;
    Some(CleanHtml::span("accession", &CleanHtml::text(&number)))
}

/// The same, leading to the holder's own page of the sheet where that is recorded.
pub(crate) fn accession_leading_out(here: &Here<'_>, impression: &Impression) -> Option<CleanHtml> {
    let number = accession(impression)?;
    Some(match &impression.web {
        Some(web) => CleanHtml::link_out(web, here.words().word("holders-page"), &number),
        None => number,
    })
}

/// The link to the holder's own page of a sheet that has no accession number to carry it.
pub(crate) fn page_of_holder(here: &Here<'_>, impression: &Impression) -> CleanHtml {
    match &impression.web {
        Some(web) if impression.accession.is_none() => {
            let text = here.words().word("holders-page");
            CleanHtml::link_out(web, text, &CleanHtml::text(text))
        }
        _ => CleanHtml::empty(),
    }
}
