//! Broken records: each fault is reported at its place, and nothing else is reported.
//!
//! A file of `tests/broken/` has a sentence; then the files of a catalogue (`-- path`), which replace or
//! join those of [`SOUND`]; then, under `== told`, every finding, with severity, code, line and column.
//! `KEYBLOCK_BLESS=1 cargo test findings` writes the present findings; read the difference.

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use keyblock::audit::audit;
use keyblock::cli::report::{self, Layout};
use keyblock::model::bulk::Extent;
use keyblock::model::codes::Code;
use keyblock::model::finding::Finding;
use keyblock::press::{Judged, PictureWork, judge};
use keyblock::read::{Reading, read};
use keyblock::study::Studies;
use rayon::prelude::*;

/// A catalogue without faults, into which the broken records are written.
const SOUND: &str = include_str!("../sound-catalogue.txt");

/// The files of a tree written as text: a line `-- path`, then the file's lines.
fn files(tree: &str) -> Vec<(&str, String)> {
    let mut files: Vec<(&str, String)> = Vec::new();
    for line in tree.lines() {
        if let Some(path) = line.strip_prefix("-- ") {
            files.push((path, String::new()));
        } else if let Some((_, text)) = files.last_mut() {
            text.push_str(line);
            text.push('\n');
        }
    }
    files
}

/// Writes the files of a tree into `dir`, replacing existing ones. A file `(gone)` is deleted.
fn lay(dir: &Path, tree: &str) {
    for (path, text) in files(tree) {
        let full = dir.join(path);
        if text.trim() == "(gone)" {
            let _ = fs::remove_file(full);
        } else {
            fs::create_dir_all(full.parent().unwrap()).unwrap();
            fs::write(full, text).unwrap();
        }
    }
}

fn sound() -> tempfile::TempDir {
    let dir = tempfile::tempdir().unwrap();
    lay(dir.path(), SOUND);
    let picture = dir.path().join("records/designs/14/pictures/1-recto.jpg");
    fs::create_dir_all(picture.parent().unwrap()).unwrap();
    image::RgbImage::new(12, 9).save(picture).unwrap();
    dir
}

/// The findings on a catalogue: on single records, on contradictions between records, and on its
/// pictures.
pub fn judged(dir: &Path) -> Judged {
    judge(dir, &PictureWork::ReadOnly(&|_, _| {}))
}

/// The same as text.
fn told(dir: &Path) -> String {
    in_text(&judged(dir))
}

fn in_text(judged: &Judged) -> String {
    let catalogue = &judged.catalogue;
    let mut told = String::new();
    for finding in &judged.findings {
        let place = |place| {
            let at = catalogue.sources.position(place);
            format!(
                "{}:{}:{}",
                catalogue.sources.path(place.file),
                at.line,
                at.column
            )
        };
        let severity = finding.severity().word();
        let code = finding.code.as_str();
        let at = place(finding.at.place);
        writeln!(told, "{at} {severity}[{code}] {}", finding.message).unwrap();
        for label in &finding.also {
            writeln!(told, "    {} {}", place(label.place), label.text).unwrap();
        }
        if let Some(help) = &finding.help {
            writeln!(told, "    help: {help}").unwrap();
        }
    }
    told
}

/// A file of `tests/broken/`.
pub struct Broken {
    path: PathBuf,
    tree: String,
    expected: String,
}

impl Broken {
    /// Its name, without the ending.
    pub fn name(&self) -> String {
        let stem = self.path.file_stem().unwrap();
        stem.to_string_lossy().into_owned()
    }

    /// The catalogue with the broken record.
    fn catalogue(&self) -> tempfile::TempDir {
        let dir = sound();
        lay(dir.path(), &self.tree);
        dir
    }
}

/// A broken record and its findings.
pub struct Judgement {
    /// The record.
    pub broken: Broken,
    /// Every finding.
    pub findings: Vec<Finding>,
    /// The same as text.
    told: String,
}

