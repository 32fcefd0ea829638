//! Headings in English, German, French, Dutch and Japanese.

use std::sync::LazyLock;

use super::holds::Holds;
use crate::exchange::intake::reading::phrases::Phrases;
use crate::exchange::intake::reading::words::Words;

/// How a heading says what its column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Said {
    /// It is a word for it.
    Whole(Holds),
    /// It has a word for it among others.
    Part(Holds),
}

/// What a heading says; `None` where it says nothing that is known.
pub(super) fn said(heading: &str) -> Option<Said> {
    // "Höhe (cm)": what stands in brackets is a unit or a remark.
    let head = heading.split(['(', '[']).next().unwrap_or_default();
    let spelt_out = spelt_out(head);
    let words = Words::of(&spelt_out);
    let mut part = None;
    for at in 0..words.len() {
        if let Some(found) = HEADINGS.inflected_at(&words, at) {
            let is_whole = at == 0 && only_small_words(&words, found.end);
            if is_whole {
                return Some(Said::Whole(found.is));
            }
            part = part.or(Some(Said::Part(found.is)));
        }
    }
    part
}

/// Whether nothing but marks, units and small words follows: `Height in cm`.
pub(super) fn only_small_words(words: &Words<'_>, start: usize) -> bool {
    const SMALL: [&str; 12] = [
        "in", "en", "cm", "mm", "inches", "inch", "zoll", "text", "display", "1", "h", "w",
    ];
    (start..words.len()).all(|at| words.word(at).is_none_or(|word| SMALL.contains(&word)))
}

/// `accession_number`, `accessionNumber`: cut into words.
fn spelt_out(heading: &str) -> String {
    let mut text = String::new();
    let mut is_after_small = false;
    for sign in heading.chars() {
        if sign.is_uppercase() && is_after_small {
            text.push(' ');
        }
        is_after_small = sign.is_lowercase();
        text.push(if sign == '_' { ' ' } else { sign });
    }
    text
}

