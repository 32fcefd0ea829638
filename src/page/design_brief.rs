//! The line under the title of a design: its date and technique.

use super::book::Here;
use super::dates;
use super::enumeration;
use super::html::{CleanHtml, as_sentences};
use super::matrices;
use crate::model::design::{Design, MatrixKind};
use crate::model::vocabulary::List;

/// "1927. Colour woodcut from two blocks."
pub(super) fn brief(here: &Here<'_>, design: &Design) -> CleanHtml {
    let words = here.words();
    let date = design
        .date
        .own()
        .map_or_else(CleanHtml::empty, |d| dates::once_html(d, words));
    let techniques: Vec<_> = design
        .technique
        .iter()
        .map(|t| CleanHtml::text(&here.term(List::Techniques, t.value.as_str())))
        .collect();
    let technique = enumeration::together(here, &techniques);
    let technique = match (technique.is_empty(), design.matrices.len()) {
        (true, _) => CleanHtml::empty(),
        (false, 0) => technique,
        (false, n) => {
            let id = match matrices::one_kind(&design.matrices) {
                Some(MatrixKind::Block) => "from-blocks",
                Some(MatrixKind::Plate) => "from-plates",
                Some(MatrixKind::Stone) => "from-stones",
                Some(MatrixKind::Screen) => "from-screens",
                None => "from-some-matrices",
            };
            words.html(id, Some(n), &[("technique", &technique)])
        }
    };
    as_sentences(&[date, technique])
}