/// Every broken record, by name, with its findings. Judging them all takes seconds, and several tests need
/// the result.
pub static JUDGEMENTS: LazyLock<Vec<Judgement>> = LazyLock::new(|| {
    let judgement = |broken: Broken| {
        let judged = judged(broken.catalogue().path());
        Judgement {
            told: in_text(&judged),
            findings: judged.findings,
            broken,
        }
    };
    broken_records().into_par_iter().map(judgement).collect()
});

fn broken_records() -> Vec<Broken> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/broken");
    let read = |path: PathBuf| {
        let text = fs::read_to_string(&path).unwrap();
        let (tree, expected) = text.split_once("== told\n").unwrap_or((&text, ""));
        Broken {
            path,
            tree: tree.to_owned(),
            expected: expected.to_owned(),
        }
    };
    let entries = fs::read_dir(folder).unwrap();
    let mut all: Vec<_> = entries.map(|entry| read(entry.unwrap().path())).collect();
    all.sort_by(|a, b| a.path.cmp(&b.path));
    all
}

/// Every broken record's catalogue, with "№ 14" for the number of the design with the key 14, and so on.
pub fn renumbered() -> impl Iterator<Item = tempfile::TempDir> {
    broken_records().into_iter().map(|broken| {
        let dir = broken.catalogue();
        for design in fs::read_dir(dir.path().join("records/designs")).unwrap() {
            let folder = design.unwrap().path();
            let record = folder.join("design.toml");
            let Ok(text) = fs::read_to_string(&record) else {
                continue;
            };
            let (is_number, key) = (
                |line: &&str| line.starts_with("number = "),
                folder.file_name(),
            );
            let others: Vec<&str> = text.lines().filter(|line| !is_number(line)).collect();
            let number = format!("number = \"№ {}\"\n", key.unwrap().to_string_lossy());
            fs::write(record, number + &others.join("\n")).unwrap();
        }
        dir
    })
}

#[test]
fn a_sound_catalogue_gives_no_finding() {
    assert_eq!(told(sound().path()), "");
}

#[test]
fn the_example_catalogue_gives_no_finding() {
    let example = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/example-catalogue");
    assert_eq!(told(&example), "");
}

#[test]
fn every_broken_record_is_told_at_its_place_and_nothing_else_is() {
    let bless = std::env::var_os("KEYBLOCK_BLESS").is_some();
    let count = JUDGEMENTS.len();
    assert!(count >= 60, "only {count} broken records");
    let mut wrong = String::new();
    for Judgement { broken, told, .. } in &*JUDGEMENTS {
        let (name, expected) = (broken.name(), &broken.expected);
        if bless {
            let tree = broken.tree.trim_end();
            fs::write(&broken.path, format!("{tree}\n== told\n{told}")).unwrap();
        } else if told != expected {
            writeln!(wrong, "{name}\n--- expected\n{expected}--- told\n{told}").unwrap();
        }
    }
    assert_eq!(wrong, "");
}

/// The sound catalogue with one slip in one line of its TOML, for every line: a key or header misspelt, a
/// header or a text not closed. Each has a name for the slip.
fn slips() -> Vec<(String, &'static str, String)> {
    let mut slips = Vec::new();
    for (path, text) in files(SOUND) {
        let lines: Vec<&str> = text.lines().collect();
        for (at, line) in lines.iter().enumerate() {
            let mut slip = |what: &str, written: String| {
                let mut with_slip: Vec<&str> = lines.clone();
                with_slip[at] = &written;
                let name = format!("{what}, {path}:{}: {line}", at + 1);
                slips.push((name, path, with_slip.join("\n") + "\n"));
            };
            if !path.ends_with(".toml") || line.is_empty() {
                continue;
            }
            if let Some(header) = line.strip_suffix(']').filter(|_| line.starts_with('[')) {
                slip("misspelt", line.replacen(']', "q]", 1));
                slip("not closed", header.to_owned());
            } else if let Some((key, value)) = line.split_once(" = ") {
                slip("misspelt", format!("{}q = {value}", &key[..key.len() - 1]));
                if let Some(quote) = line.rfind('"') {
                    slip("not closed", line[..quote].to_owned() + &line[quote + 1..]);
                }
            }
        }
    }
    slips
}

