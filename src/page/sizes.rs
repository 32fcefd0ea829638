//! Sizes as print rooms give them: "212 × 301 mm", height before width.

use super::book::Here;
use super::claims::{self, Stated};
use super::html::CleanHtml;
use crate::model::certainty::Statements;
use crate::model::size::Size;

/// "212 × 301 mm".
pub(super) fn size(size: &Size) -> CleanHtml {
    CleanHtml::span("size", &CleanHtml::text(&format!("{size} mm")))
}

/// A size with what it is the size of: "212 × 301 mm (image)".
pub(super) fn stated(here: &Here<'_>, sizes: &Statements<Size>, of: &str) -> Option<Stated> {
    claims::stated(here, sizes, |s| {
        size(s).then(" (").then(here.words().word(of)).then(")")
    })
}
