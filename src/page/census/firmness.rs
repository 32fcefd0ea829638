//! Of the sheets behind a figure, those that are not identified firmly, in words.

use crate::model::key::ImpressionKey;
use crate::page::setting::book::Here;
use crate::study::DesignStudy;

/// "1 not certain, 2 contradicted"; empty where all are firm.
pub(super) fn in_words(here: &Here<'_>, study: &DesignStudy, sheets: &[ImpressionKey]) -> String {
    let not_firm = study.firmness.among(sheets);
    let said = [
        ("of-them-uncertain", not_firm.uncertain),
        ("of-them-contradicted", not_firm.contradicted),
    ];
    let said = said.into_iter().filter(|(_, n)| *n > 0);
    let said: Vec<String> = said.map(|(id, n)| here.words().count(id, n)).collect();
    said.join(", ")
}
