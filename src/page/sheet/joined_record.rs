//! The page at the address of a record that shares the page of its sheet: it leads there at once, without a script, and
//! says so.

use serde::Serialize;

use crate::model::impression::Impression;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;

#[derive(Serialize)]
struct View {
    number: String,
    design: CleanHtml,
    /// The relative address of the page of the sheet.
    href: String,
    said: CleanHtml,
}

/// The page of a record whose sheet has the page of another.
pub(crate) fn page(here: &Here<'_>, record: &Impression) -> Leaf {
    let words = here.words();
    let sheet = here.joined().page_of(&record.key);
    let number = here.record_number(&record.key);
    let name = CleanHtml::text(&number);
    let of = [("record", &name), ("sheet", &here.impression(sheet))];
    let said = words.html("leads-to-its-sheet", None, &of);
    let address = Address::Impression(sheet.clone());
    let view = View {
        number: number.clone(),
        design: here.design(&record.key.design),
        href: here.href(&address),
        said: said.clone(),
    };
    Leaf::new(here.address, number, "pages/joined-record.html", &view)
        .described(said.plain())
        .standing_at(address)
}
