//! Columns whose heading means the house that keeps the sheets or a place in that house: "Standort", "Location".
//!
//! In: the heading, the cells, the names of the catalogue's holders. Out: the holder where the cells name houses, else remarks:
//! a room or a drawer says nothing of the impression, is kept with it as the house wrote it, and is never published. Common
//! practice, no source: exports of collection databases have the room or cupboard under such a heading, lists that are
//! compiled from several houses the house. In our own forms the heading is the holder (`proposal`).

use std::sync::LazyLock;

use super::headings::only_small_words;
use super::holds::Holds;
use super::reading::Ground;
use crate::exchange::intake::reading::Lexicon;
use crate::exchange::intake::reading::phrases::Phrases;
use crate::exchange::intake::reading::words::{PieceKind, Words};
use crate::model::certainty::Certainty;

/// Headings that mean either.
static HEADINGS: LazyLock<Phrases<()>> = LazyLock::new(|| {
    Phrases::of(&[(
        (),
        "standort|aktueller standort|derzeitiger standort|ständiger standort|standort aktuell|location|current location|\
         present location|permanent location|emplacement|localisation|standplaats|huidige standplaats|locatie|\
         所在|所在地|所在場所",
    )])
});

/// Words for a house, also as the last part of a word ("Landesmuseum"), without accents.
const HOUSES: [&str; 33] = [
    "museum",
    "museums",
    "museen",
    "musee",
    "musees",
    "museo",
    "musea",
    "sammlung",
    "sammlungen",
    "collection",
    "collections",
    "collectie",
    "kabinett",
    "kabinet",
    "cabinet",
    "galerie",
    "gallery",
    "galleries",
    "kunsthalle",
    "kunsthaus",
    "bibliothek",
    "bibliotheque",
    "bibliotheek",
    "library",
    "archiv",
    "archive",
    "archives",
    "archief",
    "stiftung",
    "fondation",
    "foundation",
    "privatbesitz",
    "particulier",
];

/// The same in Japanese, which has no spaces.
const JAPANESE_HOUSES: [&str; 7] = [
    "美術館",
    "博物館",
    "図書館",
    "資料館",
    "記念館",
    "文庫",
    "個人蔵",
];

/// Words for a place in a house, also as the last part of a word ("Planschrank"), without accents.
const PLACES: [&str; 38] = [
    "depot",
    "magazin",
    "lager",
    "raum",
    "saal",
    "keller",
    "geschoss",
    "etage",
    "schrank",
    "regal",
    "schublade",
    "lade",
    "fach",
    "kasten",
    "kassette",
    "karton",
    "mappe",
    "ausstellung",
    "storage",
    "store",
    "room",
    "floor",
    "shelf",
    "shelves",
    "drawer",
    "cupboard",
    "cabinets",
    "box",
    "solander",
    "reserve",
    "reserves",
    "salle",
    "armoire",
    "tiroir",
    "boite",
    "zaal",
    "kast",
    "doos",
];

/// The same in Japanese.
const JAPANESE_PLACES: [&str; 5] = ["収蔵庫", "展示室", "倉庫", "棚", "箱"];

/// Whether a heading means the house or a place in it.
pub(super) fn is_ambiguous(heading: &str) -> bool {
    let head = heading.split(['(', '[']).next().unwrap_or_default();
    let words = Words::of(head);
    let found = HEADINGS.inflected_at(&words, 0);
    found.is_some_and(|found| only_small_words(&words, found.end))
}

/// What a column under such a heading holds, by its cells: some of them, none empty.
pub(super) fn held(cells: &[&str], lexicon: &Lexicon) -> (Holds, Certainty, Vec<Ground>) {
    let of = cells.len();
    let houses = cells.iter().filter(|cell| is_house(cell, lexicon)).count();
    let why = vec![Ground::Houses { fit: houses, of }];
    if houses * 2 >= of {
        let sure = if houses * 10 >= of * 9 {
            Certainty::Certain
        } else {
            Certainty::Probable
        };
        return (Holds::Holder, sure, why);
    }
    let places = cells.iter().filter(|cell| is_place(cell)).count();
    let sure = if places * 2 >= of {
        Certainty::Certain
    } else {
        Certainty::Possible
    };
    (Holds::Remarks, sure, why)
}

