//! Pictures that say nothing of their own (docs/definitions.md): defaults of holders and of the catalogue, and what no
//! default reaches.

use keyblock::model::key::PictureKey;

use crate::small::{lay_down, studied_for_readers};

/// The settings that every literal needs, with a default of the catalogue.
fn catalogue(pictures: &str) -> String {
    format!(
        "-- catalogue.toml\ntitle = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\nlanguage = \"en\"\n\
         address = \"https://prints.example.org\"\nlicence = \"CC-BY-4.0\"\n[pictures]\n{pictures}\n"
    )
}

/// A museum and a private owner with these further keys, and one sheet with these keys and a picture with those.
fn sheet(museum: &str, owner: &str, sheet: &str, picture: &str) -> String {
    format!(
        "-- records/holders/museum.toml\nname = \"Harbour Museum\"\nkind = \"museum\"\n{museum}\n\
         -- records/holders/owner-a.toml\nname = \"Ottilie Quorn\"\nkind = \"private\"\n{owner}\n\
         -- records/designs/1/pictures/1.jpg\nNot opened by these tests.\n\
         -- records/designs/1/design.toml\ntitles = [{{ text = \"The Ferry\" }}]\n\
         -- records/designs/1/impressions/1.toml\nstatus = \"located\"\n{sheet}\n\
         [[pictures]]\nfile = \"pictures/1.jpg\"\n{picture}\n"
    )
}

/// The rights and the credit line of the picture as readers see them; `None` where it is not published.
fn shown(catalogue: &str, sheet: &str) -> Option<(String, Option<String>)> {
    let (public, _) = studied_for_readers(&[catalogue, sheet]);
    let key: PictureKey = "1.1/recto".parse().unwrap();
    let picture = public.picture(&key)?;
    Some((picture.rights_text().to_owned(), picture.credit.clone()))
}

/// The findings of reading.
fn told(catalogue: &str, sheet: &str) -> Vec<String> {
    let folder = lay_down(&[catalogue, sheet]);
    let reading = keyblock::read::read(folder.path());
    let findings = reading.findings.into_iter();
    findings
        .map(|f| format!("{}: {}", f.message, f.help.unwrap_or_default()))
        .collect()
}

const MUSEUM: &str = "pictures = { rights = \"CC0-1.0\", credit = \"The museum\" }";
const AT_MUSEUM: &str = "holder = \"museum\"";

fn stated(rights: &str, credit: &str) -> (String, Option<String>) {
    let credit = Some(credit.to_owned()).filter(|credit| !credit.is_empty());
    (rights.to_owned(), credit)
}

#[test]
fn a_picture_takes_what_it_does_not_say_from_its_holder_then_from_the_catalogue() {
    let whole = catalogue("rights = \"CC-BY-4.0\"\ncredit = \"The census\"");
    let of =
        |museum: &str, keys: &str, picture: &str| shown(&whole, &sheet(museum, "", keys, picture));
    assert_eq!(
        of(MUSEUM, AT_MUSEUM, "rights = \"own\""),
        Some(stated("own", "The museum"))
    );
    assert_eq!(
        of(MUSEUM, AT_MUSEUM, ""),
        Some(stated("CC0-1.0", "The museum"))
    );
    // Each of the keys by itself.
    let rights_alone = "pictures = { rights = \"CC0-1.0\" }";
    assert_eq!(
        of(rights_alone, AT_MUSEUM, ""),
        Some(stated("CC0-1.0", "The census"))
    );
    assert_eq!(
        of("", AT_MUSEUM, ""),
        Some(stated("CC-BY-4.0", "The census"))
    );
    assert_eq!(of(MUSEUM, "", ""), Some(stated("CC-BY-4.0", "The census")));
}

#[test]
fn publishing_is_refused_by_default_until_a_nearer_record_allows_it() {
    let refused = catalogue("rights = \"CC0-1.0\"\npublish = false");
    let of = |museum: &str, picture: &str| shown(&refused, &sheet(museum, "", AT_MUSEUM, picture));
    assert_eq!(of("", ""), None);
    assert_eq!(of("", "publish = true"), Some(stated("CC0-1.0", "")));
    assert_eq!(
        of("pictures = { publish = true }", ""),
        Some(stated("CC0-1.0", ""))
    );
    assert_eq!(of("pictures = { publish = true }", "publish = false"), None);
}

