//! A large catalogue of which little is recorded, as one gets it from the lists of museums: 1,200 designs, 1,600 sheets,
//! no photographs.
//!
//! The forms of dates, sizes, media and titles, and how often each occurs, are those of 15,008 records of prints in one
//! museum's open data (CC0). Every name, title and number is invented.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

/// Designs of the catalogue.
pub const DESIGNS: usize = 1_200;
/// Sheets of the catalogue.
pub const SHEETS: usize = 1_600;
/// Sheets of each design of which many are known.
pub const OF_MANY: usize = 12;

/// Every hundredth design is known in many sheets of one museum, from the fortieth on.
pub fn has_many(design: usize) -> bool {
    design % 100 == 40
}

/// Of every third of those, nothing is told of the sheets but where they are.
pub fn is_silent(design: usize) -> bool {
    has_many(design) && design % 300 == 40
}

/// Writes the catalogue into `folder`.
pub fn lay_down(folder: &Path) {
    let write = |path: String, text: &str| {
        let path = folder.join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    };
    write("catalogue.toml".into(), SETTINGS);
    write("records/literature.bib".into(), LITERATURE);
    for (key, text) in PEOPLE {
        write(format!("records/people/{key}.toml"), text);
    }
    for (key, text) in HOLDERS {
        write(format!("records/holders/{key}.toml"), text);
    }
    let mut sheet = 0;
    for design in 1..=DESIGNS {
        let folder = format!("records/designs/{design}");
        write(format!("{folder}/design.toml"), &design_record(design));
        for number in 1..=sheets_of(design) {
            sheet += 1;
            let text = impression_record(design, number, sheet);
            write(format!("{folder}/impressions/{number}.toml"), &text);
        }
    }
    assert_eq!(sheet, SHEETS);
}

const SETTINGS: &str = r#"title = "The Prints of Osric Tallander"
siglum = "OT"
artist = "tallander"
language = "en"
address = "https://prints.example.org"
edition = "1"
dated = "2026-01-01"
"#;

const LITERATURE: &str = "\
@book{list, author = {Quillfeather, Ines}, title = {Osric Tallander: A List of the Prints}, year = {1967}, publisher = {Dorn}, address = {Kelderhaven}}
@book{presses, author = {Marrowby, Jonas}, title = {Small Presses of the Coast}, year = {1990}, publisher = {Dorn}, address = {Kelderhaven}}
";

const PEOPLE: [(&str, &str); 5] = [
    (
        "tallander",
        "name = \"Osric Tallander\"\nsort = \"Tallander, Osric\"\nroles = [\"artist\"]\nborn = \"1921\"\ndied = \"2003\"\n",
    ),
    (
        "brask",
        "name = \"Emmet Brask\"\nsort = \"Brask, Emmet\"\nroles = [\"printer\"]\n",
    ),
    (
        "selwick",
        "name = \"Runa Selwick\"\nsort = \"Selwick, Runa\"\nroles = [\"printer\"]\nborn = \"1930\"\n",
    ),
    (
        "ferrin",
        "name = \"Ferrin Editions\"\nroles = [\"publisher\"]\n",
    ),
    (
        "ostermoor",
        "name = \"Ostermoor Press\"\nroles = [\"publisher\"]\n",
    ),
];

/// The first keeps most of the sheets.
const HOLDERS: [(&str, &str); 8] = [
    (
        "kelderhaven",
        "name = \"Kelderhaven Print Room\"\nkind = \"museum\"\nplace = \"Kelderhaven\"\ncountry = \"NL\"\n",
    ),
    (
        "aldermouth",
        "name = \"Aldermouth Gallery\"\nkind = \"museum\"\nplace = \"Aldermouth\"\ncountry = \"GB\"\n",
    ),
    (
        "vessmark",
        "name = \"Vessmark Library\"\nkind = \"library\"\nplace = \"Vessmark\"\ncountry = \"DK\"\n",
    ),
    (
        "northgate",
        "name = \"Northgate College\"\nkind = \"library\"\nplace = \"Aldermouth\"\ncountry = \"GB\"\n",
    ),
    (
        "lunholt",
        "name = \"Lunholt Town Museum\"\nkind = \"museum\"\nplace = \"Lunholt\"\ncountry = \"DK\"\n",
    ),
    (
        "tarwick",
        "name = \"Tarwick Archive\"\nkind = \"archive\"\n",
    ),
    ("owner-a", "name = \"Hedda Norling\"\nkind = \"private\"\n"),
    (
        "mole",
        "name = \"Mole & Pier\"\nkind = \"trade\"\nplace = \"Kelderhaven\"\ncountry = \"NL\"\n",
    ),
];