fn is_house(cell: &str, lexicon: &Lexicon) -> bool {
    if lexicon.names.holders.named(cell).is_some() {
        return true;
    }
    !is_place(cell) && has(cell, &HOUSES, &JAPANESE_HOUSES)
}

/// Whether a cell says a place in a house: by a word for one, or by a figure, as "Gallery 5" and "12.3.1".
fn is_place(cell: &str) -> bool {
    let has_figure = || {
        let words = Words::of(cell);
        words.pieces().iter().any(|p| p.kind == PieceKind::Number)
    };
    has(cell, &PLACES, &JAPANESE_PLACES) || has_figure()
}

fn has(cell: &str, endings: &[&str], unspaced: &[&str]) -> bool {
    let words = Words::of(cell);
    let mut words = words.pieces().iter().filter(|p| p.kind == PieceKind::Word);
    words.any(|word| endings.iter().any(|end| word.folded.ends_with(end)))
        || unspaced.iter().any(|part| cell.contains(part))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::exchange::intake::reading::lexicon::samples::lexicon;

    #[test]
    fn headings_that_mean_a_house_or_a_place_in_it_are_known() {
        for heading in [
            "Standort",
            "Aktueller Standort",
            "Standort (Depot)",
            "Location",
            "Current location",
            "Emplacement",
            "Standplaats",
            "所在",
        ] {
            assert!(is_ambiguous(heading), "{heading}");
        }
        for heading in ["Museum", "Location of the signature", "Holder", "Ort", ""] {
            assert!(!is_ambiguous(heading), "{heading}");
        }
    }

    #[test]
    fn cells_tell_houses_from_places_in_them() {
        let mut lexicon = lexicon();
        let harbour = "harbour".parse().unwrap();
        lexicon.names.holders.add(&harbour, "The Old Granary");
        for cell in [
            "The Old Granary",
            "harbour",
            "Landesmuseum, Hafenstadt",
            "Kupferstichkabinett",
            "Musée du Port",
            "Havenmuseum",
            "City Art Gallery",
            "Privatsammlung",
            "Collection particulière",
            "港美術館",
        ] {
            assert!(is_house(cell, &lexicon), "{cell}");
        }
        for cell in [
            "Depot",
            "Grafikdepot, Planschrank 3",
            "Landesmuseum, Depot 2",
            "Gallery 5",
            "12.3.1",
            "Solander box C",
            "Réserve",
            "Salle d'étude",
            "Kast 4, lade 2",
            "収蔵庫",
        ] {
            assert!(is_place(cell) && !is_house(cell, &lexicon), "{cell}");
        }
        for cell in ["Hafenstadt", "in Bearbeitung"] {
            assert!(!is_place(cell) && !is_house(cell, &lexicon), "{cell}");
        }
    }

    #[test]
    fn the_column_is_what_most_of_its_cells_are() {
        let told = |cells: &[&str]| {
            let (holds, sure, why) = held(cells, &lexicon());
            let why: Vec<String> = why.iter().map(Ground::message).collect();
            format!("{holds} {sure}: {}", why.join("; "))
        };
        let words = "the heading means a house or a place in it, and";
        assert_eq!(
            told(&["Landesmuseum", "Stadtarchiv"]),
            format!("holder certain: {words} 2 of 2 cells name a house")
        );
        assert_eq!(
            told(&["Landesmuseum", "Stadtarchiv", "Hafenstadt"]),
            format!("holder probable: {words} 2 of 3 cells name a house")
        );
        assert_eq!(
            told(&["Depot 1", "Depot 2", "Landesmuseum"]),
            format!("remarks certain: {words} 1 of 3 cells name a house")
        );
        assert_eq!(
            told(&["Hafenstadt", "Oberhafen"]),
            format!("remarks possible: {words} 0 of 2 cells name a house")
        );
    }
}
