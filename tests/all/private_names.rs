//! Attempts to publish a private name: in every form, in every place of a catalogue, none passes.
//!
//! Each attempt is a catalogue with the private owner Querlin Zabeldorn of Farholm. It is judged, and pulled where the
//! audit finds nothing.

use keyblock::model::codes::Code;
use keyblock::model::finding::Severity;
use keyblock::press::{PictureWork, judge};

use crate::program::{bytes_below, compile, keyblock, text};
use crate::small::lay_down;

const OWNER: &str = r#"
-- records/holders/owner-a.toml
name = "Mrs Querlin Zabeldorn"
kind = "private"
place = "Farholm"
-- records/designs/1/design.toml
titles = [{ text = "The Ferry" }]
points = [{ key = "moon", ask = "A moon?", kind = "presence", rests_on = "matrix" }]
states = [{ key = "dark" }]
-- records/designs/1/impressions/1.toml
status = "located"
holder = "owner-a"
"#;

/// What came of an attempt.
#[derive(Debug, PartialEq)]
enum Outcome {
    /// An error, with path and line.
    Refused(String),
    /// Doubts about a part of the name.
    Doubted(Vec<String>),
    /// Nothing was found, and the site was made.
    Published,
}

fn attempt(files: &str) -> Outcome {
    let folder = lay_down(&[OWNER, files]);
    let judged = judge(folder.path(), &PictureWork::ReadOnly(&|_, _| {}));
    let mut found: Vec<(Code, String)> = Vec::new();
    let mut note = |findings: &[keyblock::model::finding::Finding],
                    sources: &keyblock::model::place::Sources| {
        found = findings
            .iter()
            .map(|finding| {
                let place = finding.at.place;
                let line = sources.position(place).line;
                (finding.code, format!("{}:{line}", sources.path(place.file)))
            })
            .collect();
    };
    if judged.tally().errors > 0 {
        note(&judged.findings, &judged.catalogue.sources);
    } else {
        match judged.pull_site(&|_, _| {}) {
            Ok((pulled, _)) => note(&pulled.report.findings, &pulled.report.sources),
            Err(not_pulled) => note(&not_pulled.report.findings, &not_pulled.report.sources),
        }
    }
    let errors: Vec<&(Code, String)> = found
        .iter()
        .filter(|(c, _)| c.severity() == Severity::Error)
        .collect();
    if let Some((_, at)) = errors
        .iter()
        .find(|(code, _)| *code == Code::PrivateNamePublished)
    {
        return Outcome::Refused(at.clone());
    }
    assert!(errors.is_empty(), "another error: {errors:?}\n{files}");
    let doubts = found
        .into_iter()
        .filter(|(code, _)| *code == Code::PrivateNamePart);
    let doubts: Vec<String> = doubts.map(|(_, at)| at).collect();
    if doubts.is_empty() {
        Outcome::Published
    } else {
        Outcome::Doubted(doubts)
    }
}

/// A page of the catalogue's own with this text.
fn page(text: &str) -> String {
    format!("-- records/pages/thanks.md\n# Thanks\n\n{text}\n")
}

#[test]
fn a_private_name_does_not_pass_in_any_form() {
    let forms = [
        "Querlin Zabeldorn",
        "QUERLIN ZABELDORN",
        "Querlin&nbsp;Zabeldorn",
        "&#81;uerlin Zabeldorn",
        "&#x51;uerlin &#90;abeldorn",
        "Querlin <b>Zabeldorn</b>",
        "Quer<b>lin</b> Zabeldorn",
        "Quer**lin** Zabeldorn",
        "[Querlin](https://example.org) Zabeldorn",
        "Quer[lin Zabel](design:1)dorn",
        "Quer&shy;lin Zabeldorn",
        "Quer\u{ad}lin Zabeldorn",
        "Quer<!-- -->lin Zabeldorn",
        "Quer\u{200b}lin\u{2060} Zabel\u{200d}dorn",
        "Quer\u{202a}lin\u{202c} Zabeldorn",
        "Quer\\lin Zabeldorn",
        "Querlin-Zabeldorn",
        "Querlin\u{2011}Zabeldorn",
        "Zabeldorn, Querlin",
        "Zabeldorn, Mrs. Querlin",
        "Zabeldorn (Querlin)",
        "Zabeldorn, Q.",
        "Q. Zabeldorn",
        "Q Zabeldorn",
        "Graf Querlin von Zabeldorn",
        "QuerlinZabeldorn",
        "querlin.zabeldorn@example.org",
        "\u{ff31}uerlin Zabeldorn",
        "Quérlin Zabeldorn",
        "<https://example.org/querlin_zabeldorn>",
        "[letters](https://example.org/%51uerlin/Zabeldorn)",
        "![Querlin Zabeldorn](picture:1.1/recto)",
    ];
    for form in forms {
        let outcome = attempt(&page(&format!("We thank {form} for the loan.")));
        assert_eq!(
            outcome,
            Outcome::Refused("records/pages/thanks.md:3".to_owned()),
            "{form}"
        );
    }
}