#[test]
fn one_slip_is_one_fault() {
    let slips = slips();
    assert!(slips.len() > 200, "only {} slips", slips.len());
    let told_more: Vec<String> = slips
        .par_iter()
        .filter_map(|(name, path, text)| {
            let dir = sound();
            fs::write(dir.path().join(path), text).unwrap();
            let judged = judged(dir.path());
            (judged.findings.len() > 1).then(|| format!("{name}\n{}", in_text(&judged)))
        })
        .collect();
    let expected = [
        // The keys of `[points.values]` then belong to the point before.
        "misspelt, records/designs/14/design.toml:32: [[points]]",
        // A misspelt answer may be another answer, so it is reported wherever it is given.
        "misspelt, records/designs/14/design.toml:39: even = \"one even tone\"",
    ];
    let unexpected: Vec<&String> = told_more
        .iter()
        .filter(|told| !expected.iter().any(|name| told.starts_with(name)))
        .collect();
    assert!(unexpected.is_empty(), "{unexpected:#?}");
    assert_eq!(told_more.len(), expected.len());
}

/// Texts that a text file cannot hold, or must not.
pub mod files_as_files {
    use super::*;

    /// A catalogue with a text that is not UTF-8.
    pub fn not_utf8() -> tempfile::TempDir {
        let dir = sound();
        let path = dir.path().join("records/people/other.toml");
        fs::write(path, b"name = \"The Other\"\nsort = \"\xe9\"\n").unwrap();
        dir
    }

    /// A catalogue with a text larger than any record.
    pub fn too_large() -> tempfile::TempDir {
        let dir = sound();
        let path = dir.path().join("records/people/other.toml");
        fs::write(path, "#".repeat(5 * 1024 * 1024)).unwrap();
        dir
    }

    /// A catalogue with a person whose record is `bytes`.
    fn with_record(bytes: &[u8]) -> tempfile::TempDir {
        let dir = sound();
        fs::write(dir.path().join("records/people/other.toml"), bytes).unwrap();
        dir
    }

    #[test]
    fn utf_16_is_told_in_one_sentence_with_its_mark_and_without() {
        let text = "name = \"The Other\"\nroles = [\"printer\"]\n";
        let little = || text.encode_utf16().flat_map(u16::to_le_bytes);
        let big = || text.encode_utf16().flat_map(u16::to_be_bytes);
        for bytes in [
            little().collect(),
            big().collect(),
            [0xff, 0xfe].into_iter().chain(little()).collect(),
            [0xfe, 0xff].into_iter().chain(big()).collect::<Vec<u8>>(),
        ] {
            assert_eq!(
                told(with_record(&bytes).path()),
                "records/people/other.toml:1:1 error[text-not-utf8] the file is UTF-16, an encoding that is not read\n    \
                 help: save it as UTF-8; editors ask for the encoding where they save under a name\n"
            );
        }
    }

    /// 200 MB of zeros take no room on the disk.
    #[test]
    fn a_file_of_200_megabytes_is_told_with_the_limit_and_not_read() {
        let dir = with_record(b"");
        let file = fs::File::create(dir.path().join("records/people/other.toml")).unwrap();
        file.set_len(200_000_000).unwrap();
        let begun = std::time::Instant::now();
        assert!(told(dir.path()).contains("the file has 200 MB; a record or text may have 4 MB"));
        assert!(begun.elapsed() < std::time::Duration::from_secs(10));
    }