static HEADINGS: LazyLock<Phrases<Holds>> = LazyLock::new(|| {
    Phrases::of(&[
        (
            Holds::Accession,
            "accession|accession number|accession no.|acc. no.|accession nr.|inventory|inventory number|inventory no.|\
             inv. no.|inv. nr.|inv.|object number|object no.|museum number|reg. no.|registration number|shelfmark|\
             inventarnummer|inventarnr.|inventar-nr.|inv.-nr.|invnr.|objektnummer|signatur nr.|identifikationsnummer|\
             numéro d'inventaire|n° d'inventaire|n° inv.|no inv.|inventaire|numéro d'objet|cote|\
             inventarisnummer|inventarisnr.|objectnummer|所蔵番号|作品番号|登録番号|資料番号|収蔵番号",
        ),
        (
            Holds::FormerAccession,
            "former accession|former number|old number|previous number|alte inventarnummer|frühere nummer|alte nr.|\
             ancien numéro|ancien n°|oud nummer|oud inventarisnummer|旧番号|旧所蔵番号",
        ),
        (
            Holds::Title,
            "title|title of work|object name|titel|werktitel|bezeichnung|objekttitel|titre|intitulé|titel van het werk|\
             題名|作品名|画題|タイトル|名称",
        ),
        (
            Holds::Maker,
            "artist|artists|maker|makers|creator|printmaker|author|people|name|artist name|künstler|künstlerin|urheber|\
             hersteller|beteiligte|artiste|auteur|créateur|graveur|kunstenaar|vervaardiger|maker naam|\
             作者|作者名|作家|作家名|絵師|彫師|摺師|版元|engraver|stecher|printer|drucker|imprimeur|publisher|verleger|\
             éditeur|uitgever",
        ),
        (
            Holds::Date,
            "date|dates|dated|date text|date display|year|year made|production date|creation date|date of work|\
             print date|datum|datierung|jahr|entstehungsjahr|entstehungszeit|druckjahr|année|datation|millésime|\
             date de création|date d'exécution|jaar|datering|vervaardigingsdatum|制作年|年代|制作年代|年|制作時期",
        ),
        (
            Holds::Medium,
            "medium|media|technique|techniques|materials|material|materials and techniques|process|support and medium|\
             technik|techniken|material und technik|material/technik|druckverfahren|matériaux|matière|procédé|\
             matériaux et techniques|techniek|materiaal|materiaal en techniek|技法|材質|素材|材質技法|技法材質",
        ),
        (
            Holds::Paper,
            "paper|support|papier|papierart|bildträger|type de papier|papiersoort|用紙|料紙|支持体",
        ),
        (
            Holds::Watermark,
            "watermark|watermarks|wasserzeichen|filigrane|watermerk|透かし",
        ),
        (
            Holds::Dimensions,
            "dimensions|dimension|size|sizes|measurements|measurement|image size|sheet size|plate size|plate mark|\
             sheet|image|platemark|masse|maße|abmessungen|grösse|größe|blattgrösse|blattgröße|blattmass|blattmaß|\
             plattengrösse|plattengröße|plattenmass|plattenmaß|bildmass|bildmaß|format|formate|dimensions de la feuille|\
             mesures|taille|feuille|cuvette|afmetingen|formaat|maten|bladmaat|plaatmaat|寸法|サイズ|大きさ|紙寸|画寸|版寸|\
             darstellung|blatt|plattenrand",
        ),
        (Holds::Height, "height|h|höhe|hoehe|hauteur|hoogte|縦|高さ"),
        (Holds::Width, "width|w|breite|largeur|breedte|横|幅"),
        (Holds::Depth, "depth|tiefe|profondeur|diepte|奥行"),
        (
            Holds::Unit,
            "unit|units|einheit|masseinheit|maßeinheit|unité|eenheid|単位",
        ),
        (
            Holds::Credit,
            "credit|credit line|creditline|acquisition|acquisition method|acquired|acquisition credit|method of acquisition|\
             creditzeile|erwerb|erwerbung|erwerbungsart|zugang|zugangsart|mention de crédit|mode d'acquisition|\
             verwerving|wijze van verwerving|クレジット|受入方法|収蔵方法|取得方法|herkunftsvermerk",
        ),
        (Holds::Acquisition, "how acquired|wie erworben"),
        (
            Holds::Inscription,
            "inscription|inscriptions|lettering|inscribed|beschriftung|bezeichnet|aufschrift|inschrift|beschriftungen|\
             inscription manuscrite|lettre|opschrift|opschriften|inscriptie|銘|書き込み|銘文|題識",
        ),
        (
            Holds::Signature,
            "signature|signed|signature and date|signatur|signiert|signé|signature de l'artiste|handtekening|gesigneerd|\
             署名|サイン|落款",
        ),
        (
            Holds::State,
            "state|states|zustand nr.|zustandsnummer|druckzustand|état|état du tirage|staat|ステート",
        ),
        (
            Holds::Design,
            "design|number in this catalogue|design in this catalogue|nummer in diesem verzeichnis",
        ),
        (
            Holds::OwnState,
            "state in this catalogue|zustand in diesem verzeichnis",
        ),
        (
            Holds::Impression,
            "impression in this catalogue|abzug in diesem verzeichnis",
        ),
        (
            Holds::Printing,
            "printing|printing in this catalogue|druck in diesem verzeichnis",
        ),
        (
            Holds::Kind,
            "kind|kind of impression|type of impression|art des abzugs|art des abdrucks|abzugsart|type d'épreuve|soort afdruk",
        ),
        (
            Holds::Seen,
            "seen|seen on|date seen|gesehen|gesehen am|vu le|gezien op",
        ),
        (
            Holds::SeenBy,
            "seen by|reported by|gesehen von|gemeldet von|vu par|gezien door",
        ),
        (Holds::Basis, "how seen|seen how|wie gesehen|basis"),
        (
            Holds::Numbering,
            "edition|edition number|edition size|number in edition|numbering|numbered|auflage|auflagenhöhe|nummerierung|\
             exemplar|exemplarnummer|tirage|numérotation|justification|oplage|nummering|oplagenummer|限定番号|エディション|部数|\
             nummer in der auflage",
        ),
        (
            Holds::CatalogueNumber,
            "catalogue number|catalogue no.|cat. no.|catalogue raisonné|cat. rais.|catalogue raisonné number|reference|\
             ref.|werkverzeichnis|wvz|wv-nr.|wvz-nr.|wv|werkverzeichnisnummer|oeuvreverzeichnis|catalogue|n° de catalogue|\
             oeuvrecatalogus|catalogusnummer|カタログ番号|目録番号",
        ),
        (
            Holds::Provenance,
            "provenance|previous owner|former owner|ownership history|provenienz|herkunft|vorbesitzer|vorbesitz|\
             ancien propriétaire|anciennes collections|herkomst|vorige eigenaar|来歴|旧蔵|旧蔵者|伝来",
        ),
        (
            Holds::Marks,
            "marks|mark|stamp|stamps|collector's mark|collectors mark|collector's marks|seal|seals|sammlerstempel|stempel|\
             sammlermarke|marque|marques|marque de collection|cachet|cachets|verzamelaarsmerk|merk|merken|印|印章|蔵書印|\
             stamps and collectors' marks|stempel und sammlermarken",
        ),
        (
            Holds::Condition,
            "condition|condition report|state of preservation|erhaltung|erhaltungszustand|zustand|état de conservation|\
             conservation|conditie|toestand|状態|保存状態|コンディション",
        ),
        (
            Holds::Photograph,
            "image file|image filename|filename|file name|file|photograph|photo|image name|picture|dateiname|bilddatei|\
             foto|abbildung|fotodatei|fichier|nom de fichier|photographie|fichier image|bestand|bestandsnaam|afbeelding|\
             画像|画像ファイル|ファイル名|写真|fotografie",
        ),
        (
            Holds::Web,
            "url|uri|web|link|web page|website|permalink|web address|online|webadresse|internetadresse|lien|adresse web|\
             page web|webpagina|ウェブ|webseite",
        ),
        (
            Holds::Id,
            "id|object id|record id|system id|uuid|identifier|datensatz-nr.|datensatz|objekt-id|identifiant|ID番号",
        ),
        (
            Holds::Department,
            "department|collection|abteilung|sammlung|bereich|département|fonds|afdeling|collectie|部門|分類",
        ),
        (
            Holds::Holder,
            "holder|museum|institution|repository|owner|current location|museum name|haus|standort|besitzer|\
             musée|lieu de conservation|propriétaire|instelling|bewaarplaats|eigenaar|所蔵|所蔵館|所蔵者",
        ),
        (
            Holds::Series,
            "series|portfolio|set|album|part of|serie|folge|mappe|mappenwerk|zyklus|série|suite|recueil|reeks|map|\
             シリーズ|連作|揃物|画帖",
        ),
        (
            Holds::Literature,
            "literature|bibliography|references|published|literatur|bibliographie|littérature|literatuur|文献|参考文献",
        ),
        (
            Holds::Exhibition,
            "exhibition|exhibitions|exhibition history|ausstellung|ausstellungen|exposition|expositions|tentoonstelling|tentoonstellingen|展覧会",
        ),
        (
            Holds::Rights,
            "rights|copyright|licence|license|image rights|rechte|bildrechte|lizenz|droits|rechten|licentie|権利|著作権|\
             rights in the photograph|rechte an der fotografie",
        ),
        (
            Holds::Publish,
            "may the photograph be shown|darf die fotografie gezeigt werden",
        ),
        (Holds::Status, "whereabouts|verbleib"),
        (
            Holds::Remarks,
            "remarks|remark|notes|note|comments|comment|description|bemerkung|bemerkungen|anmerkung|anmerkungen|kommentar|\
             beschreibung|notiz|remarque|remarques|observations|commentaire|description|opmerking|opmerkingen|notities|\
             beschrijving|備考|注記|解説|メモ",
        ),
    ])
});

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headings_in_five_languages_are_known() {
        for (heading, holds) in [
            ("Accession number", Holds::Accession),
            ("accessionNumber", Holds::Accession),
            ("accession_number", Holds::Accession),
            ("Inv.-Nr.", Holds::Accession),
            ("N° d'inventaire", Holds::Accession),
            ("Inventarisnummer", Holds::Accession),
            ("所蔵番号", Holds::Accession),
            ("Titel", Holds::Title),
            ("Titre", Holds::Title),
            ("題名", Holds::Title),
            ("Künstler", Holds::Maker),
            ("Datierung", Holds::Date),
            ("制作年", Holds::Date),
            ("dateText", Holds::Date),
            ("Technik", Holds::Medium),
            ("Material/Technik", Holds::Medium),
            ("Maße", Holds::Dimensions),
            ("Afmetingen", Holds::Dimensions),
            ("Höhe (cm)", Holds::Height),
            ("Height in cm", Holds::Height),
            ("Breite", Holds::Width),
            ("Credit Line", Holds::Credit),
            ("Erhaltungszustand", Holds::Condition),
            ("Zustand", Holds::Condition),
            ("State", Holds::State),
            ("État", Holds::State),
            ("WVZ-Nr.", Holds::CatalogueNumber),
            ("Dateiname", Holds::Photograph),
            ("URL", Holds::Web),
        ] {
            assert_eq!(said(heading), Some(Said::Whole(holds)), "{heading}");
        }
        assert_eq!(said("Artist date of birth"), Some(Said::Part(Holds::Maker)));
        assert_eq!(said("xyz"), None);
        assert_eq!(said(""), None);
    }
}