#[test]
fn no_default_of_others_makes_a_private_owners_picture_public() {
    let whole = catalogue("rights = \"CC0-1.0\"");
    let lent = "holder = \"museum\"\nowner = \"owner-a\"";
    let last = "provenance = [{ owner = \"owner-a\" }]";
    let joint = "holder = \"museum\"\nowner = [\"museum\", \"owner-a\"]";
    let unnamed = "holder = \"museum\"\nowner = { name = \"A family\", private = [\"name\"] }";
    let kept_back = "holder = \"museum\"\nprivate = [\"holder\"]";
    for keys in [
        "holder = \"owner-a\"",
        lent,
        last,
        joint,
        unnamed,
        kept_back,
    ] {
        let told = told(&whole, &sheet(MUSEUM, "", keys, ""));
        assert!(
            told[0].starts_with("a picture needs `rights`"),
            "{keys}: {told:?}"
        );
        assert!(told[0].contains("private hands"), "{keys}: {told:?}");
        // With rights of its own it is published, as it was before there were defaults …
        let own = "rights = \"By permission\"";
        assert_eq!(
            shown(&whole, &sheet("", "", keys, own)),
            Some(stated("By permission", "")),
            "{keys}"
        );
        // … unless somebody refuses: the catalogue, or the museum that keeps it. Nobody else's leave lifts that.
        let refused = catalogue("publish = false");
        let allowing = "pictures = { publish = true }";
        assert_eq!(
            shown(&refused, &sheet(allowing, "", keys, own)),
            None,
            "{keys}"
        );
    }
    let refusing = "pictures = { publish = false }";
    assert_eq!(
        shown(
            &whole,
            &sheet(refusing, "", lent, "rights = \"By permission\"")
        ),
        None
    );
}

#[test]
fn a_private_owners_own_defaults_need_a_standing_consent() {
    let refused = catalogue("publish = false");
    let own = "pictures = { rights = \"By permission\", publish = true }";
    let with = |consent: &str| {
        let owner = format!("{own}\n{consent}");
        sheet("", &owner, "holder = \"owner-a\"", "")
    };
    let standing = "consent = { date = \"2024\", covers = [\"pictures\"] }";
    assert_eq!(
        shown(&refused, &with(standing)),
        Some(stated("By permission", ""))
    );
    for consent in [
        "",
        "consent = { date = \"2024\", covers = [\"name\"] }",
        "consent = { date = \"2024\", covers = [\"pictures\"], withdrawn = \"2025\" }",
    ] {
        let told = told(&refused, &with(consent));
        assert!(
            told[0].starts_with("a picture needs `rights`"),
            "{consent}: {told:?}"
        );
    }
}

#[test]
fn the_finding_names_both_places_where_a_default_can_stand() {
    let none = catalogue("quality = 80");
    let told = told(&none, &sheet("", "", AT_MUSEUM, ""));
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(
        told[0].contains("records/holders/museum.toml") && told[0].contains("catalogue.toml"),
        "{told:?}"
    );
}

#[test]
fn a_document_takes_the_default_of_its_holder_and_a_design_that_of_the_catalogue() {
    let whole = catalogue("rights = \"CC-BY-4.0\"");
    let records = format!(
        "{}\n-- records/documents/pictures/1.jpg\nNot opened by these tests.\n\
         -- records/documents/ledger.toml\nkind = \"ledger\"\nholder = \"museum\"\npictures = [{{ file = \"pictures/1.jpg\", name = \"leaf\" }}]\n\
         -- records/documents/letter.toml\nkind = \"letter\"\nholder = \"owner-a\"\npictures = [{{ file = \"pictures/1.jpg\", rights = \"own\" }}]\n\
         -- records/designs/1/design.toml\ntitles = [{{ text = \"The Ferry\" }}]\npictures = [{{ file = \"pictures/1.jpg\", name = \"drawing\" }}]\n",
        sheet(MUSEUM, "", AT_MUSEUM, "")
    );
    let (public, _) = studied_for_readers(&[&whole, &records]);
    let rights = |key: &str| {
        let key: PictureKey = key.parse().unwrap();
        public
            .picture(&key)
            .map(|picture| picture.rights_text().to_owned())
    };
    assert_eq!(rights("document/ledger/leaf").as_deref(), Some("CC0-1.0"));
    assert_eq!(rights("1/drawing").as_deref(), Some("CC-BY-4.0"));
    assert_eq!(rights("document/letter/recto").as_deref(), Some("own"));
}

/// Rights that only a private field states are not known to readers, so the picture is not shown.
#[test]
fn a_picture_whose_rights_are_private_is_not_published() {
    let none = catalogue("quality = 80");
    let private = "pictures = { rights = \"By permission\", private = [\"rights\"] }";
    assert_eq!(shown(&none, &sheet(private, "", AT_MUSEUM, "")), None);
}

#[test]
fn the_credit_line_of_a_holder_without_a_name_is_not_taken() {
    let none = catalogue("quality = 80");
    let owner = "pictures = { rights = \"By permission\", credit = \"Collection of somebody\" }\n\
                 consent = { date = \"2024\", covers = [\"pictures\"] }";
    let of = sheet("", owner, "holder = \"owner-a\"", "");
    assert_eq!(shown(&none, &of), Some(stated("By permission", "")));
}
