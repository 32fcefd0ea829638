//! The designs of a series by eye, and what is missing of them.

use super::wall::{self, Hung};
use crate::page::phrases::enumeration;
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences};
use crate::page::setting::words::Argument;
use crate::study::series::{SeriesMember, SeriesStudy};

/// The designs by eye, each with its place.
pub(crate) fn hung(here: &Here<'_>, study: &SeriesStudy) -> Vec<Hung> {
    let members = study.members.iter();
    let hung = |member: &SeriesMember| {
        let design = here.public().designs.get(&member.design)?;
        let mut hung = wall::design(here, design);
        if let Some(position) = &member.position {
            hung.place = format!("{}.", position.trim_end_matches('.'));
        }
        Some(hung)
    };
    members.filter_map(hung).collect()
}

/// "Nine of ten designs are known. No. 10 is not known."; empty where no number is declared and no place is open.
pub(crate) fn missing(here: &Here<'_>, study: &SeriesStudy) -> String {
    let words = here.words();
    let missing = study.missing().filter(|missing| *missing > 0);
    let declared = study.declared.filter(|_| missing.is_some());
    let counted = declared.map_or_else(String::new, |declared| {
        let declared = usize::try_from(declared).unwrap_or(usize::MAX);
        let given = [
            ("known", Argument::Count(study.known())),
            ("n", Argument::Count(declared)),
        ];
        words.with("series-known-of", &given)
    });
    let open = match study.open_positions.as_slice() {
        [] => CleanHtml::empty(),
        open => {
            let places: Vec<CleanHtml> =
                runs(open).iter().map(|run| CleanHtml::text(run)).collect();
            let given = [("places", &enumeration::together(here, &places))];
            words.html("series-open-places", Some(open.len()), &given)
        }
    };
    as_sentences(&[CleanHtml::text(&counted), open]).plain()
}

/// "3", "5–7": numbers in order, those that follow each other as one.
fn runs(numbers: &[u32]) -> Vec<String> {
    numbers
        .chunk_by(|a, b| a + 1 == *b)
        .flat_map(|run| match run {
            [first, .., last] if last - first > 1 => vec![format!("{first}–{last}")],
            few => few.iter().map(ToString::to_string).collect(),
        })
        .collect()
}
