//! A large catalogue of an invented printmaker, with ten impressions a design and records of usual length: a
//! design about 4 kB, an impression 1.2 kB, a note 1.4 kB.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

/// Impressions of each design.
pub const OF_EACH: usize = 10;
const HOLDERS: usize = 300;
const OWNERS: usize = 400;
const WORKS: usize = 60;
const EXHIBITIONS: usize = 40;
const TECHNIQUES: [&str; 5] = ["woodcut", "etching", "linocut", "lithograph", "drypoint"];
const SUBJECTS: [&str; 8] = [
    "harbour", "snow", "bridge", "figure", "night", "river", "bird", "interior",
];
const SENTENCES: [&str; 10] = [
    "The ink lies thin at the left edge, where the brayer did not reach.",
    "A crease runs down the middle, flattened before the sheet was mounted.",
    "The margins are full; the upper one shows the maker's pencil for registration.",
    "It was lent twice and came back each time with the label of the lender on the verso.",
    "The tone of the sky is warmer than in the other sheets of this printing.",
    "A collector of the time wrote the title in ink below the image, and misspelt it.",
    "The paper has darkened where an old window mount covered it badly.",
    "Two pinholes at the top say that it hung in the shop before it was sold.",
    "The lower corner was made up with a piece of the same paper.",
    "What seems a scratch is a fold of the paper under the press.",
];

/// Writes `designs` designs with their impressions into `folder`.
pub fn lay_down(folder: &Path, designs: usize) {
    let write = |path: String, text: &str| {
        let path = folder.join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    };
    write("catalogue.toml".into(), SETTINGS);
    let artist = "name = \"Ilka Vorsand\"\nsort = \"Vorsand, Ilka\"\nroles = [\"artist\"]\nborn = \"1880\"\ndied = \"1961\"\n";
    write("records/people/vorsand.toml".into(), artist);
    for (key, role) in [("printer", "printer"), ("publisher", "publisher")] {
        for n in 0..10 {
            let text = format!(
                "name = \"The {role} {}\"\nroles = [\"{role}\"]\n",
                invented(n + 7)
            );
            write(format!("records/people/{key}-{n}.toml"), &text);
        }
    }
    for n in 0..OWNERS {
        let name = invented(n + 1000);
        let text = format!(
            "name = \"Jorun {name}\"\nsort = \"{name}, Jorun\"\nroles = [\"collector\"]\nborn = \"{}\"\n",
            1860 + n % 50
        );
        write(format!("records/people/owner-{n}.toml"), &text);
    }
    for n in 0..HOLDERS {
        write(format!("records/holders/museum-{n}.toml"), &holder(n));
    }
    write("records/literature.bib".into(), &literature());
    write("records/exhibitions.toml".into(), &exhibitions());
    write(
        "records/pages/introduction.md".into(),
        &format!("# Introduction\n\n{}", prose(3, 40, 1, designs)),
    );
    for n in 1..=designs {
        let folder = format!("records/designs/{n}");
        write(format!("{folder}/design.toml"), &design(n, designs));
        write(format!("{folder}/design.md"), &prose(n, 18, n, designs));
        for number in 1..=OF_EACH {
            let file = format!("{folder}/impressions/{number}");
            write(format!("{file}.toml"), &impression(n, number));
            let note = prose(mixed(n, number), 16, n, designs);
            write(format!("{file}.md"), &note);
        }
    }
}

const SETTINGS: &str = r#"title = "The Prints of Ilka Vorsand"
siglum = "IV"
artist = "vorsand"
language = "en"
address = "https://prints.example.org"
edition = "1"
dated = "2026-01-01"
"#;

