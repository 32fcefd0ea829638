//! Addresses of pages: permanent once issued.
//!
//! Pages are folders (`design/14/`), so that an address does not show how the catalogue was made. An
//! address mirrors the link of Markdown (`design:14`). Links between pages are relative, so a catalogue
//! may stand under any path.

use std::fmt;

use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;
use crate::model::occurrence::{DesignPart, RecordId};
use crate::model::words::{ClosedList as _, closed_list};

closed_list! {
    /// The pages that list records of many kinds; each is named by one word of its address.
    Overview {
        /// Search.
        Search = "search",
        /// Designs by number, as pictures.
        Designs = "designs",
        /// Which print and which state a sheet is: the way to the identification keys.
        Identify = "identify",
        /// Titles, in every language.
        Titles = "titles",
        /// Series.
        Series = "series",
        /// Subjects.
        Subjects = "subjects",
        /// Techniques.
        Techniques = "techniques",
        /// Impressions by paper.
        Papers = "papers",
        /// The counts of everything.
        Census = "census",
        /// Holders, by city.
        Holders = "holders",
        /// People.
        People = "people",
        /// Former owners, agents and keepers.
        Owners = "owners",
        /// Marks on sheets.
        Marks = "marks",
        /// The recorded owners of sheets from 1933 to 1945.
        Provenance = "provenance",
        /// Dated events, year by year.
        Chronology = "chronology",
        /// Exhibitions.
        Exhibitions = "exhibitions",
        /// Literature.
        Literature = "literature",
        /// Documents, by date and by kind.
        Documents = "documents",
        /// This catalogue's numbers and those of earlier catalogues.
        Concordance = "concordance",
        /// Terms.
        Glossary = "glossary",
        /// The ways to all pages about the artist and the catalogue.
        About = "about",
        /// Changes since the last edition.
        Changes = "changes",
        /// How to cite.
        Cite = "cite",
        /// References to records, resolved.
        Resolve = "resolve",
        /// How to contribute.
        Contribute = "contribute",
        /// Cautions.
        Cautions = "cautions",
        /// The data.
        Data = "data",
    }
}

impl Overview {
    /// Whether it describes the catalogue rather than prints; such pages stand last in lists.
    pub fn is_about_the_catalogue(self) -> bool {
        matches!(
            self,
            Overview::Changes
                | Overview::Cite
                | Overview::Resolve
                | Overview::Contribute
                | Overview::Cautions
                | Overview::Data
        )
    }
}

/// What sheets of several designs have in common that are compared.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ComparedBy {
    /// They bear one mark.
    Mark(Key),
    /// Their paper has a watermark.
    Watermark,
}

/// The address of a page.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Address {
    /// The opening page.
    Opening,
    /// The page for an address that leads to nothing.
    NotFound,
    /// An overview.
    Overview(Overview),
    /// The columns of the tables of data.
    FieldNotes,
    /// The designs in words: by number, then by date.
    DesignList,
    /// A design.
    Design(Key),
    /// The census of a design.
    DesignCensus(Key),
    /// The identification key of a design.
    IdentificationKey(Key),
    /// The sheet on which a print is examined against the key.
    ExaminationSheet(Key),
    /// The comparison of impressions of a design that the reader chooses.
    ChosenComparison(Key),
    /// A point of a design.
    Point(Key, Key),
    /// The comparison of sheets of several designs.
    SheetsCompared(ComparedBy),
    /// A recorded comparison, by its place in the record, from 1.
    Comparison(Key, usize),
    /// An impression.
    Impression(ImpressionKey),
    /// A holder.
    Holder(Key),
    /// A person.
    Person(Key),
    /// A work of the literature.
    Work(Key),
    /// An exhibition.
    Exhibition(Key),
    /// A mark that several sheets share.
    Mark(Key),
    /// A document.
    Document(Key),
    /// A series.
    Series(Key),
    /// An edition of the catalogue.
    Edition(Key),
    /// One of the catalogue's own pages.
    Page(Key),
}

impl fmt::Display for Address {
    /// The address relative to the catalogue, with a slash at the end; empty for the opening page.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let of_design = |key: &Key| Address::Design(key.clone());
        match self {
            Address::Opening => Ok(()),
            Address::NotFound => f.write_str("404.html"),
            Address::Overview(overview) => write!(f, "{}/", overview.word()),
            Address::FieldNotes => write!(f, "{}/fields/", Overview::Data.word()),
            Address::DesignList => write!(f, "{}/list/", Overview::Designs.word()),
            Address::DesignCensus(key) => write!(f, "{}census/", of_design(key)),
            Address::IdentificationKey(key) => write!(f, "{}key/", of_design(key)),
            Address::ExaminationSheet(key) => write!(f, "{}key/sheet/", of_design(key)),
            Address::ChosenComparison(key) => write!(f, "{}comparison/", of_design(key)),
            Address::SheetsCompared(ComparedBy::Mark(key)) => {
                write!(f, "{}comparison/", Address::Mark(key.clone()))
            }
            Address::SheetsCompared(ComparedBy::Watermark) => {
                write!(f, "{}/watermarks/comparison/", Overview::Marks.word())
            }
            Address::Point(key, point) => write!(f, "{}point/{point}/", of_design(key)),
            Address::Comparison(key, place) => write!(f, "{}comparison/{place}/", of_design(key)),
            Address::Design(key) => record(f, &Target::Design(key.clone())),
            Address::Impression(key) => record(f, &Target::Impression(key.clone())),
            Address::Holder(key) => record(f, &Target::Holder(key.clone())),
            Address::Person(key) => record(f, &Target::Person(key.clone())),
            Address::Work(key) => record(f, &Target::Work(key.clone())),
            Address::Exhibition(key) => record(f, &Target::Exhibition(key.clone())),
            Address::Mark(key) => record(f, &Target::Mark(key.clone())),
            Address::Document(key) => record(f, &Target::Document(key.clone())),
            Address::Series(key) => record(f, &Target::Series(key.clone())),
            Address::Edition(key) => write!(f, "edition/{key}/"),
            Address::Page(key) => record(f, &Target::Page(key.clone())),
        }
    }
}

