//! Sizes as print rooms give them: "212 × 301 mm", height before width.

use super::claims::{self, Stated};
use crate::model::certainty::Statements;
use crate::model::design::Design;
use crate::model::size::Size;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

/// "212 × 301 mm".
pub(crate) fn size(size: &Size) -> CleanHtml {
    CleanHtml::span("size", &CleanHtml::text(&format!("{size} mm")))
}

/// The size by which a design is told from others: that of its image or its matrix, else that of the first sheet that was
/// measured.
pub(crate) fn of_design(design: &Design) -> Option<&Size> {
    let sheets = design.impressions.values().map(|sheet| &sheet.sheet);
    let own = [&design.size.image, &design.size.matrix];
    let measured = sheets.flat_map(|sheet| [&sheet.image, &sheet.platemark, &sheet.size]);
    own.into_iter().chain(measured).find_map(Statements::own)
}

/// A size with what was measured: "212 × 301 mm (image)".
pub(crate) fn stated(here: &Here<'_>, sizes: &Statements<Size>, of: &str) -> Option<Stated> {
    claims::stated(here, sizes, |s| with_part(here, s, of))
}

/// A size with what was measured, named by a word: "212 × 301 mm (image)".
pub(crate) fn with_part(here: &Here<'_>, measured: &Size, of: &str) -> CleanHtml {
    let of = here.words().word(of);
    size(measured).then(" (").then(of).then(")")
}