/// A pseudo-random number, the same in every run.
fn mixed(a: usize, b: usize) -> usize {
    let mut x = (a as u64) << 32 | b as u64;
    for _ in 0..2 {
        x = (x ^ (x >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        x ^= x >> 27;
    }
    (x >> 33) as usize
}

/// An invented name.
fn invented(n: usize) -> String {
    const FIRST: [&str; 12] = [
        "Bar", "Dul", "Fen", "Gor", "Hask", "Jel", "Kor", "Lun", "Mer", "Nol", "Tar", "Vess",
    ];
    const LAST: [&str; 12] = [
        "anby", "edoor", "ikar", "olm", "unde", "estig", "avar", "ilm", "oster", "ung", "emo",
        "irrel",
    ];
    format!(
        "{}{}{}",
        FIRST[n % 12],
        LAST[n / 12 % 12],
        ["", "sen", "holt", "by", "wick", "mark", "gaard", "ling"][n / 144 % 8]
    )
}

fn holder(n: usize) -> String {
    format!(
        "name = \"Museum of {}\"\nkind = \"museum\"\nplace = \"{}\"\ncountry = \"{}\"\ncredit = \"Museum of {}\"\n",
        invented(n),
        invented(n / 2),
        ["NL", "FR", "DE", "JP", "US", "GB"][n % 6],
        invented(n),
    )
}

fn literature() -> String {
    let mut text = String::new();
    for n in 0..WORKS {
        let _ = write!(
            text,
            "@book{{work-{n},\n  author = {{{}, Anselm}},\n  title = {{Prints of the coast, volume {n}}},\n  year = {{{}}},\n  publisher = {{Dorn}},\n  address = {{Kelderhaven}}\n}}\n\n",
            invented(n + 400),
            1930 + n
        );
    }
    text
}

fn exhibitions() -> String {
    let mut text = String::new();
    for n in 0..EXHIBITIONS {
        let _ = write!(
            text,
            "[show-{n}]\ntitle = \"Prints and presses {n}\"\nvenue = \"museum-{n}\"\ndate = \"{}-05/{}-07\"\n\n",
            1962 + n,
            1962 + n
        );
    }
    text
}

fn design(n: usize, designs: usize) -> String {
    let title = format!(
        "{} at {}",
        SENTENCES[n % 10].split(' ').nth(1).unwrap(),
        invented(n)
    );
    let year = 1900 + n * 22 / designs;
    let mut text = format!(
        r#"number = "{n}"
date = "{year}"
makers = [{{ person = "vorsand", role = "artist" }}]
technique = ["{}"]
support = ["laid-paper"]
subjects = ["{}", "{}"]
titles = [
  {{ text = "The {title}", lang = "en", kind = "usual" }},
  {{ text = "Ved {}", lang = "da", kind = "original" }},
]
literature = [
  {{ cite = "work-0", at = "p. {n}", number = "{n}" }},
  {{ cite = "work-1", at = "p. {n}", number = "V {n}" }},
  {{ cite = "work-{}", at = "p. {}" }},
]

[size]
image = [{}, {}]

[series]
name = "Series of {}"
position = "{}"

[[matrices]]
key = "key-block"
kind = "block"
material = "pear"
carries = "the lines"
colour = "black"

[[matrices]]
key = "tone-block"
kind = "block"
material = "pear"
carries = "the sky"
colour = "grey"
"#,
        TECHNIQUES[n % 5],
        SUBJECTS[n % 8],
        SUBJECTS[(n + 3) % 8],
        invented(n),
        2 + mixed(n, 91) % (WORKS - 2),
        mixed(n, 92) % 300,
        200 + n % 90,
        150 + n % 70,
        invented(n / 20),
        1 + n % 20,
    );
    for (point, ask) in [
        ("moon", "Is there a moon above the roofs?"),
        ("lamp", "Does the lamp at the quay burn?"),
        ("boat", "Does a boat lie at the steps?"),
    ] {
        let _ = write!(
            text,
            "\n[[points]]\nkey = \"{point}\"\nask = \"{ask}\"\nkind = \"presence\"\nrests_on = \"matrix\"\nmatrix = \"key-block\"\nbox = [16.0, 12.7, 9.5, 7.3]\n"
        );
    }
    text.push_str(
        r#"
[[points]]
key = "corner"
ask = "How much of the upper left corner of the block is left?"
kind = "stage"
rests_on = "matrix"
matrix = "key-block"
box = [6.0, 2.7, 9.5, 7.3]
stages = ["whole", "chipped", "lost"]

[[points]]
key = "sky"
ask = "How is the sky printed?"
kind = "choice"
rests_on = "inking"

[points.values]
even = "in one even tone"
graded = "graded from dark above to light below"
"#,
    );
    for (state, summary, moon, lamp, boat) in [
        (
            "first",
            "Before the moon; the water is blank to the left.",
            "absent",
            "absent",
            "absent",
        ),
        (
            "moon",
            "A moon is added above the roofs, and lines in the water.",
            "present",
            "absent",
            "absent",
        ),
        (
            "lamp",
            "The lamp at the quay burns; a boat lies at the steps.",
            "present",
            "present",
            "present",
        ),
    ] {
        let _ = write!(
            text,
            "\n[[states]]\nkey = \"{state}\"\ndate = \"{year}\"\nby = \"vorsand\"\nsummary = \"{summary}\"\nshows = {{ moon = \"{moon}\", lamp = \"{lamp}\", boat = \"{boat}\" }}\n"
        );
    }
    for (printing, kind, sky, states, from) in [
        ("own", "artist", "graded", "\"all\"", 0),
        ("second", "lifetime", "even", "[\"lamp\"]", 4),
    ] {
        let _ = write!(
            text,
            "\n[[printings]]\nkey = \"{printing}\"\nname = \"The {printing} printing\"\nkind = \"{kind}\"\nprinter = \"{}\"\npublisher = \"publisher-{}\"\ndate = \"{}\"\nedition = [{{ is = 60, cite = \"work-0\", at = \"p. {n}\" }}]\nnumbered = true\nstates = {states}\npaper = \"laid-paper\"\nshows = {{ sky = \"{sky}\" }}\n",
            if from == 0 {
                "vorsand".to_owned()
            } else {
                format!("printer-{}", n % 10)
            },
            n % 10,
            year + from
        );
    }
    text
}

fn impression(design: usize, number: usize) -> String {
    let chance = mixed(design, number);
    // A few holders have many impressions, many have few.
    let holder = (chance % HOLDERS) * (chance / HOLDERS % HOLDERS) / HOLDERS;
    let (state, moon, lamp) = [
        ("first", "absent", "absent"),
        ("moon", "present", "absent"),
        ("lamp", "present", "present"),
    ][number % 3];
    let printing = if state == "lamp" && number > 5 {
        "second"
    } else {
        "own"
    };
    // In one design of ten a number occurs twice.
    let numbered = if design.is_multiple_of(10) && number == OF_EACH {
        46
    } else {
        number * 5 + 1
    };
    let acquired = 1965 + chance % 40;
    let mut text = format!(
        r#"holder = "museum-{holder}"
accession = "{}.{design}.{number}"
status = "located"
kind = "edition"
numbering = "{}/60"
condition = "Good; a fox mark in the sky."
exhibited = [{{ exhibition = "show-{}", at = "no. {}" }}]

[identified]
state = "{state}"
printing = "{printing}"
certainty = "{}"
basis = "first-hand"
date = "2018-03"
why = "The moon and the lamp, seen under the glass."

[observed]
moon = "{moon}"
lamp = "{lamp}"
boat = "{lamp}"
corner = "{}"
sky = "{}"

[sheet]
size = [{}, {}]
image = [{}, {}]
paper = "laid-paper"
margins = "full"

[[marks]]
kind = "signature"
medium = "pencil"
text = "I. Vorsand"
place = "lower right, in the margin"
side = "recto"
whose = "vorsand"
applied_by = "vorsand"
"#,
        1900 + chance % 100,
        numbered,
        chance % EXHIBITIONS,
        1 + chance % 200,
        ["certain", "probable"][chance / 7 % 2],
        ["whole", "chipped", "lost"][number / 4],
        if printing == "own" { "graded" } else { "even" },
        220 + design % 90 + number * 7 % 40,
        170 + design % 70 + number * 5 % 30,
        200 + design % 90,
        150 + design % 70,
    );
    let _ = write!(
        text,
        "\n[[provenance]]\nowner = \"owner-{}\"\nto = \"{}\"\n\n[[provenance]]\nowner = {{ name = \"The heirs of {}\" }}\nfrom = \"{}\"\nto = \"{acquired}\"\nhow = \"descent\"\ndirect = true\n\n[[provenance]]\nowner = \"museum-{holder}\"\nfrom = \"{acquired}\"\nhow = \"purchase\"\n\n[[sightings]]\ndate = \"{}\"\nbasis = \"literature\"\ncite = \"work-0\"\n\n[[sightings]]\ndate = \"2018-03\"\nbasis = \"first-hand\"\n",
        chance / 3 % OWNERS,
        1930 + chance % 8,
        invented(chance),
        1930 + chance % 8,
        1940 + chance % 30,
    );
    text
}

/// Paragraphs of `sentences` sentences with a link each, about a record near `design`.
fn prose(seed: usize, sentences: usize, design: usize, designs: usize) -> String {
    let mut text = String::new();
    for n in 0..sentences {
        let chance = mixed(seed, n);
        text.push_str(SENTENCES[chance % 10]);
        text.push(if n % 6 == 5 { '\n' } else { ' ' });
        if n % 6 == 5 {
            let near = 1 + (design + chance % 30) % designs;
            let _ = match chance / 16 % 4 {
                0 => write!(text, "\nCompare [](design:{near})"),
                1 => write!(
                    text,
                    "\nCompare [the other sheet](impression:{near}.{})",
                    1 + chance % OF_EACH
                ),
                2 => write!(
                    text,
                    "\nSo *already* [](lit:work-{} \"p. {}\")",
                    chance % WORKS,
                    chance % 90
                ),
                _ => write!(
                    text,
                    "\nIt passed through the hands of [](person:owner-{})",
                    chance % OWNERS
                ),
            };
            text.push_str(", with **other** margins. ");
        }
    }
    text.push('\n');
    text
}