#[test]
fn a_private_name_does_not_pass_in_any_place() {
    let places = [
        (
            "-- records/pages/querlin-zabeldorn.md\n# Letters\n\nText.\n",
            "records/pages/querlin-zabeldorn.md:1",
        ),
        (
            "-- records/people/zabeldorn-querlin.toml\nname = \"Somebody\"\n",
            "records/people/zabeldorn-querlin.toml:1",
        ),
        (
            "-- records/holders/q-zabeldorn.toml\nname = \"Somebody\"\nkind = \"trade\"\n",
            "records/holders/q-zabeldorn.toml:1",
        ),
        (
            "-- records/exhibitions.toml\n[querlin-zabeldorn]\ntitle = \"A show\"\n",
            "records/exhibitions.toml:1",
        ),
        (
            "-- records/literature.bib\n@book{zabeldorn-querlin, title = {A List}, author = {Anonymous}, year = {1961}}\n",
            "records/literature.bib:1",
        ),
        (
            "-- records/literature.bib\n@book{list, title = {A List}, author = {Zabeldorn, Querlin}, year = {1961}}\n",
            "records/literature.bib:1",
        ),
        (
            "-- records/vocabulary/techniques.toml\n[querlin-zabeldorn]\nlabel = \"a way\"\n",
            "records/vocabulary/techniques.toml:1",
        ),
        (
            "-- records/designs/2/design.toml\ntitles = [{ text = \"The Quay\" }]\nstates = [{ key = \"querlin-zabeldorn\" }]\n",
            "records/designs/2/design.toml:2",
        ),
        (
            "-- records/designs/2/design.toml\ntitles = [{ text = \"The Quay\" }]\npoints = [{ key = \"moon\", ask = \"A moon?\", kind = \"choice\", values = { zabeldorn-querlin = \"one\", b = \"other\" }, rests_on = \"matrix\" }]\n",
            "records/designs/2/design.toml:2",
        ),
        (
            "-- records/designs/2/design.toml\ntitles = [{ text = \"The Quay\" }]\nseries = { name = \"A set\", position = \"Querlin Zabeldorn's\" }\n",
            "records/designs/2/design.toml:2",
        ),
        (
            "-- records/designs/2/design.toml\ntitles = [{ text = \"The Quay\" }]\npoints = [{ key = \"width\", ask = \"How wide?\", kind = \"measure\", unit = \"Querlin-Zabeldorn inches\", tolerance = 1.0, rests_on = \"matrix\" }]\n",
            "records/designs/2/design.toml:2",
        ),
        (
            "-- records/people/somebody.toml\nname = \"Somebody\"\nauthority = [\"https://example.org/querlin-zabeldorn\"]\n",
            "records/people/somebody.toml:2",
        ),
    ];
    for (files, at) in places {
        assert_eq!(attempt(files), Outcome::Refused(at.to_owned()), "{files}");
    }
}

/// Words that no record has: the audit cannot find them, the search of what is written does.
#[test]
fn a_private_name_in_the_words_of_a_theme_is_not_published() {
    let theme = "-- catalogue.toml\ntitle = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\nlanguage = \"en\"\n\
                 address = \"https://prints.example.org\"\ntheme = \"own\"\n\
                 -- themes/own/words/en.ftl\nprivate-owner = Mrs Q. Zabeldorn\nsection-holders = Querlin Zabeldorn's sheets\n";
    assert!(matches!(attempt(theme), Outcome::Refused(_)));
    let style = theme
        .replace("-- themes/own/words/en.ftl", "-- themes/own/assets/own.css")
        .replace(
            "private-owner = Mrs Q. Zabeldorn\nsection-holders = Querlin Zabeldorn's sheets",
            "/* for Querlin Zabeldorn */",
        );
    assert!(matches!(attempt(&style), Outcome::Refused(_)));
}