/// The page of a record: its link with a slash for the colon.
fn record(f: &mut fmt::Formatter<'_>, target: &Target) -> fmt::Result {
    write!(f, "{}/{}/", target.kind(), target.key())
}

impl Address {
    /// The file that is served at the address.
    pub fn file(&self) -> String {
        match self {
            Address::NotFound => self.to_string(),
            folder => format!("{folder}index.html"),
        }
    }

    /// The relative path from this page to the opening page: `./`, or `../` for each folder.
    pub fn root(&self) -> String {
        match self.to_string().matches('/').count() {
            0 => "./".to_owned(),
            depth => "../".repeat(depth),
        }
    }

    /// The address of one of the catalogue's own pages. A page with the key of a page about the catalogue
    /// (`cite`, `contribute`, `cautions` …) is printed at the head of that page.
    pub fn of_page(key: &Key) -> Address {
        let about = Overview::ALL
            .iter()
            .find(|o| o.is_about_the_catalogue() && o.word() == key.as_str());
        about.map_or_else(|| Address::Page(key.clone()), |o| Address::Overview(*o))
    }

    /// The page of a record; `None` for the settings and for terms, which have none.
    pub fn of_record(record: &RecordId) -> Option<Address> {
        Address::of_target(&record.target()?)
    }

    /// The page of a record that a link names; `None` for a picture, which has none.
    pub fn of_target(target: &Target) -> Option<Address> {
        Some(match target {
            Target::Design(key) => Address::Design(key.clone()),
            Target::Impression(key) => Address::Impression(key.clone()),
            Target::Holder(key) => Address::Holder(key.clone()),
            Target::Person(key) => Address::Person(key.clone()),
            Target::Work(key) => Address::Work(key.clone()),
            Target::Exhibition(key) => Address::Exhibition(key.clone()),
            Target::Mark(key) => Address::Mark(key.clone()),
            Target::Document(key) => Address::Document(key.clone()),
            Target::Series(key) => Address::Series(key.clone()),
            Target::Page(key) => Address::of_page(key),
            Target::Picture(_) => return None,
        })
    }

    /// The full address, for citations. `base` is the address of the catalogue.
    pub fn absolute(&self, base: &str) -> String {
        format!("{}/{self}", base.trim_end_matches('/'))
    }
}

/// A place within a page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fragment<'a> {
    /// A state of a design.
    State(&'a Key),
    /// A printing.
    Printing(&'a Key),
    /// A variant.
    Variant(&'a Key),
    /// A point.
    Point(&'a Key),
    /// A matrix.
    Matrix(&'a Key),
    /// A condition of a mark.
    Condition(&'a Key),
    /// The watermarks among the marks.
    Watermark,
    /// A table of a census, by the property that it counts.
    Counts(&'a str),
    /// A row of such a table, by the key that it counts; `None` for the row of values that are not recorded.
    Counted(&'a str, Option<&'a str>),
    /// A number of an earlier catalogue on the page of that work
    /// ([`crate::study::concordance::row_fragment`]).
    EarlierNumber(&'a str),
}

impl<'a> Fragment<'a> {
    /// The place of a part of a design on its page.
    pub fn of_part(part: DesignPart, key: &'a Key) -> Fragment<'a> {
        match part {
            DesignPart::Matrix => Fragment::Matrix(key),
            DesignPart::State => Fragment::State(key),
            DesignPart::Printing => Fragment::Printing(key),
            DesignPart::Variant => Fragment::Variant(key),
        }
    }
}

impl fmt::Display for Fragment<'_> {
    /// Without the `#`, as it stands in an `id`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fragment::State(key) => write!(f, "state-{key}"),
            Fragment::Printing(key) => write!(f, "printing-{key}"),
            Fragment::Variant(key) => write!(f, "variant-{key}"),
            Fragment::Point(key) => write!(f, "point-{key}"),
            Fragment::Condition(key) => write!(f, "condition-{key}"),
            Fragment::Watermark => f.write_str("watermark"),
            Fragment::Matrix(key) => write!(f, "matrix-{key}"),
            Fragment::Counts(by) => write!(f, "by-{by}"),
            Fragment::Counted(by, Some(key)) => write!(f, "{by}-{key}"),
            Fragment::Counted(by, None) => write!(f, "no-{by}"),
            Fragment::EarlierNumber(row) => f.write_str(row),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_are_folders_and_roots_lead_back() {
        let impression = Address::Impression("14.7".parse().unwrap());
        assert_eq!(impression.file(), "impression/14.7/index.html");
        assert_eq!(impression.root(), "../../");
        assert_eq!(Address::Opening.root(), "./");
        assert_eq!(Address::Opening.file(), "index.html");
        assert_eq!(Address::NotFound.file(), "404.html");
        let comparison = Address::Comparison("14".parse().unwrap(), 1);
        assert_eq!(comparison.to_string(), "design/14/comparison/1/");
        assert_eq!(comparison.root(), "../../../../");
    }

    #[test]
    fn a_base_with_a_slash_is_no_different() {
        let address = Address::Overview(Overview::Designs);
        assert_eq!(
            address.absolute("https://prints.example.org/catalogue/"),
            "https://prints.example.org/catalogue/designs/"
        );
    }
}
