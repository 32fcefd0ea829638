//! The line under the title of a design: its date and technique.

use crate::model::design::{Design, MatrixKind};
use crate::model::vocabulary::List;
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::phrases::matrices;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};

/// "1927. Colour woodcut from two blocks."
pub(crate) fn brief(here: &Here<'_>, design: &Design) -> CleanHtml {
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
