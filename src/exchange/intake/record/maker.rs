//! A proposed record from a row.

use super::described::{self, unplaced};
use super::draft::RecordDraft;
use super::given::GivenNames;
use super::told;
use super::withheld::withheld;
use crate::exchange::intake::columns::{ColumnReading, Holds};
use crate::exchange::intake::grouping::settings::{SettledSheet, SettledSheets};
use crate::exchange::intake::handing::HandingIn;
use crate::exchange::intake::proposal::ProposedRow;
use crate::exchange::intake::reading::choices;
use crate::exchange::intake::reading::names::RecordNames;
use crate::model::as_found::{AsGiven, GivenField, OtherId};
use crate::model::catalogue::Catalogue;
use crate::model::holder::HolderKind;
use crate::model::impression::{FormerAccession, Impression, OtherSheet, Status};
use crate::model::key::{ImpressionKey, Key};
use crate::model::place::Place;
use crate::study::search::folding::{fold, normalised};

/// What the records of one table are made with.
pub struct RecordMaker<'m> {
    columns: &'m [ColumnReading],
    names: GivenNames,
    handing: &'m HandingIn,
    catalogue: &'m Catalogue,
    records: &'m RecordNames,
    credit: Vec<usize>,
    private: Option<&'m dyn PrivateNames>,
    settled: SettledSheets<'m>,
}

/// What tells whether a text names somebody whom the catalogue keeps private.
pub trait PrivateNames: Sync {
    /// Whether the text names somebody so.
    fn tell(&self, text: &str) -> bool;
}

