//! Names of impressions: the handle "14.7", the handle with the title of the design, or the place of
//! the sheet.

use crate::model::impression::{Impression, Status};
use crate::model::key::{ImpressionKey, PictureKey, PictureOwner};
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

impl Here<'_> {
    /// The handle of an impression, "14.7", as a link where it has a page.
    pub fn impression(&self, key: &ImpressionKey) -> CleanHtml {
        let text = CleanHtml::text(&self.sheet_number(key));
        let address = Address::Impression(key.clone());
        if self.public().impression(key).is_none() || address == *self.address {
            return CleanHtml::span("handle", &text);
        }
        CleanHtml::element(
            "a",
            &[("class", "handle"), ("href", &self.href(&address))],
            &text,
        )
    }

    /// "R 1.7": the number of the design, as readers cite it, with that of the sheet.
    pub fn sheet_number(&self, key: &ImpressionKey) -> String {
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
        let Some((last, before)) = keys.split_last() else {
            return CleanHtml::empty();
        };
        let before = self.handles(before.iter().copied());
        CleanHtml::join([&before, &self.impression_of(last)], ", ")
    }

    /// Handles of impressions, run on: "7.1, 7.2, 8.4".
    pub fn handles<'k>(&self, keys: impl IntoIterator<Item = &'k ImpressionKey>) -> CleanHtml {
        let handles: Vec<CleanHtml> = keys.into_iter().map(|key| self.impression(key)).collect();
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
