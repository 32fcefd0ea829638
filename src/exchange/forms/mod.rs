//! Forms that readers fill in and send: a table of sheets (XLSX) and a text for a mail, in general and for each design; and
//! the sheets of a holder in the same columns, to correct.
//!
//! What is filled in is read by [`super::intake`].
//!
//! | file | subject |
//! |---|---|
//! | `columns` | the columns: what each holds, from which list it is chosen |
//! | `lists` | the lists: designs, states, printings, terms |
//! | `table` | the workbook |
//! | `recorded` | what is recorded of a sheet, in the words of the columns |
//! | `holder_workbook` | the sheets of a holder |
//! | `sighting` | the text for a mail |

mod columns;
pub(super) mod holder_workbook;
mod lists;
mod recorded;
mod sighting;
mod table;

use std::collections::BTreeSet;

use rayon::prelude::*;

use super::format::WholeFormat;
use crate::model::design::Design;
use crate::page::{Address, Book, Here, Overview, Take, forms};
use table::{Extent, Forms};

/// The forms, in general and for each design. Those of a design that was withdrawn stay at their addresses and offer nothing of
/// it; no page leads to them.
pub(super) const FORMAT: WholeFormat = WholeFormat {
    name: "forms",
    paths: &[
        "contribute/listing.xlsx",
        "contribute/sighting.txt",
        "design/…/listing.xlsx",
        "design/…/sighting.txt",
    ],
    each,
};

/// Makes the forms, and passes each to `take`.
fn each(book: &Book<'_>, take: &Take<'_>) {
    let address = Address::Overview(Overview::Contribute);
    let here = Here {
        book,
        address: &address,
        root: "",
    };
    let designs: Vec<&Design> = here.designs_in_order().collect();
    let general = forms::in_general();
    let table = Forms::new(&here, Extent::Designs);
    take(general.listing, table.empty(&here, &designs));
    take(general.sighting, sighting::form(&here, None).into_bytes());
    let one = Forms::new(&here, Extent::OneDesign);
    let paths = designs.iter().map(|design| forms::of_design(design));
    let paths: BTreeSet<String> = paths
        .flat_map(|paths| [paths.listing, paths.sighting])
        .collect();
    // A program that asks at a former address gets the form, as with other files.
    let with_copies = |path: String, bytes: Vec<u8>| {
        for other in book.redirects.copies(&path, |path| paths.contains(path)) {
            take(other, bytes.clone());
        }
        take(path, bytes);
    };
    designs.par_iter().for_each(|design| {
        let paths = forms::of_design(design);
        let of = (!design.standing.is_withdrawn()).then_some(*design);
        with_copies(paths.listing, one.empty(&here, &[design]));
        with_copies(paths.sighting, sighting::form(&here, of).into_bytes());
    });
}