    /// Large texts of what costs most to read or to tell. Each is told or read within seconds, and the
    /// stack holds. With `KEYBLOCK_FUZZ` they are as large as a file may be.
    #[test]
    fn the_largest_and_deepest_texts_are_told_in_bounded_time() {
        let is_long = std::env::var_os("KEYBLOCK_FUZZ").is_some();
        let most = if is_long { 4 * 1024 * 1024 } else { 256 * 1024 };
        let full = |piece: &str| piece.repeat(most / piece.len());
        let numbered =
            |most: u32, line: fn(u32) -> String| (0..most).map(line).collect::<Vec<_>>().concat();
        let toml = [
            full("x\n"),
            full("key\n= 3\n"),
            full("[a\n"),
            full("["),
            full("a = [\n"),
            full("{ a = "),
            full("a."),
            format!("name = [{}]\n", full("1,")),
            full("key = 1\n"),
            full("[a]\n"),
            full("[[names]]\nxyz = 1\nname = \"A\"\n"),
            numbered(300_000, |n| format!("k{n} = 1\n")),
            format!("name = \"{}\"\n", full("\u{200b}")),
        ];
        let markdown = [
            full("> "),
            full("- "),
            full("["),
            full("![a]("),
            full("*a "),
            full("`a"),
            full("<!--"),
            full("<b>"),
            full("[a](b)\n"),
            full("[^a]"),
            numbered(150_000, |n| format!("[^{n}]\n\n[^{n}]: a\n\n")),
            numbered(150_000, |n| format!("[a][r{n}]\n\n[r{n}]: design:14\n\n")),
            format!(
                "# A\n\n{}\n{}\n{}",
                full("|a").get(..40_000).unwrap(),
                full("|-").get(..40_000).unwrap(),
                full("|a\n").get(..200_000).unwrap()
            ),
        ];
        let literature = [
            full("{"),
            full("@book{a, title = {\n"),
            full("@"),
            format!("@book{{a, title = {{{}}}}}", full("\\\"o")),
            numbered(60_000, |n| {
                format!("@string{{s{n} = {{a}}}}\n@book{{b{n}, title = s{n}}}\n")
            }),
        ];
        let of = |path: &'static str, texts: Vec<String>| {
            texts.into_iter().map(move |text| (path, text))
        };
        let all = of("records/people/other.toml", toml.into())
            .chain(of("records/designs/14/design.md", markdown.into()))
            .chain(of("records/literature.bib", literature.into()));
        for (path, mut text) in all {
            let mut end = text.len().min(most);
            while !text.is_char_boundary(end) {
                end -= 1;
            }
            text.truncate(end);
            let begins: String = text.chars().take(30).collect();
            let dir = sound();
            fs::write(dir.path().join(path), text).unwrap();
            let begun = std::time::Instant::now();
            let judged = judged(dir.path());
            let whole = Layout::plain(Extent::Whole);
            let printed = report::findings(&judged.findings, &judged.catalogue.sources, whole);
            let took = begun.elapsed();
            println!(
                "{took:.1?} {} findings, {} bytes printed: {path} {begins:?}",
                judged.findings.len(),
                printed.len()
            );
            assert!(judged.findings.len() < 4_500, "{begins:?}");
            assert!(
                took < std::time::Duration::from_secs(60),
                "{begins:?} took {took:?}"
            );
        }
    }

    /// The same for every kind of thing that is not a file, wherever a record, a text or a picture belongs.
    /// Opening a pipe would wait for somebody who writes into it, so a test that waits fails.
    #[cfg(unix)]
    #[test]
    fn pipes_sockets_folders_and_devices_are_no_files() {
        use std::os::unix::fs::symlink;
        use std::os::unix::net::UnixListener;
        use std::process::Command;
        let paths = [
            "catalogue.toml",
            "records/literature.bib",
            "records/exhibitions.toml",
            "records/vocabulary/techniques.toml",
            "records/people/artist.toml",
            "records/people/artist.md",
            "records/holders/harbour-museum.toml",
            "records/pages/introduction.md",
            "records/designs/14/design.toml",
            "records/designs/14/design.md",
            "records/designs/14/impressions/1.toml",
            "records/designs/14/impressions/1.md",
            "records/designs/14/pictures/1-recto.jpg",
        ];
        let mut cases = 0;
        for path in paths {
            for what in [
                "a pipe",
                "a socket",
                "a folder",
                "a device",
                "a link to a pipe",
            ] {
                let dir = sound();
                let full = dir.path().join(path);
                let _ = fs::remove_file(&full);
                // The path of a socket may be no longer than 108 bytes.
                let made = match what {
                    "a pipe" => Command::new("mkfifo")
                        .arg(&full)
                        .status()
                        .is_ok_and(|s| s.success()),
                    "a socket" => UnixListener::bind(&full).is_ok(),
                    "a folder" => fs::create_dir(&full).is_ok(),
                    "a device" => symlink("/dev/null", &full).is_ok(),
                    _ => {
                        let pipe = dir.path().join("records/pipe");
                        Command::new("mkfifo")
                            .arg(&pipe)
                            .status()
                            .is_ok_and(|s| s.success())
                            && symlink(pipe, &full).is_ok()
                    }
                };
                assert!(made, "{what} at {path}");
                let judged = judged(dir.path());
                let told = in_text(&judged);
                // A link to a device leads out of the catalogue.
                let code = if what == "a device" {
                    "path-leaves"
                } else {
                    "file-unreadable"
                };
                let errors: Vec<&Finding> = judged
                    .findings
                    .iter()
                    .filter(|f| f.code.as_str() == code)
                    .collect();
                assert_eq!(errors.len(), 1, "{what} at {path}:\n{told}");
                let is_at_picture =
                    path.ends_with(".jpg") && matches!(what, "a folder" | "a device");
                let at = judged.catalogue.sources.path(errors[0].at.place.file);
                assert!(at == path || is_at_picture, "{what} at {path}:\n{told}");
                cases += 1;
            }
        }
        assert_eq!(cases, paths.len() * 5);
    }

    #[cfg(unix)]
    #[test]
    fn linked_records_say_that_the_link_leads_out_or_is_not_followed() {
        use std::os::unix::fs::symlink;
        let dir = sound();
        let outside = tempfile::tempdir().unwrap();
        let records = dir.path().join("records");
        fs::rename(&records, outside.path().join("records")).unwrap();
        symlink(outside.path().join("records"), &records).unwrap();
        assert_eq!(
            told(dir.path()),
            "records:1:1 error[path-leaves] records is a link that leads out of the catalogue, so it is not read\n    \
             help: put the file or folder itself here\n"
        );
        fs::remove_file(&records).unwrap();
        fs::rename(outside.path().join("records"), dir.path().join("kept")).unwrap();
        symlink(dir.path().join("kept"), &records).unwrap();
        assert_eq!(
            told(dir.path()),
            "records:1:1 error[file-unreadable] records is a link to a folder, and such links are not followed\n    \
             help: put the folder itself here\n"
        );
    }

    #[test]
    fn a_text_that_is_not_utf8_is_told_where_it_ends_to_be() {
        assert_eq!(
            told(not_utf8().path()),
            "records/people/other.toml:2:9 error[text-not-utf8] from here on the file is not UTF-8\n    \
             help: save the file as UTF-8\n"
        );
    }

    #[test]
    fn a_text_larger_than_any_record_is_not_read() {
        assert_eq!(
            told(too_large().path()),
            "records/people/other.toml:1:1 error[file-too-large] the file has 5 MB; a record or text may have 4 MB\n    \
             help: keep pictures and data in files of their own\n"
        );
    }

    #[cfg(unix)]
    #[test]
    fn a_file_that_may_not_be_read_is_told() {
        use std::os::unix::fs::PermissionsExt as _;
        let dir = sound();
        let path = dir.path().join("records/people/other.toml");
        // A folder by the name of a record cannot be read as one, whoever runs the test.
        fs::create_dir_all(dir.path().join("catalogue-of-links")).unwrap();
        fs::write(&path, "name = \"The Other\"\n").unwrap();
        fs::set_permissions(&path, fs::Permissions::from_mode(0o000)).unwrap();
        let told = told(dir.path());
        if fs::read(&path).is_ok() {
            // The user who runs this may be allowed to read everything; then there is no finding.
            assert_eq!(told, "");
        } else {
            assert!(
                told.starts_with("records/people/other.toml:1:1 error[file-unreadable]"),
                "{told}"
            );
        }
    }

    #[cfg(unix)]
    #[test]
    fn nothing_is_followed_out_of_the_catalogue() {
        use std::os::unix::fs::symlink;
        let outside = tempfile::tempdir().unwrap();
        fs::write(outside.path().join("secret.toml"), "name = \"A Secret\"\n").unwrap();
        fs::write(outside.path().join("secret.jpg"), "a picture").unwrap();
        let dir = sound();
        let records = dir.path().join("records");
        symlink(
            outside.path().join("secret.toml"),
            records.join("people/secret.toml"),
        )
        .unwrap();
        symlink(outside.path(), records.join("holders")).unwrap_or_else(|_| {
            symlink(outside.path(), records.join("people/more")).unwrap();
        });
        let pictures = records.join("designs/14/pictures");
        symlink(
            outside.path().join("secret.jpg"),
            pictures.join("2-recto.jpg"),
        )
        .unwrap();
        lay(
            dir.path(),
            "-- records/designs/14/impressions/2.toml\nstatus = \"untraced\"\n\
             pictures = [{ file = \"pictures/2-recto.jpg\", rights = \"CC0-1.0\" }]\n",
        );
        let Reading {
            catalogue,
            findings,
        } = read(dir.path());
        assert!(!format!("{catalogue:?}").contains("A Secret"));
        let leaves: BTreeSet<_> = findings
            .iter()
            .filter(|finding| finding.code == Code::PathLeaves)
            .map(|finding| catalogue.sources.path(finding.at.place.file).to_owned())
            .collect();
        assert_eq!(findings.len(), 3, "{findings:?}");
        assert_eq!(leaves.len(), 3);
        assert!(leaves.contains("records/designs/14/impressions/2.toml"));
        assert!(leaves.contains("records/people/secret.toml"));
    }
}

