//! Concepts: types of the Art & Architecture Thesaurus, terms of the vocabularies, languages and units.
//!
//! The numbers here are those for which the model asks, or which it recommends (linked.art, "Required Vocabulary
//! Terms" and "Recommended Vocabulary Terms", snapshot of 2026-07-01); each is in tests/checks/aat_terms.csv. Numbers
//! of techniques, papers, roles and ways of transfer are in `content/vocabulary/`.

use super::node::Node;
use crate::model::vocabulary::List;
use crate::model::words::ClosedList as _;
use crate::page::{Address, Here, Overview};

/// A type of the thesaurus: its number, and its name for developers.
#[derive(Clone, Copy)]
pub(super) struct Concept(u32, &'static str);

impl Concept {
    /// A concept of the thesaurus.
    pub fn node(self) -> Node {
        let Concept(number, label) = self;
        Node::at("Type", aat(number), label)
    }

    /// The same, as a kind of concept: the type of a type.
    pub fn of_kind(self, kind: Concept) -> Node {
        Node {
            classified_as: vec![kind.bare()],
            ..self.node()
        }
    }

    /// The same without a name, where it only says what kind of concept another is.
    pub fn bare(self) -> Node {
        Node {
            id: Some(aat(self.0)),
            ..Node::new("Type")
        }
    }
}

pub(super) const PRINT: Concept = Concept(300_041_273, "Print");
pub(super) const ARTWORK: Concept = Concept(300_133_025, "Artwork");
pub(super) const TYPE_OF_WORK: Concept = Concept(300_435_443, "Type of Work");
pub(super) const PRINTING_BLOCK: Concept = Concept(300_161_798, "Printing Block");
pub(super) const PRINTING_PLATE: Concept = Concept(300_022_755, "Printing Plate");
pub(super) const PRINTING_SURFACE: Concept = Concept(300_188_811, "Printing Surface");
pub(super) const PRINTING: Concept = Concept(300_053_319, "Printing (process)");

pub(super) const PRIMARY_NAME: Concept = Concept(300_404_670, "Primary Name");
pub(super) const ALTERNATE_NAME: Concept = Concept(300_264_273, "Alternate Name");
pub(super) const FORMER_NAME: Concept = Concept(300_435_719, "Former Name");
pub(super) const SORT_NAME: Concept = Concept(300_451_544, "Sort Name");
pub(super) const DISPLAY_NAME: Concept = Concept(300_404_669, "Display Name");
pub(super) const ACCESSION_NUMBER: Concept = Concept(300_312_355, "Accession Number");
pub(super) const LOCAL_NUMBER: Concept = Concept(300_404_621, "Local Number");
pub(super) const CALL_NUMBER: Concept = Concept(300_311_706, "Call Number");
pub(super) const LOT_NUMBER: Concept = Concept(300_404_628, "Lot Number");

/// A text of a few words about something: the kind of the types of all statements.
const BRIEF_TEXT: Concept = Concept(300_418_049, "Brief Text");
pub(super) const CONDITION: Concept = Concept(300_435_425, "Condition Statement");
pub(super) const CREDIT_LINE: Concept = Concept(300_026_687, "Credit Line");
pub(super) const DESCRIPTION: Concept = Concept(300_435_416, "Description");
pub(super) const DIMENSIONS: Concept = Concept(300_435_430, "Dimensions Statement");
pub(super) const EDITION: Concept = Concept(300_435_435, "Edition Statement");
pub(super) const MARKINGS: Concept = Concept(300_435_420, "Markings Statement");
pub(super) const MATERIALS: Concept = Concept(300_435_429, "Materials Statement");
pub(super) const NOTE: Concept = Concept(300_027_200, "Note");
pub(super) const PRODUCTION: Concept = Concept(300_435_436, "Production Statement");
pub(super) const PROVENANCE_STATEMENT: Concept = Concept(300_435_438, "Provenance Statement");
pub(super) const RIGHTS: Concept = Concept(300_435_434, "Rights Statement");
pub(super) const WATERMARKS: Concept = Concept(300_435_421, "Watermarks Statement");

pub(super) const PROVENANCE: Concept = Concept(300_055_863, "Provenance");
pub(super) const MUSEUM: Concept = Concept(300_312_281, "Museum");
pub(super) const ACTIVE: Concept = Concept(300_393_177, "Professional Activity");
pub(super) const OCCUPATION: Concept = Concept(300_263_369, "Occupation");
pub(super) const HEIGHT: Concept = Concept(300_055_644, "Height");
pub(super) const WIDTH: Concept = Concept(300_055_647, "Width");
pub(super) const WEB_PAGE: Concept = Concept(300_264_578, "Web Page");
pub(super) const DIGITAL_IMAGE: Concept = Concept(300_215_302, "Digital Image");

/// The type of a statement.
pub(super) fn statement_kind(concept: Concept) -> Node {
    concept.of_kind(BRIEF_TEXT)
}

/// Millimetres.
pub(super) fn millimetres() -> Node {
    Node {
        id: Some(aat(300_379_097)),
        ..Node::new("MeasurementUnit")
    }
}

/// The address of a concept of the thesaurus.
fn aat(number: u32) -> String {
    format!("http://vocab.getty.edu/aat/{number}")
}

/// A term of a vocabulary as a node of class `kind` (`Type`, `Material`): by its number in the thesaurus where it has
/// one, else by its place in the glossary.
pub(super) fn term(here: &Here<'_>, kind: &'static str, list: List, key: &str) -> Node {
    let number = here.public().vocabularies.term(list, key);
    let number = number.and_then(|term| term.aat);
    let id = number.map_or_else(|| in_glossary(here, &format!("{}-{key}", list.word())), aat);
    Node::at(kind, id, here.term(list, key))
}

/// The process of a technique, where the thesaurus has a number for it that was looked up. The numbers of the vocabulary
/// are those of prints so made. A technique of the catalogue's own has none.
pub(super) fn process(here: &Here<'_>, technique: &str) -> Option<Node> {
    let (_, number) = PROCESSES.iter().find(|(key, _)| *key == technique)?;
    let label = here.term(List::Techniques, technique);
    Some(Node::at("Type", aat(*number), label))
}

/// The processes of built-in techniques: tests/checks/aat_terms.csv, group "process", which names the source of each.
/// Colour and chiaroscuro woodcuts are made by the process of woodcuts.
const PROCESSES: &[(&str, u32)] = &[
    ("aquatint", 300_053_242),
    ("chiaroscuro-woodcut", 300_053_296),
    ("colour-lithograph", 300_190_525),
    ("colour-woodcut", 300_053_296),
    ("drypoint", 300_053_228),
    ("engraving", 300_053_225),
    ("etching", 300_053_241),
    ("lift-ground", 300_053_243),
    ("linocut", 300_060_720),
    ("lithograph", 300_053_271),
    ("mezzotint", 300_053_233),
    ("offset-lithograph", 300_192_900),
    ("screenprint", 300_053_281),
    ("transfer-lithograph", 300_053_276),
    ("wood-engraving", 300_053_303),
    ("woodcut", 300_053_296),
];

/// A word that the glossary explains, by the id of its entry there.
pub(super) fn glossary_word(here: &Here<'_>, id: &str, label: &str) -> Node {
    Node::at("Type", in_glossary(here, id), label)
}

fn in_glossary(here: &Here<'_>, id: &str) -> String {
    let base = &here.public().settings.address.value;
    let glossary = Address::Overview(Overview::Glossary).absolute(base);
    format!("{glossary}#{id}")
}

/// A language (BCP 47), by its number in the thesaurus, which does not tell scripts and regions apart; `None` for one
/// that the table lacks.
pub(super) fn language(tag: &str) -> Option<Node> {
    let primary = tag.split('-').next()?;
    let at = LANGUAGES
        .binary_search_by_key(&primary, |(code, _)| code)
        .ok()?;
    let (code, number) = LANGUAGES.get(at)?;
    Some(Node::at("Language", aat(*number), *code))
}

/// The code of the language that has a number in the thesaurus; the first of two that share one.
pub(in crate::exchange) fn language_of_number(number: u32) -> Option<&'static str> {
    let found = LANGUAGES.iter().find(|(_, known)| *known == number);
    found.map(|(code, _)| *code)
}

