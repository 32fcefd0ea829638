//! Terms in languages that the vocabularies have no labels in: French, Dutch, Japanese.
//!
//! Museums of these languages hand in their own words for techniques and papers. Each stands with the key of the built-in
//! vocabulary that it means; a catalogue whose vocabularies lack the key is not given it. Usual terms of the trade, from
//! memory; no source. A word that means several things ("gravure", "prent") is not here: it stays left over.

use crate::model::vocabulary::List;

/// The list, the key of a term, and its words.
pub(super) const TERMS: &[(List, &str, &str)] = &[
    (
        List::Techniques,
        "woodcut",
        "bois gravé|bois gravés|gravure sur bois|gravure sur bois de fil|bois de fil|houtsnede|houtsneden|木版画|木版",
    ),
    (
        List::Techniques,
        "colour-woodcut",
        "bois gravé en couleurs|bois en couleurs|gravure sur bois en couleurs|kleurenhoutsnede|kleurenhoutsneden|\
         houtsnede in kleuren|多色木版|多色木版画|多色摺木版|錦絵",
    ),
    (
        List::Techniques,
        "wood-engraving",
        "gravure sur bois debout|gravure sur bois de bout|bois debout|bois de bout|houtgravure|houtgravures|木口木版",
    ),
    (
        List::Techniques,
        "linocut",
        "linogravure|linogravures|gravure sur linoléum|linoléum gravé|linosnede|linosneden|linoleumsnede|リノカット",
    ),
    (
        List::Techniques,
        "etching",
        "eau-forte|eaux-fortes|ets|etsen|エッチング",
    ),
    (
        List::Techniques,
        "soft-ground-etching",
        "vernis mou|gravure au vernis mou|vernis-mou|weke grond|weekgrondets",
    ),
    (
        List::Techniques,
        "engraving",
        "burin|gravure au burin|burin sur cuivre|kopergravure|kopergravures|エングレーヴィング",
    ),
    (
        List::Techniques,
        "drypoint",
        "pointe sèche|pointe-sèche|pointes sèches|droge naald|drogenaald|drogenaaldets|ドライポイント",
    ),
    (
        List::Techniques,
        "aquatint",
        "aquatinte|aquatintes|アクアチント",
    ),
    (
        List::Techniques,
        "mezzotint",
        "manière noire|mezzotinte|zwartekunst|zwarte kunst|メゾチント",
    ),
    (
        List::Techniques,
        "photogravure",
        "héliogravure|héliogravures|heliogravure|フォトグラヴュール",
    ),
    (
        List::Techniques,
        "lithograph",
        "lithographies|lithographie|lithografie|litho|steendruk|steendrukken|リトグラフ|石版画|石版",
    ),
    (
        List::Techniques,
        "colour-lithograph",
        "lithographie en couleurs|chromolithographie|kleurenlithografie|kleurenlitho|多色石版",
    ),
    (
        List::Techniques,
        "screenprint",
        "sérigraphie|sérigraphies|zeefdruk|zeefdrukken|シルクスクリーン",
    ),
    (
        List::Techniques,
        "stencil",
        "pochoir|pochoirs|sjabloondruk|合羽摺|型紙",
    ),
    (
        List::Techniques,
        "monotype",
        "monotypes|monotypie|monotypieën|モノタイプ",
    ),
    (
        List::Techniques,
        "photomechanical",
        "reproduction photomécanique|procédé photomécanique|fotomechanische reproductie|fotomechanisch",
    ),
    (
        List::Techniques,
        "hand-colouring",
        "colorié|coloriée|coloriée à la main|colorié à la main|rehauts de couleur|ingekleurd|met de hand gekleurd|\
         koloriert|handkoloriert|altkoloriert|手彩色",
    ),
    (
        List::Techniques,
        "chine-colle",
        "chine collé|chine appliqué|chine-collé",
    ),
    (
        List::Papers,
        "laid-paper",
        "vergé|papier vergé|vergé ancien|geribd papier|vergé papier",
    ),
    (
        List::Papers,
        "wove-paper",
        "vélin|papier vélin|velijn|velijnpapier|velin|wit velijn",
    ),
    (
        List::Papers,
        "japan-paper",
        "papier japon|japon|papier du japon|japans papier|和紙",
    ),
    (
        List::Papers,
        "simili-japan",
        "simili-japon|simili japon|papier simili-japon",
    ),
    (
        List::Papers,
        "china-paper",
        "papier de chine|papier chine|chine|chinees papier|唐紙",
    ),
    (
        List::Papers,
        "handmade-paper",
        "papier à la cuve|papier à la forme|papier fait main|geschept papier|handgeschept papier|手漉き紙|手漉紙",
    ),
    (List::Papers, "hosho-paper", "奉書|奉書紙"),
    (List::Papers, "mulberry-paper", "楮紙|papier de mûrier"),
    (List::Papers, "gampi-paper", "雁皮紙|雁皮"),
    (List::Papers, "torinoko-paper", "鳥の子紙|鳥の子"),
    (
        List::Papers,
        "newsprint",
        "papier journal|krantenpapier|新聞紙",
    ),
    (
        List::Papers,
        "tissue-paper",
        "papier pelure|papier de soie|pelure|zijdepapier|vloeipapier",
    ),
];

#[cfg(test)]
mod tests {
    use super::super::media;
    use super::*;
    use crate::exchange::intake::reading::Lexicon;
    use crate::model::key::Key;

    #[test]
    fn every_key_is_one_of_the_built_in_vocabularies() {
        let vocabularies = crate::read::built_in_terms();
        for (list, key, _) in TERMS {
            let known = vocabularies
                .terms(*list)
                .any(|(known, _)| known.as_str() == *key);
            assert!(known, "{key}");
        }
    }

    #[test]
    fn cells_in_french_and_dutch_are_read() {
        let lexicon = Lexicon::of(&crate::read::built_in_terms());
        for (cell, techniques, papers) in [
            (
                "Bois gravé en couleurs sur papier japon",
                "colour-woodcut",
                "japan-paper",
            ),
            (
                "Eau-forte et aquatinte sur vergé",
                "etching aquatint",
                "laid-paper",
            ),
            ("Linogravure sur papier pelure", "linocut", "tissue-paper"),
            ("Pointe sèche sur vélin", "drypoint", "wove-paper"),
            (
                "Kleurenhoutsnede op Japans papier",
                "colour-woodcut",
                "japan-paper",
            ),
            ("Droge naald en ets", "drypoint etching", ""),
        ] {
            let read = media::medium(cell, &lexicon).is;
            let joined = |keys: &[Key]| keys.iter().map(Key::as_str).collect::<Vec<_>>().join(" ");
            assert_eq!(joined(&read.techniques), techniques, "{cell}");
            assert_eq!(joined(&read.papers), papers, "{cell}");
        }
    }
}
