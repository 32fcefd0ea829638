//! The records that links in texts lead to.

use crate::model::link::Target;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;

impl Here<'_> {
    /// The page of the record that a link names, and the record's short name. `None` where it has no
    /// page.
    pub fn target(&self, target: &Target) -> Option<(Address, CleanHtml)> {
        let public = self.public();
        Some(match target {
            Target::Design(key) => {
                let design = public.designs.get(key)?;
                (Address::Design(key.clone()), self.design_name(design))
            }
            Target::Impression(key) => {
                public.impression(key)?;
                (
                    Address::Impression(key.clone()),
                    CleanHtml::text(&self.sheet_number(key)),
                )
            }
            Target::Holder(key) => {
                let holder = public.holders.get(key)?;
                (
                    Address::Holder(key.clone()),
                    CleanHtml::text(&self.holder_name(holder)),
                )
            }
            Target::Person(key) => {
                let person = public.people.get(key)?;
                (Address::Person(key.clone()), CleanHtml::text(&person.name))
            }
            Target::Work(key) => {
                let work = public.literature.get(key)?;
                (Address::Work(key.clone()), CleanHtml::text(&work.short))
            }
            Target::Exhibition(key) => {
                let exhibition = public.exhibitions.get(key)?;
                let title = CleanHtml::element("i", &[], &CleanHtml::text(&exhibition.title));
                (Address::Exhibition(key.clone()), title)
            }
            Target::Mark(key) => {
                let mark = public.marks.get(key)?;
                (Address::Mark(key.clone()), self.mark_name(mark))
            }
            Target::Document(key) => {
                let document = public.documents.get(key)?;
                (Address::Document(key.clone()), self.document_name(document))
            }
            Target::Series(key) => {
                let series = public.series.get(key)?;
                (Address::Series(key.clone()), self.series_title(series))
            }
            Target::Page(key) => {
                let page = public.pages.get(key)?;
                (Address::of_page(key), CleanHtml::text(&page.title))
            }
            Target::Picture(key) => {
                public.picture(key)?;
                let address = match &key.owner {
                    crate::model::key::PictureOwner::Design(design) => {
                        Address::Design(design.clone())
                    }
                    crate::model::key::PictureOwner::Impression(impression) => {
                        Address::Impression(impression.clone())
                    }
                    crate::model::key::PictureOwner::Document(document) => {
                        Address::Document(document.clone())
                    }
                };
                (address, CleanHtml::text(&self.picture_number(key)))
            }
        })
    }
}