/// No page has these words, only `search/index.json`.
#[test]
fn a_private_name_in_the_index_of_the_search_alone_is_not_published() {
    let theme = |words: &str| {
        let settings = "-- catalogue.toml\ntitle = \"The Prints\"\nsiglum = \"TP\"\nartist = \"artist\"\nlanguage = \"en\"\n\
                        address = \"https://prints.example.org\"\ntheme = \"own\"\n";
        format!("{settings}-- themes/own/words/en.ftl\nsearch-first = {words} {{ $n }}\n")
    };
    assert_eq!(attempt(&theme("The first")), Outcome::Published);
    let told = attempt(&theme("Querlin Zabeldorn's first"));
    assert!(matches!(told, Outcome::Refused(_)), "{told:?}");
}

/// Two records that each tell half of it: only the page has the whole.
#[test]
fn a_private_name_that_comes_together_on_a_page_is_not_published() {
    let files = "-- records/designs/2/design.toml\ntitles = [{ text = \"Querlin\" }]\nseries = { name = \"Zabeldorn\", position = \"1\" }\n";
    let outcome = attempt(files);
    assert!(!matches!(outcome, Outcome::Published), "{outcome:?}");
}

#[test]
fn a_surname_or_place_alone_is_a_doubt_and_in_the_owners_own_key_an_error() {
    let doubted = |at: &str| Outcome::Doubted(vec![at.to_owned()]);
    assert_eq!(
        attempt(&page("A cousin of Zabeldorn.")),
        doubted("records/pages/thanks.md:3")
    );
    assert_eq!(
        attempt(&page("Seen at Farholm.")),
        doubted("records/pages/thanks.md:3")
    );
    assert_eq!(
        attempt("-- records/pages/querlin-letters.md\n# Letters\n\nText.\n"),
        doubted("records/pages/querlin-letters.md:1")
    );
    // A title is no part of the name; a first name in a text tells nobody.
    assert_eq!(
        attempt("-- records/pages/mrs-hill.md\n# Letters\n\nText.\n"),
        Outcome::Published
    );
    // Others who bear the name in public, and live in the same town.
    let public = "-- records/people/other.toml\nname = \"Ida Zabeldorn\"\n\
                  -- records/holders/museum.toml\nname = \"Harbour Museum\"\nkind = \"museum\"\nplace = \"Farholm\"\n";
    assert_eq!(
        attempt(&format!(
            "{public}{}",
            page("Ida Zabeldorn gave it to Farholm.")
        )),
        Outcome::Published
    );
    for key in ["zabeldorn-a", "farholm-owner"] {
        let own = format!(
            "-- records/holders/{key}.toml\nname = \"Querlin Zabeldorn\"\nkind = \"private\"\nplace = \"Farholm\"\n"
        );
        let folder = lay_down(&[&own]);
        let judged = judge(folder.path(), &PictureWork::ReadOnly(&|_, _| {}));
        let codes: Vec<Code> = judged.findings.iter().map(|finding| finding.code).collect();
        assert!(codes.contains(&Code::PrivateKeyTelling), "{key}: {codes:?}");
        assert_eq!(Code::PrivateKeyTelling.severity(), Severity::Error);
    }
}

/// A surname that is also a common word, behind a letter that is also a word.
#[test]
fn an_article_before_a_common_word_is_no_initial() {
    let owner = "-- records/holders/owner-b.toml\nname = \"Anna Hill\"\nkind = \"private\"\n";
    let told = |text: &str| attempt(&format!("{owner}{}", page(text)));
    let at = "records/pages/thanks.md:3".to_owned();
    for text in ["A hill above a hill.", "Seen from a hill."] {
        assert_eq!(told(text), Outcome::Doubted(vec![at.clone()]), "{text}");
    }
    for text in ["A. Hill lent it.", "Lent by Hill, A.", "Lent by a. hill."] {
        assert_eq!(told(text), Outcome::Refused(at.clone()), "{text}");
    }
}