impl<'m> RecordMaker<'m> {
    /// What the records of a table are made with. `handing`: who hands in; `records`: the names of the catalogue's holders
    /// and people.
    #[must_use]
    pub fn of(
        columns: &'m [ColumnReading],
        handing: &'m HandingIn,
        catalogue: &'m Catalogue,
        records: &'m RecordNames,
    ) -> RecordMaker<'m> {
        RecordMaker {
            columns,
            names: GivenNames::of(columns),
            handing,
            catalogue,
            records,
            credit: credit_columns(columns),
            private: None,
            settled: SettledSheets::default(),
        }
    }

    /// The same, which records what editors said that sheets are not.
    #[must_use]
    pub fn after(self, settled: &'m [SettledSheet]) -> RecordMaker<'m> {
        RecordMaker {
            settled: SettledSheets::of(settled),
            ..self
        }
    }

    /// The same, which also keeps from readers what names somebody whom the catalogue keeps private.
    #[must_use]
    pub fn keeping(self, private: &'m dyn PrivateNames) -> RecordMaker<'m> {
        RecordMaker {
            private: Some(private),
            ..self
        }
    }

    /// The names of the fields of `[as_given]`.
    #[must_use]
    pub fn names(&self) -> &GivenNames {
        &self.names
    }

    /// The record that a row proposes, with what it keeps from readers. `cell` gives the text of a column; `technique`: that
    /// of its design, recorded or proposed.
    #[must_use]
    pub fn draft<'c>(
        &self,
        row: &ProposedRow,
        cell: &'c dyn Fn(usize) -> &'c str,
        key: ImpressionKey,
        technique: &[Key],
    ) -> RecordDraft {
        let impression = self.impression(row, cell, key, technique);
        let tells_private = |text: &str| self.private.is_some_and(|private| private.tell(text));
        let withheld = withheld(
            &impression,
            self.columns,
            &self.names,
            self.catalogue,
            &tells_private,
        );
        RecordDraft {
            impression,
            withheld,
        }
    }

    /// The impression that a row proposes.
    #[must_use]
    pub fn impression<'c>(
        &self,
        row: &ProposedRow,
        cell: &'c dyn Fn(usize) -> &'c str,
        key: ImpressionKey,
        technique: &[Key],
    ) -> Impression {
        Impression {
            as_given: self.as_given(cell),
            ..self.compared(row, cell, key, technique)
        }
    }

    /// The same without the holder's words, by which sheets are not compared.
    #[must_use]
    pub fn compared<'c>(
        &self,
        row: &ProposedRow,
        cell: &'c dyn Fn(usize) -> &'c str,
        key: ImpressionKey,
        technique: &[Key],
    ) -> Impression {
        let facts = &row.facts;
        let text = |holds: Holds| facts.texts.get(holds);
        let holder = row.holder(self.handing).cloned();
        let by = told::speaker(self.handing, holder.as_ref());
        let differs = !facts.techniques.is_empty() && !is_same_set(&facts.techniques, technique);
        let said = text(Holds::Status).and_then(choices::status);
        let status = said.unwrap_or(if holder.is_some() {
            Status::Located
        } else {
            Status::Untraced
        });
        let former = text(Holds::FormerAccession).unwrap_or_default();
        let sheet = described::sheet(row, self.columns, cell);
        Impression {
            accession: row.accession.clone().map(unplaced),
            former_accessions: told::former_numbers(former)
                .map(|number| FormerAccession {
                    holder: None,
                    number: number.to_owned(),
                    until: None,
                })
                .collect(),
            credit: self.credit_line(cell),
            web: facts.web.clone().map(unplaced),
            ids: self.ids(cell),
            status: unplaced(status),
            kind: described::stated(facts.kind.clone()),
            numbering: facts.numbering.clone().map(unplaced),
            technique: if differs {
                facts.techniques.iter().cloned().map(unplaced).collect()
            } else {
                Vec::new()
            },
            opinions: told::opinions(row, self.handing, by.as_ref()),
            without: described::without(facts),
            sheet,
            marks: described::marks(facts),
            condition: described::condition(facts),
            provenance: told::acquisition(row, self.columns, holder.as_ref(), self.records),
            provenance_line: text(Holds::Provenance).map(|text| unplaced(text.to_owned())),
            sightings: told::sightings(facts, self.handing, by.as_ref(), self.named_by(cell)),
            holder: holder.map(unplaced),
            not_same_as: self.settled.row(row).map_or_else(Vec::new, not_the_same),
            ..Impression::blank(key)
        }
    }

    /// The technique of a recorded design.
    #[must_use]
    pub fn technique_of(&self, design: &Key) -> Vec<Key> {
        let design = self.catalogue.designs.get(design);
        let technique = design.into_iter().flat_map(|design| &design.technique);
        technique.map(|key| key.value.clone()).collect()
    }

    /// Every cell that has a text, as it is.
    fn as_given<'c>(&self, cell: &dyn Fn(usize) -> &'c str) -> Option<AsGiven> {
        let filled = self
            .names
            .all()
            .filter(|(column, _)| !cell(*column).trim().is_empty());
        let fields = filled.map(|(column, name)| GivenField {
            name: unplaced(name.to_owned()),
            text: unplaced(cell(column).to_owned()),
        });
        let fields: Vec<GivenField> = fields.collect();
        (!fields.is_empty()).then(|| AsGiven {
            fields,
            seen: self.handing.seen.clone().map(unplaced),
            source: self.source().map(unplaced),
            lang: None,
            place: Place::default(),
        })
    }

    /// Who saw the sheet, in the words of the row.
    fn named_by<'c>(&self, cell: &dyn Fn(usize) -> &'c str) -> Option<&'c str> {
        let columns = self.columns.iter().filter(|c| c.holds == Holds::SeenBy);
        let mut names = columns.map(|column| cell(column.column).trim());
        names.find(|name| !name.is_empty())
    }

    /// Where the words come from: what the head of `columns.toml` says, else the name of the house that hands in, which is
    /// credited by it. A name that is kept private is none.
    fn source(&self) -> Option<String> {
        let of_house = || {
            let by = self.handing.by.as_ref()?;
            let holder = self.catalogue.published_holder(by);
            let holder = holder.filter(|holder| holder.kind != HolderKind::Private);
            let person = self.catalogue.published_person(by);
            holder
                .map(|holder| holder.name.value.clone())
                .or_else(|| Some(person?.name.value.clone()))
        };
        self.handing.source.clone().or_else(of_house)
    }

    /// The credit line, exactly; none where several columns may hold it.
    fn credit_line<'c>(&self, cell: &dyn Fn(usize) -> &'c str) -> Option<String> {
        let lines = self.credit.iter().map(|column| cell(*column).trim());
        let mut lines = lines.filter(|line| !line.is_empty());
        let first = lines.next()?;
        lines.next().is_none().then(|| first.to_owned())
    }

    /// Identifiers elsewhere; the heading says who gives them.
    fn ids<'c>(&self, cell: &dyn Fn(usize) -> &'c str) -> Vec<OtherId> {
        let columns = self
            .columns
            .iter()
            .filter(|column| column.holds == Holds::Id);
        let ids = columns.filter_map(|column| {
            let id = cell(column.column).trim();
            let scheme = self.names.name(column.column)?;
            (!id.is_empty()).then(|| OtherId {
                scheme: unplaced(scheme.to_owned()),
                id: unplaced(id.to_owned()),
            })
        });
        ids.collect()
    }
}

/// The records that an editor says a sheet is not.
fn not_the_same(settled: &SettledSheet) -> Vec<OtherSheet> {
    let others = settled.is_not.iter().map(|named| OtherSheet {
        impression: unplaced(named.key.clone()),
        why: settled.why.clone(),
    });
    others.collect()
}

/// The columns of credit lines: those whose heading says "credit" where some do, else all that hold how a sheet was
/// acquired.
fn credit_columns(columns: &[ColumnReading]) -> Vec<usize> {
    let all: Vec<&ColumnReading> = columns
        .iter()
        .filter(|column| column.holds == Holds::Credit)
        .collect();
    let is_named = |column: &&&ColumnReading| {
        let heading = fold(&normalised(&column.heading));
        heading.contains("credit") || column.heading.contains("クレジット")
    };
    let named: Vec<usize> = all.iter().filter(is_named).map(|c| c.column).collect();
    if named.is_empty() {
        all.iter().map(|column| column.column).collect()
    } else {
        named
    }
}

fn is_same_set(one: &[Key], other: &[Key]) -> bool {
    one.iter().all(|key| other.contains(key)) && other.iter().all(|key| one.contains(key))
}