/// However a record is damaged, reading it ends, and the places of the findings are inside the files.
mod mutations {
    use super::*;

    /// A generator of numbers that are the same on every machine: xorshift64*, G. Marsaglia,
    /// "Xorshift RNGs", Journal of Statistical Software 8 (2003), with S. Vigna's multiplier.
    struct Numbers(u64);

    impl Numbers {
        fn below(&mut self, bound: usize) -> usize {
            self.0 ^= self.0 >> 12;
            self.0 ^= self.0 << 25;
            self.0 ^= self.0 >> 27;
            let number = self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 33;
            usize::try_from(number).unwrap() % bound.max(1)
        }

        fn one_of<'a, T: ?Sized>(&mut self, all: &[&'a T]) -> &'a T {
            all[self.below(all.len())]
        }
    }

    /// Values and lines that may get into a record by carelessness or with bad intent.
    const STRANGE: &[&str] = &[
        "",
        "0",
        "-1",
        "1e400",
        "nan",
        "inf",
        "true",
        "\"\"",
        "\" \"",
        "\"\\u0000\"",
        "[]",
        "{}",
        "[[]]",
        "[{}]",
        "\"not-visible\"",
        "\"1927/\"",
        "\"../..\"",
        "1927-01-01",
        "99999999999999999999",
        "0x7fffffffffffffff",
        "\"é\u{301}\u{202e}\"",
        "\"\"\"\n",
        "'",
        "{ is = 1, not = 2 }",
        "{ is = [] }",
        "[\"a\", 1, true]",
        "[1, 2]",
        "[[1, 2, 3, 4]]",
        "private = [\"name\"]",
        "\u{feff}",
        "\r",
        "[a.b.c]\n",
        "[[points]]\n",
        "[points.values]\n",
        "a.b.c = 1\n",
        "title\n",
        "key = \"moon\"\n",
    ];

    fn mutated(text: &str, numbers: &mut Numbers) -> Vec<u8> {
        let mut bytes = text.as_bytes().to_vec();
        for _ in 0..=numbers.below(3) {
            let at = numbers.below(bytes.len().max(1));
            match numbers.below(8) {
                // Bytes flipped.
                0 if !bytes.is_empty() => bytes[at] ^= 1 << numbers.below(8),
                1 if !bytes.is_empty() => {
                    bytes[at] = u8::try_from(numbers.below(256)).unwrap();
                }
                // Cut short.
                2 => bytes.truncate(at),
                // A line dropped, a line twice, two lines swapped.
                3..=5 => {
                    let mut lines: Vec<Vec<u8>> =
                        bytes.split(|b| *b == b'\n').map(<[u8]>::to_vec).collect();
                    let (one, other) = (numbers.below(lines.len()), numbers.below(lines.len()));
                    match numbers.below(3) {
                        0 => drop(lines.remove(one)),
                        1 => lines.insert(other, lines[one].clone()),
                        _ => lines.swap(one, other),
                    }
                    bytes = lines.join(&b'\n');
                }
                // A value of another type.
                6 => {
                    let value = numbers.one_of(STRANGE);
                    let equals: Vec<_> = (0..bytes.len()).filter(|i| bytes[*i] == b'=').collect();
                    if !equals.is_empty() {
                        let start = equals[numbers.below(equals.len())] + 1;
                        let rest = bytes[start..]
                            .iter()
                            .position(|b| matches!(b, b'\n' | b',' | b'}'));
                        let end = rest.map_or(bytes.len(), |n| start + n);
                        bytes.splice(start..end, value.bytes());
                    }
                }
                // Something put in between.
                _ => {
                    let strange = numbers.one_of(STRANGE);
                    bytes.splice(at..at, strange.bytes());
                }
            }
        }
        bytes
    }

    fn inside(reading: &Reading, finding: &Finding) -> bool {
        let places = std::iter::once(&finding.at).chain(&finding.also);
        places.map(|label| label.place).all(|place| {
            let text = reading.catalogue.sources.text(place.file);
            !reading.catalogue.sources.path(place.file).is_empty()
                && place.start <= place.end
                && text.get(place.span()).is_some()
        })
    }

    /// How many records are broken, unless `KEYBLOCK_BROKEN` says otherwise (DEVELOPERS.md, "Tests").
    const MUTATIONS: usize = 10_000;

    #[test]
    fn thousands_of_broken_records_are_read_without_a_panic() {
        let wanted =
            std::env::var("KEYBLOCK_BROKEN").map_or(MUTATIONS, |wanted| wanted.parse().unwrap());
        let sound_files = files(SOUND);
        let records: Vec<&(&str, String)> = sound_files
            .iter()
            .filter(|(path, _)| !path.ends_with(".bib"))
            .collect();
        let mut numbers = Numbers(0x9E37_79B9_7F4A_7C15);
        let dir = sound();
        // Setting the references takes longer than reading everything else, and has tests of its own.
        fs::remove_file(dir.path().join("records/literature.bib")).unwrap();
        let (mut read_records, mut told, mut faulty) = (0, 0, 0);
        // One record in each of several files is broken at a time: a catalogue is never broken in
        // one place only, and so many readings of a whole catalogue would take minutes.
        while read_records < wanted {
            for (path, text) in &records {
                fs::write(dir.path().join(path), mutated(text, &mut numbers)).unwrap();
                read_records += 1;
            }
            let mut reading = read(dir.path());
            let studies = Studies::of(&reading.catalogue);
            reading.findings.extend(audit(&reading.catalogue, &studies));
            for finding in &reading.findings {
                assert!(inside(&reading, finding), "{finding:?}");
                assert!(!finding.message.is_empty());
            }
            told += reading.findings.len();
            faulty += usize::from(!reading.findings.is_empty());
        }
        // Nearly every such catalogue must have a finding, or the mutations do nothing.
        assert!(
            told > read_records / 2,
            "{told} findings in {read_records} records"
        );
        assert!(faulty * 10 > read_records / records.len() * 9);
    }
}
