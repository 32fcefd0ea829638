//! Names of documents, what they tell, and of what.

use crate::model::certainty::Certainty;
use crate::model::document::{Document, EvidenceTarget, Telling};
use crate::model::key::Key;
use crate::model::literature::Cited;
use crate::model::provenance::Party;
use crate::model::vocabulary::List;
use crate::page::phrases::claims;
use crate::page::phrases::dates;
use crate::page::phrases::enumeration;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, as_sentences, capitalised};
use crate::study::numerals::Numeral;
use crate::study::tellings::DocumentStatement;

impl Here<'_> {
    /// The short name of a document: its title; where it has none its kind, else its key in words.
    pub fn document_name(&self, document: &Document) -> CleanHtml {
        if let Some(title) = &document.title {
            return CleanHtml::text(title);
        }
        match &document.kind {
            Some(kind) => capitalised(&CleanHtml::text(&self.term(List::Documents, kind.as_str()))),
            None => capitalised(&CleanHtml::text(&document.key.as_str().replace('-', " "))),
        }
    }

    /// A document by its short name, as a link, with its date: "Ledger of the printing house, May 1931". A title that
    /// names the year says the date.
    pub fn document(&self, key: &Key) -> CleanHtml {
        let Some(document) = self.public().documents.get(key) else {
            return CleanHtml::text(key.as_str());
        };
        let name = self.document_name(document);
        let link = self.link(&Address::Document(key.clone()), &name);
        let date = document.date.as_ref().filter(|date| {
            let day = date.earliest().day().or(date.latest().day());
            day.is_none_or(|day| !name.as_str().contains(&day.year.to_string()))
        });
        match date {
            Some(date) => link
                .then(", ")
                .and(&dates::throughout_html(date, self.words())),
            None => link,
        }
    }

    /// A work of the literature or a document that is cited, as a link, with the place in it.
    pub fn cited(&self, cited: &Cited, at: Option<&str>) -> CleanHtml {
        match cited {
            Cited::Work(key) => self.work(key, at),
            Cited::Document(key) => match at {
                Some(at) => self.document(key).then(", ").then(at),
                None => self.document(key),
            },
        }
    }
}

/// What documents tell of a record or a part of a design, a line each, the oldest document first.
pub(crate) fn told_of(here: &Here<'_>, of: &EvidenceTarget) -> Vec<CleanHtml> {
    let statements = here.book.studies.tellings.about(of).iter();
    statements
        .filter_map(|statement| statement_line(here, statement))
        .collect()
}

/// "Forty sheets were printed. Ledger of the printing house, May 1931, leaf 3 (probable)."
pub(crate) fn statement_line(here: &Here<'_>, statement: &DocumentStatement) -> Option<CleanHtml> {
    let (document, telling) = statement.read(here.public())?;
    let cited = Cited::Document(document.key.clone());
    let source = here.cited(&cited, telling.at.as_deref());
    let says = CleanHtml::text(&telling.says);
    Some(as_sentences(&[says, doubted(here, source, telling)]))
}

/// `text` with the certainty of a statement, where it is not certain.
pub(crate) fn doubted(here: &Here<'_>, text: CleanHtml, telling: &Telling) -> CleanHtml {
    match telling.certainty() {
        Certainty::Certain => text,
        doubted => text
            .then(" (")
            .then(claims::certainty(here, doubted))
            .then(")"),
    }
}

/// The record or part that a document tells something of, as a link: "*iii*/v of 14, *The Last Ferry*".
pub(crate) fn target_name(here: &Here<'_>, of: &EvidenceTarget) -> CleanHtml {
    let part = |word: &str, design: &Key, fragment: Fragment<'_>, name: &CleanHtml| {
        let to = here.href_part(&Address::Design(design.clone()), fragment);
        let part = CleanHtml::link(&to, name);
        let given = [("part", &part), ("design", &here.design(design))];
        here.words().html(word, None, &given)
    };
    match of {
        EvidenceTarget::Design(key) => here.design(key),
        EvidenceTarget::State(design, key) => {
            let numeral = here.book.studies.numeral(design, key);
            // "Only state" is no numeral.
            let word = if numeral.is_some_and(Numeral::is_only) {
                "document-part-of"
            } else {
                "document-state-of"
            };
            let name = here.numeral(design, key);
            part(word, design, Fragment::State(key), &name)
        }
        EvidenceTarget::Printing(design, key) => {
            let record = here.public().designs.get(design);
            let name =
                record.map_or_else(|| key.to_string(), |record| here.printing_name(record, key));
            let name = CleanHtml::text(&name);
            part("document-part-of", design, Fragment::Printing(key), &name)
        }
        EvidenceTarget::Impression(key) => here.impression_of(key),
        EvidenceTarget::Person(key) => here.person(key),
        EvidenceTarget::Series(key) => here.series_record(key),
    }
}

/// When a document was written; empty where no date is recorded.
pub(crate) fn date(here: &Here<'_>, document: &Document) -> CleanHtml {
    let date = document.date.as_ref();
    date.map_or_else(CleanHtml::empty, |date| {
        dates::throughout_html(date, here.words())
    })
}

/// "Harbour Museum, Northport, MS 14".
pub(crate) fn kept(here: &Here<'_>, document: &Document) -> CleanHtml {
    let holder = document.holder.as_ref();
    let holder = holder.map_or_else(CleanHtml::empty, |key| here.holder_and_city(&key.value));
    let shelfmark = document.shelfmark.as_ref();
    let shelfmark = shelfmark.map_or_else(CleanHtml::empty, |mark| {
        CleanHtml::span("accession", &CleanHtml::text(mark))
    });
    CleanHtml::join([&holder, &shelfmark], ", ")
}

/// Who wrote it to whom, and when: "Oryna Perelaz to Viktor Halden, 4 March 1931"
pub(crate) fn brief(here: &Here<'_>, document: &Document) -> CleanHtml {
    let words = here.words();
    let by = parties(here, &document.by);
    let to = parties(here, &document.to);
    let who = match (by.is_empty(), to.is_empty()) {
        (_, true) => by,
        (true, false) => words.html("document-to", None, &[("to", &to)]),
        (false, false) => words.html("document-by-to", None, &[("by", &by), ("to", &to)]),
    };
    CleanHtml::join([&capitalised(&who), &date(here, document)], ", ")
}

fn parties(here: &Here<'_>, parties: &[Party]) -> CleanHtml {
    let names: Vec<CleanHtml> = parties.iter().map(|party| here.party(party)).collect();
    enumeration::together(here, &names)
}