/// A number that depends on both arguments as if by chance, the same in every run.
fn mixed(a: usize, b: usize) -> usize {
    let mut x = (a as u64) << 32 | b as u64;
    for _ in 0..2 {
        x = (x ^ (x >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        x ^= x >> 27;
    }
    usize::try_from(x >> 33).unwrap()
}

/// One of `forms`, each as often as its weight says.
fn drawn<T: Copy>(chance: usize, forms: &[(usize, T)]) -> T {
    let all: usize = forms.iter().map(|(weight, _)| weight).sum();
    let mut at = chance % all;
    for (weight, form) in forms {
        if at < *weight {
            return *form;
        }
        at -= weight;
    }
    unreachable!("the weights sum to {all}")
}

/// Sheets of a design: one of most, none of a few that only the literature knows.
fn sheets_of(design: usize) -> usize {
    match design {
        1 => 2,
        _ if has_many(design) => OF_MANY,
        _ if design % 80 == 7 => 0,
        _ if design % 8 == 3 => 2,
        _ if design % 8 == 5 && design <= FEW_THREES => 3,
        _ => 1,
    }
}

/// The last design of the series of three sheets, so that the sheets add up.
const FEW_THREES: usize = 525;

#[derive(Clone, Copy)]
enum DateForm {
    Year,
    Unknown,
    Years,
    /// The design has no date, its printing has.
    Published,
    About,
    /// The design and its printing have dates.
    YearAndPrinted,
}

const DATES: [(usize, DateForm); 6] = [
    (10_912, DateForm::Year),
    (940, DateForm::Unknown),
    (1_219, DateForm::Years),
    (849, DateForm::Published),
    (279, DateForm::About),
    (350, DateForm::YearAndPrinted),
];

/// Media, as the terms of the built-in vocabulary that stand for them; empty for "Print on paper" and the like.
const MEDIA: [(usize, &[&str]); 16] = [
    (2_960, &["screenprint"]),
    (2_719, &["lithograph"]),
    (1_787, &["etching"]),
    (1_250, &[]),
    (1_265, &["engraving"]),
    (413, &["aquatint"]),
    (396, &["etching", "aquatint"]),
    (344, &["wood-engraving"]),
    (269, &["mezzotint"]),
    (161, &["woodcut"]),
    (134, &["drypoint"]),
    (216, &["etching", "engraving"]),
    (110, &["linocut"]),
    (60, &["etching", "drypoint"]),
    (37, &["monotype"]),
    (29, &["lithograph", "screenprint"]),
];

#[derive(Clone, Copy)]
enum TitleForm {
    /// "\[no title\]", supplied.
    None,
    /// The same as its holder writes it, brackets and all.
    NoneAsWritten,
    /// "Plate 12", of a book.
    Plate,
    /// "7 Door Pieces".
    Numeral,
    /// "Landscape", of which there are many.
    Common,
    /// "The Harbour at Lunholt".
    Article,
    /// "‘The Last Boat’".
    Quoted,
    /// "Snow at Vessmark".
    Own,
}

const TITLES: [(usize, TitleForm); 8] = [
    (1_700, TitleForm::None),
    (789, TitleForm::NoneAsWritten),
    (2_200, TitleForm::Plate),
    (700, TitleForm::Numeral),
    (1_600, TitleForm::Common),
    (2_600, TitleForm::Article),
    (300, TitleForm::Quoted),
    (5_100, TitleForm::Own),
];

const SUBJECTS: [&str; 16] = [
    "Snow", "Harbour", "Bridge", "Figure", "Night", "River", "Bird", "Interior", "Quay", "Door",
    "Boat", "Orchard", "Gate", "Tower", "Winter", "Window",
];
const PLACES: [&str; 12] = [
    "Lunholt",
    "Vessmark",
    "Tarwick",
    "Aldermouth",
    "Kelderhaven",
    "Merby",
    "Norlunde",
    "Feneby",
    "Hask",
    "Gorwick",
    "Dulmark",
    "Jelvar",
];
const COMMON: [&str; 6] = [
    "Landscape",
    "Head",
    "Composition",
    "Still Life",
    "Self-Portrait",
    "Study",
];

fn title(design: usize) -> String {
    let chance = mixed(design, 1);
    let subject = SUBJECTS[mixed(design, 2) % SUBJECTS.len()];
    let place = PLACES[mixed(design, 3) % PLACES.len()];
    let text = match drawn(chance, &TITLES) {
        TitleForm::None => return "{ text = \"no title\", supplied = true }".to_owned(),
        TitleForm::NoneAsWritten => "[no title]".to_owned(),
        TitleForm::Plate => format!("Plate {}", 1 + chance / 17_000 % 40),
        TitleForm::Numeral => format!("{} {subject} Pieces", 2 + chance / 17_000 % 19),
        TitleForm::Common => COMMON[chance / 17_000 % COMMON.len()].to_owned(),
        TitleForm::Article => format!("The {subject} at {place}"),
        TitleForm::Quoted => format!("‘The {subject} of {place}’"),
        TitleForm::Own => format!("{subject}, {place}"),
    };
    format!("{{ text = \"{text}\", lang = \"en\" }}")
}

fn design_record(design: usize) -> String {
    let chance = mixed(design, 4);
    let mut text = format!(
        "titles = [{}]\nmakers = [{{ person = \"tallander\", role = \"artist\" }}]\n",
        title(design)
    );
    let year = 1945 + design * 50 / DESIGNS;
    let (date, printed) = match drawn(chance, &DATES) {
        DateForm::Year => (year.to_string(), None),
        DateForm::Unknown => (String::new(), None),
        DateForm::Years => (format!("{year}/{}", year + 1 + chance / 17_000 % 2), None),
        DateForm::Published => (String::new(), Some(year)),
        DateForm::About => (format!("{year}~"), None),
        DateForm::YearAndPrinted => (year.to_string(), Some(year + chance / 17_000 % 2 * 12)),
    };
    if !date.is_empty() {
        writeln!(text, "date = \"{date}\"").unwrap();
    }
    let media = drawn(mixed(design, 5), &MEDIA);
    if !media.is_empty() {
        writeln!(text, "technique = {media:?}").unwrap();
    }
    if chance % 10 < 8 {
        text.push_str("support = [\"paper\"]\n");
    }
    match design % 80 {
        7 => text.push_str("known_from = [{ cite = \"list\" }]\n"),
        n if n % 3 == 1 => writeln!(
            text,
            "literature = [{{ cite = \"list\", number = \"{}\" }}]",
            design / 3 + 1
        )
        .unwrap(),
        n if n % 29 == 0 => text.push_str("literature = [{ cite = \"presses\" }]\n"),
        _ => {}
    }
    // Of one design in twenty the states are told apart.
    if design % 20 == 9 {
        text.push_str(STATES);
    }
    if let Some(year) = printed {
        write!(
            text,
            "\n[[printings]]\nkey = \"first\"\nkind = \"lifetime\"\nstates = \"all\"\nprinter = \"{}\"\npublisher = \"{}\"\ndate = \"{year}\"\n",
            ["brask", "selwick"][design % 2],
            ["ferrin", "ostermoor"][design / 2 % 2]
        )
        .unwrap();
    }
    text
}

const STATES: &str = r#"
[[points]]
key = "border"
ask = "Is there a border line?"
kind = "presence"
rests_on = "matrix"

[[states]]
key = "first"
shows = { border = "absent" }

[[states]]
key = "bordered"
shows = { border = "present" }
"#;

#[derive(Clone, Copy)]
enum SizeForm {
    Image,
    None,
    Sheet,
    Both,
}

const SIZES: [(usize, SizeForm); 4] = [
    (12_300, SizeForm::Image),
    (1_500, SizeForm::None),
    (750, SizeForm::Sheet),
    (120, SizeForm::Both),
];

fn impression_record(design: usize, number: usize, sheet: usize) -> String {
    let chance = mixed(design, 100 + number);
    let holder = if has_many(design) {
        0
    } else {
        drawn(
            chance,
            &[
                (51, 0),
                (31, 1),
                (8, 2),
                (3, 3),
                (2, 4),
                (2, 5),
                (2, 6),
                (1, 7),
            ],
        )
    };
    if !has_many(design) && (chance / 100).is_multiple_of(60) {
        return "status = \"untraced\"\n".to_owned();
    }
    let mut text = format!("status = \"located\"\nholder = \"{}\"\n", HOLDERS[holder].0);
    // Private owners number nothing.
    if holder < 6 {
        writeln!(text, "accession = \"P{:05}\"", 1_000 + sheet * 7).unwrap();
    }
    if is_silent(design) {
        return text;
    }
    if holder < 2 {
        let verb = [
            "Purchased",
            "Presented by the artist",
            "Bequeathed by Ada Fenwick",
        ];
        let year = 1970 + chance / 6_000 % 30;
        writeln!(text, "credit = \"{} {year}\"", verb[chance / 6_000 % 3]).unwrap();
    }
    if design % 20 == 9 && number == 1 {
        text.push_str("identified = { state = \"bordered\" }\n");
    }
    let (height, width) = (120 + mixed(design, 6) % 400, 100 + mixed(design, 7) % 300);
    // Sheets of many differ, as those of several printings do.
    let cut = if has_many(design) { number % 5 * 4 } else { 0 };
    let image = format!("image = [{}, {}]\n", height - cut, width - cut);
    let whole = format!("size = [{}, {}]\n", height + 60, width + 40);
    match drawn(chance / 6_000, &SIZES) {
        SizeForm::Image => write!(text, "\n[sheet]\n{image}").unwrap(),
        SizeForm::None => text.push_str("\n[sheet]\n"),
        SizeForm::Sheet => write!(text, "\n[sheet]\n{whole}").unwrap(),
        SizeForm::Both => write!(text, "\n[sheet]\n{image}{whole}").unwrap(),
    }
    if has_many(design) && number > 6 {
        writeln!(text, "date = \"{}\"", 1960 + design * 30 / DESIGNS).unwrap();
    }
    text
}