/// Languages with two letters (ISO 639-1), by code: linked.art, "Language Terms", snapshot of 2026-07-01.
#[rustfmt::skip]
const LANGUAGES: &[(&str, u32)] = &[
    ("aa", 300_387_779), ("ab", 300_387_766), ("ae", 300_443_616), ("af", 300_387_782), ("ak", 300_387_794),
    ("am", 300_387_824), ("an", 300_387_855), ("ar", 300_387_843), ("as", 300_387_878), ("av", 300_387_895),
    ("ay", 300_387_901), ("az", 300_387_903), ("ba", 300_387_954), ("be", 300_387_967), ("bg", 300_388_034),
    ("bh", 300_443_807), ("bi", 300_387_999), ("bm", 300_387_937), ("bn", 300_387_971), ("bo", 300_389_410),
    ("br", 300_388_025), ("bs", 300_388_023), ("ca", 300_388_072), ("ce", 300_388_095), ("ch", 300_388_087),
    ("co", 300_388_180), ("cr", 300_388_182), ("cs", 300_388_191), ("cv", 300_388_162), ("cy", 300_389_555),
    ("da", 300_388_204), ("de", 300_388_344), ("dv", 300_388_791), ("dz", 300_388_260), ("ee", 300_388_287),
    ("el", 300_388_361), ("en", 300_388_277), ("eo", 300_388_282), ("es", 300_389_311), ("et", 300_388_283),
    ("eu", 300_387_955), ("fa", 300_389_087), ("ff", 300_388_310), ("fi", 300_388_299), ("fj", 300_388_298),
    ("fo", 300_388_293), ("fr", 300_388_306), ("fy", 300_388_308), ("ga", 300_388_467), ("gd", 300_388_323),
    ("gl", 300_388_327), ("gn", 300_388_369), ("gu", 300_388_371), ("gv", 300_388_324), ("ha", 300_388_399),
    ("he", 300_388_401), ("hi", 300_388_412), ("ho", 300_391_423), ("hr", 300_388_185), ("ht", 300_388_389),
    ("hu", 300_388_770), ("hy", 300_387_870), ("hz", 300_388_407), ("id", 300_388_460), ("ie", 300_443_817),
    ("ig", 300_388_453), ("ii", 300_443_897), ("ik", 300_443_818), ("io", 300_443_815), ("is", 300_388_449),
    ("it", 300_388_474), ("iu", 300_443_664), ("ja", 300_388_486), ("jv", 300_388_490), ("ka", 300_388_343),
    ("kg", 300_388_623), ("ki", 300_443_672), ("kj", 300_451_689), ("kk", 300_388_568), ("kl", 300_388_363),
    ("km", 300_388_591), ("kn", 300_388_538), ("ko", 300_388_633), ("kr", 300_388_542), ("ks", 300_388_558),
    ("ku", 300_388_656), ("kv", 300_443_820), ("kw", 300_388_179), ("ky", 300_388_668), ("la", 300_388_693),
    ("lb", 300_388_709), ("lg", 300_388_333), ("li", 300_443_822), ("ln", 300_388_719), ("lo", 300_388_688),
    ("lt", 300_388_723), ("lu", 300_443_690), ("lv", 300_388_696), ("mg", 300_388_783), ("mh", 300_388_831),
    ("mi", 300_388_818), ("mk", 300_388_760), ("ml", 300_388_787), ("mn", 300_388_900), ("mr", 300_388_821),
    ("ms", 300_388_786), ("mt", 300_388_796), ("my", 300_388_042), ("na", 300_388_951), ("nb", 300_391_418),
    ("nd", 300_443_703), ("ne", 300_443_704), ("ng", 300_388_958), ("nl", 300_388_256), ("nn", 300_388_992),
    ("no", 300_388_992), ("nr", 300_388_955), ("nv", 300_388_952), ("ny", 300_391_410), ("oc", 300_391_532),
    ("oj", 300_389_015), ("om", 300_389_033), ("or", 300_389_030), ("os", 300_443_712), ("pa", 300_389_057),
    ("pi", 300_404_714), ("pl", 300_389_109), ("ps", 300_389_070), ("pt", 300_389_115), ("qu", 300_389_128),
    ("rm", 300_389_162), ("rn", 300_389_166), ("ro", 300_389_157), ("ru", 300_389_168), ("rw", 300_389_172),
    ("sa", 300_389_205), ("sc", 300_389_214), ("sd", 300_389_278), ("se", 300_443_601), ("sg", 300_389_203),
    ("si", 300_389_279), ("sk", 300_389_290), ("sl", 300_389_291), ("sm", 300_389_198), ("sn", 300_389_263),
    ("so", 300_389_295), ("sq", 300_387_803), ("sr", 300_389_247), ("ss", 300_389_335), ("st", 300_389_308),
    ("su", 300_389_326), ("sv", 300_389_336), ("sw", 300_389_334), ("ta", 300_389_365), ("te", 300_389_389),
    ("tg", 300_389_350), ("th", 300_389_405), ("ti", 300_389_414), ("tk", 300_389_473), ("tl", 300_389_344),
    ("tn", 300_389_454), ("to", 300_389_432), ("tr", 300_389_470), ("ts", 300_389_452), ("tt", 300_389_381),
    ("tw", 300_443_904), ("ty", 300_389_346), ("ug", 300_389_509), ("uk", 300_389_489), ("ur", 300_389_502),
    ("uz", 300_389_510), ("ve", 300_389_522), ("vi", 300_389_525), ("vo", 300_443_757), ("wa", 300_389_541),
    ("wo", 300_389_568), ("xh", 300_389_577), ("yi", 300_389_602), ("yo", 300_389_608), ("za", 300_389_631),
    ("zh", 300_388_113), ("zu", 300_389_637),
];

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: `tests/checks/aat_terms.csv`, looked up; each number stands there as a process.
    #[test]
    fn the_process_of_a_technique_was_looked_up() {
        let looked_up = include_str!("../../../tests/checks/aat_terms.csv");
        let techniques = include_str!("../../../content/vocabulary/techniques.toml");
        for (technique, number) in PROCESSES {
            let is_process =
                |line: &str| line.starts_with("process,") && line.contains(&format!(",{number},"));
            assert!(looked_up.lines().any(is_process), "{technique}");
            assert!(
                techniques.contains(&format!("\n[{technique}]\n")),
                "{technique}"
            );
        }
    }

    /// What is looked up by bisection must be in order. The two numbers stand in the source of the table.
    #[test]
    fn languages_are_found_by_their_codes() {
        assert!(LANGUAGES.is_sorted_by_key(|(code, _)| *code));
        let number = |tag| language(tag).and_then(|node| node.id);
        let uk = number("uk").unwrap();
        assert_eq!(uk, "http://vocab.getty.edu/aat/300389489");
        assert_eq!(number("uk-Latn").unwrap(), uk);
        assert_eq!(number("qaa"), None);
    }
}
