//! Everything that is searched, in the order in which equally good results stand: by kind, then as the
//! catalogue lists it.

use rayon::prelude::*;

use super::narrowing::Ranks;
use super::{designs, impressions, marks, parties, publications, texts};
use crate::model::design::Design;
use crate::page::setting::book::Here;
use crate::study::search::entry::Entry;

/// The entries of a catalogue.
pub(crate) fn entries(here: &Here<'_>) -> Vec<Entry> {
    let ranks = Ranks::of(here);
    let in_order: Vec<&Design> = here.designs_in_order().collect();
    let of_each = |make: &(dyn Fn(&Design) -> Vec<Entry> + Sync)| -> Vec<Entry> {
        let made: Vec<Vec<Entry>> = in_order.par_iter().map(|design| make(design)).collect();
        made.into_iter().flatten().collect()
    };
    let mut entries = of_each(&|design| vec![designs::design(here, design, &ranks)]);
    entries.extend(of_each(&|design| designs::states(here, design, &ranks)));
    entries.extend(of_each(&|design| designs::printings(here, design, &ranks)));
    entries.extend(of_each(&|design| impressions::all(here, design, &ranks)));
    entries.extend(marks::all(here));
    entries.extend(parties::holders(here, &ranks));
    entries.extend(parties::people(here));
    entries.extend(publications::works(here));
    entries.extend(publications::earlier_numbers(here));
    entries.extend(publications::exhibitions(here));
    entries.extend(publications::series(here));
    entries.extend(publications::documents(here));
    entries.extend(texts::pages(here));
    entries.extend(texts::terms(here));
    debug_assert!(
        entries.is_sorted_by_key(|entry| entry.kind),
        "the script finds the kind of an entry by its place"
    );
    entries
}