/// Other words that have the same letters, or a part of them.
#[test]
fn what_only_looks_like_a_private_name_is_published() {
    for text in [
        "Querlinda Zabeldornsen lent it.",
        "It was pulled in quarto.",
        "Querlin the ferryman.",
        "| Querlin | x |\n|---|---|\n| a | b |",
    ] {
        let folder = lay_down(&[OWNER, &page(text)]);
        let judged = judge(folder.path(), &PictureWork::ReadOnly(&|_, _| {}));
        let private = [Code::PrivateNamePublished, Code::PrivateNamePart];
        let found: Vec<_> = judged
            .findings
            .iter()
            .filter(|f| private.contains(&f.code))
            .collect();
        assert!(found.is_empty(), "{text}: {found:?}");
        assert!(judged.pull_site(&|_, _| {}).is_ok(), "{text}");
    }
}

/// Consent withdrawn: the next compile takes the name out of every file, and says which files had it.
#[test]
fn a_compile_takes_out_a_name_whose_consent_was_withdrawn_and_says_where_it_stood() {
    let folder = lay_down(&[OWNER]);
    let owner = folder.path().join("records/holders/owner-a.toml");
    let private = std::fs::read_to_string(&owner).unwrap();
    let consent = |end: &str| {
        format!("{private}\nconsent = {{ date = \"2024\", covers = [\"name\"]{end} }}\n")
    };
    std::fs::write(&owner, consent("")).unwrap();
    compile(folder.path());
    let telling = |name: &str| -> Vec<String> {
        let web = folder.path().join("web");
        let files = bytes_below(&web).into_iter();
        let files = files.filter(|(path, bytes)| {
            let is_workbook = path.extension().is_some_and(|ending| ending == "xlsx");
            let parts = is_workbook.then(|| crate::forms::parts(bytes));
            let parts = parts.map_or_else(|| vec![bytes.clone()], |p| p.into_values().collect());
            let mut parts = parts.iter();
            parts.any(|bytes| String::from_utf8_lossy(bytes).contains(name))
        });
        files
            .map(|(path, _)| path.to_str().unwrap().to_owned())
            .collect()
    };
    // The search has single words too, some of them in a file without the whole name.
    let told_before = telling("Querlin Zabeldorn");
    assert!(told_before.len() > 3, "{told_before:?}");

    std::fs::write(&owner, consent(", withdrawn = \"2025\"")).unwrap();
    let ran = keyblock(&["compile", text(folder.path())]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert_eq!(telling("Zabeldorn"), [] as [&str; 0]);
    let more = format!("and {} more files", told_before.len() - 3);
    for words in [
        "until now, the name of the private owner “owner-a” stood in “",
        &more,
    ] {
        assert!(ran.err.contains(words), "{words}: {}", ran.err);
    }
    assert!(!ran.err.contains("Zabeldorn"), "{}", ran.err);

    // It is told once.
    let again = keyblock(&["compile", text(folder.path())]);
    assert!(!again.err.contains("until now"), "{}", again.err);
}

/// What the audit cannot find stops the compile, and the site stays as it was.
#[test]
fn a_compile_that_would_tell_a_private_name_leaves_the_site_as_it_was() {
    let folder = lay_down(&[OWNER]);
    compile(folder.path());
    let web = folder.path().join("web");
    let before = bytes_below(&web);
    let words = folder.path().join("themes/own/words");
    std::fs::create_dir_all(&words).unwrap();
    std::fs::write(
        words.join("en.ftl"),
        "section-holders = Sheets of Querlin Zabeldorn\n",
    )
    .unwrap();
    let settings = folder.path().join("catalogue.toml");
    let with_theme = std::fs::read_to_string(&settings).unwrap() + "theme = \"own\"\n";
    std::fs::write(&settings, with_theme).unwrap();
    let ran = keyblock(&["compile", text(folder.path())]);
    assert_eq!(ran.code, Some(1), "{}", ran.err);
    for words in [
        "Code     private-name-published",
        "would stand in “",
        "nothing was published",
    ] {
        assert!(ran.err.contains(words), "{words}: {}", ran.err);
    }
    assert_eq!(bytes_below(&web), before);
}
