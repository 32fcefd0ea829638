//! Names of impressions: the handle "14.7", the handle with the title of the design, or the place of
//! the sheet.

use std::collections::BTreeSet;

use crate::model::impression::{Impression, Status};
use crate::model::key::{ImpressionKey, PictureKey, PictureOwner};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

impl Here<'_> {
    /// The handle of an impression, "14.7", as a link where it has a page. A record that shares the page of its sheet
    /// with others is named as that page is.
    pub fn impression(&self, key: &ImpressionKey) -> CleanHtml {
        let page = self.joined().page_of(key);
        let text = CleanHtml::text(&self.record_number(page));
        let address = Address::Impression(page.clone());
        if self.public().impression(page).is_none() || address == *self.address {
            return CleanHtml::span("handle", &text);
        }
        CleanHtml::element(
            "a",
            &[("class", "handle"), ("href", &self.href(&address))],
            &text,
        )
    }

    /// The handle of a record itself, "14.7", whichever page its sheet has.
    pub fn record(&self, key: &ImpressionKey) -> CleanHtml {
        CleanHtml::span("handle", &CleanHtml::text(&self.record_number(key)))
    }

    /// The handle of a sheet, and of the record that tells of it here where it is not that of its page: "14.7 {14.9}".
    pub fn impression_by(&self, record: &ImpressionKey) -> CleanHtml {
        let sheet = self.impression(record);
        if self.joined().has_page(record) {
            return sheet;
        }
        let by = CleanHtml::quiet(&format!("{{{}}}", self.record_number(record)));
        sheet.then(" ").and(&by)
    }

    /// The same without links.
    pub fn number_by(&self, record: &ImpressionKey) -> String {
        let sheet = self.sheet_number(record);
        if self.joined().has_page(record) {
            return sheet;
        }
        format!("{sheet} {{{}}}", self.record_number(record))
    }

    /// "R 1.7": the number of the design, as readers cite it, with that of the sheet; of a sheet with several
    /// records, that of its page.
    pub fn sheet_number(&self, key: &ImpressionKey) -> String {
        self.record_number(self.joined().page_of(key))
    }

    /// The same of a record itself.
    pub fn record_number(&self, key: &ImpressionKey) -> String {
        let design = self.public().designs.get(&key.design);
        design.map_or_else(
            || key.to_string(),
            |design| format!("{}.{}", design.number, key.number),
        )
    }

    /// "R 1.7/recto": a picture with the number of its sheet or design, as readers cite it.
    pub fn picture_number(&self, key: &PictureKey) -> String {
        let owner = match &key.owner {
            PictureOwner::Impression(sheet) => self.sheet_number(sheet),
            document @ PictureOwner::Document(_) => document.to_string(),
            PictureOwner::Design(design) => {
                let design_record = self.public().designs.get(design);
                design_record.map_or_else(|| design.to_string(), |d| d.number.clone())
            }
        };
        format!("{owner}/{}", key.name)
    }

    /// "14.7, *The Last Ferry*": an impression with the title of its design.
    pub fn impression_of(&self, key: &ImpressionKey) -> CleanHtml {
        let title = self
            .public()
            .designs
            .get(&key.design)
            .map_or_else(CleanHtml::empty, |design| self.design_title(design));
        CleanHtml::join([&self.impression(key), &title], ", ")
    }

    /// "14.2, 14.7, *The Last Ferry*": impressions of one design with its title.
    pub fn impressions_of(&self, keys: &[&ImpressionKey]) -> CleanHtml {
        let sheets = self.sheets_of(keys.iter().copied());
        let Some((last, before)) = sheets.split_last() else {
            return CleanHtml::empty();
        };
        let before = self.handles(before.iter().copied());
        CleanHtml::join([&before, &self.impression_of(last)], ", ")
    }

    /// "{14.9}", "{14.7, 14.9}": the records that something on the page of a sheet comes from; empty where the sheet
    /// has no other record than that of `page`.
    pub fn of_record<'k>(
        &self,
        page: &ImpressionKey,
        records: impl IntoIterator<Item = &'k ImpressionKey>,
    ) -> CleanHtml {
        if self.joined().others_on(page).is_empty() {
            return CleanHtml::empty();
        }
        let names: Vec<String> = records
            .into_iter()
            .map(|record| self.record_number(record))
            .collect();
        CleanHtml::quiet(&format!("{{{}}}", names.join(", ")))
    }

    /// The sheets that some records are of, each once, by the record whose page it has.
    pub fn sheets_of<'k>(
        &self,
        records: impl IntoIterator<Item = &'k ImpressionKey>,
    ) -> Vec<&'k ImpressionKey>
    where
        Self: 'k,
    {
        let joined = self.joined();
        let mut seen = BTreeSet::new();
        let pages = records.into_iter().map(|key| joined.page_of(key));
        pages.filter(|page| seen.insert(*page)).collect()
    }

    /// Handles of impressions, run on: "7.1, 7.2, 8.4"; each sheet once.
    pub fn handles<'k>(&self, keys: impl IntoIterator<Item = &'k ImpressionKey>) -> CleanHtml
    where
        Self: 'k,
    {
        let sheets = self.sheets_of(keys).into_iter();
        let handles: Vec<CleanHtml> = sheets.map(|key| self.impression(key)).collect();
        CleanHtml::join(&handles, ", ")
    }

    /// The place of a sheet, city first: "Northport, Harbour Museum", "Private collection,
    /// Switzerland", "untraced".
    pub fn whereabouts(&self, impression: &Impression) -> String {
        let holder = impression
            .holder
            .as_ref()
            .and_then(|key| self.public().holders.get(&key.value));
        match holder {
            Some(holder) => self.holder_city_first(holder),
            None if impression.status.value == Status::Located => {
                self.words().word("holder-not-recorded").to_owned()
            }
            None => self.status(impression.status.value).to_owned(),
        }
    }

    /// The word for a status.
    pub fn status(&self, status: Status) -> &str {
        self.words().listed("status", status)
    }
}
