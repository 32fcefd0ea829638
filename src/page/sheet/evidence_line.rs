//! One line of the evidence on a sheet.

use serde::Serialize;

use crate::page::plates::strips::SheetDetail;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::study::grades::Bearing;
use crate::study::index::PointAt;

/// What is for or against a state or printing at one point, or by the record of a printing.
#[derive(Serialize)]
pub(super) struct LineView {
    /// The point; `None` for what the record of a printing says.
    #[serde(skip)]
    pub(super) point: Option<PointAt>,
    #[serde(skip)]
    pub(super) bearing: Bearing,
    #[serde(rename = "bearing")]
    pub(super) bearing_word: String,
    pub(super) kind: String,
    /// Says that it does not weigh; empty where it does, or excludes.
    pub(super) weight: String,
    pub(super) ask: CleanHtml,
    pub(super) seen: String,
    pub(super) recorded: String,
    /// The place on this sheet's own photograph, at the first line that tells of it.
    pub(super) detail: Option<SheetDetail>,
}

/// What a line says of its weight: nothing where it weighs or excludes.
pub(super) fn line_weight(here: &Here<'_>, bearing: Bearing, is_weighed: bool) -> String {
    if is_weighed || bearing == Bearing::Excludes {
        return String::new();
    }
    here.words().word("evidence-no-weight").to_owned()
}
