//! Photographs: a fault is reported at its place; a photograph that may not be published is checked and never
//! written to the site; a failure of the disk is not reported as a fault of a record.

use std::collections::BTreeSet;
use std::ffi::OsString;
use std::fs;
use std::path::Path;

use image::codecs::png::PngEncoder;
use image::{ImageEncoder as _, Rgb, RgbImage};
use keyblock::cli::{self, Outcome};
use keyblock::model::public::Public;
use keyblock::press::{Judged, PictureWork, PullFault, judge};

use crate::small;

/// A design with a sheet whose record is `sheet`.
fn with_sheet(sheet: &str) -> tempfile::TempDir {
    small::lay_down(&[&format!(
        "-- records/designs/1/design.toml\ntitles = [{{ text = \"A Quay\" }}]\n\
         -- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\n{sheet}\n"
    )])
}

/// A photograph of one colour, 40 × 30 px, in `dir`'s design 1, with a colour profile if one is
/// given. No two names have the same content.
pub fn photograph(dir: &Path, name: &str, profile: Option<&[u8]>) {
    let path = dir.join("records/designs/1/pictures").join(name);
    fs::create_dir_all(path.parent().unwrap()).unwrap();
    let shade = name.bytes().fold(0_u8, u8::wrapping_add);
    let picture = RgbImage::from_pixel(40, 30, Rgb([shade, 120, 90]));
    let mut bytes = Vec::new();
    let mut encoder = PngEncoder::new(&mut bytes);
    if let Some(profile) = profile {
        encoder.set_icc_profile(profile.to_vec()).unwrap();
    }
    encoder
        .write_image(&picture, 40, 30, image::ExtendedColorType::Rgb8)
        .unwrap();
    fs::write(path, bytes).unwrap();
}

fn prepare(dir: &Path) -> Judged {
    judge(dir, &PictureWork::Prepare(&|_, _| {}))
}

fn look(dir: &Path) -> Judged {
    judge(dir, &PictureWork::ReadOnly(&|_, _| {}))
}

/// The findings, each as `path:line:column code`.
fn told(judged: &Judged) -> Vec<String> {
    let sources = &judged.catalogue.sources;
    let line = |finding: &keyblock::model::finding::Finding| {
        let at = sources.position(finding.at.place);
        let path = sources.path(finding.at.place.file);
        format!("{path}:{}:{} {}", at.line, at.column, finding.code.as_str())
    };
    judged.findings.iter().map(line).collect()
}

fn keyblock(words: &[&str], dir: &Path) -> Outcome {
    let words = ["keyblock"].iter().chain(words).map(OsString::from);
    cli::run(words.chain([dir.as_os_str().to_owned()]))
}

#[test]
fn a_disk_that_fails_is_no_fault_of_the_record() {
    let dir = with_sheet("pictures = [{ file = \"pictures/1.png\", rights = \"CC0-1.0\" }]");
    photograph(dir.path(), "1.png", None);
    // A file under the folder's name keeps the folder from being made, whatever rights the user has.
    fs::write(dir.path().join(".keyblock"), "in the way").unwrap();

    let judged = prepare(dir.path());
    assert_eq!(told(&judged), Vec::<String>::new());
    let fault = judged.disk_fault.as_ref().unwrap().to_string();
    let cache = dir.path().join(".keyblock/pictures");
    let said = format!("the disk failed: {} cannot be written: ", cache.display());
    assert!(fault.starts_with(&said), "{fault}");
    let not_pulled = judged.pull_site(&|_, _| {}).unwrap_err();
    assert!(matches!(not_pulled.fault, PullFault::Disk(_)));

    // A compile has a folder beside the site to make them in.
    assert_eq!(keyblock(&["compile"], dir.path()), Outcome::Done);
    assert!(dir.path().join("web/picture/1.1/recto").is_dir());
    // An audit writes nothing, so it needs no disk space.
    assert_eq!(keyblock(&["audit"], dir.path()), Outcome::Done);
}

/// A catalogue with a photograph whose colour profile is invalid.
pub fn senseless_profile() -> tempfile::TempDir {
    let dir = with_sheet("pictures = [{ file = \"pictures/1.png\", rights = \"CC0-1.0\" }]");
    photograph(dir.path(), "1.png", Some(b"no profile"));
    dir
}

/// A catalogue that allows 64 MiB for pictures, with one that states 10,000 × 9000 px in seven passes.
pub fn too_much_memory() -> tempfile::TempDir {
    let dir = with_sheet("pictures = [{ file = \"pictures/1.png\", rights = \"CC0-1.0\" }]");
    photograph(dir.path(), "1.png", None);
    let path = dir.path().join("records/designs/1/pictures/1.png");
    let mut bytes = fs::read(&path).unwrap();
    // IHDR (PNG, 11.2.1): width, height, then the fifth of five bytes, and the checksum of it all.
    bytes[16..20].copy_from_slice(&10_000_u32.to_be_bytes());
    bytes[20..24].copy_from_slice(&9000_u32.to_be_bytes());
    bytes[28] = 1;
    let mut crc = u32::MAX;
    for byte in &bytes[12..29] {
        crc ^= u32::from(*byte);
        for _ in 0..8 {
            crc = (crc >> 1) ^ if crc & 1 == 1 { 0xEDB8_8320 } else { 0 };
        }
    }
    bytes[29..33].copy_from_slice(&(!crc).to_be_bytes());
    fs::write(&path, bytes).unwrap();
    let settings = dir.path().join("catalogue.toml");
    let text = fs::read_to_string(&settings).unwrap();
    fs::write(&settings, format!("{text}\n[pictures]\nmemory = 64\n")).unwrap();
    dir
}

#[test]
fn a_picture_that_needs_more_memory_than_the_catalogue_allows_is_an_error_at_the_picture() {
    let dir = too_much_memory();
    let error = ["records/designs/1/impressions/1.toml:2:22 picture-memory"];
    let judged = look(dir.path());
    assert_eq!(told(&judged), error);
    let message = &judged.findings[0].message;
    assert!(
        message.contains("and the catalogue allows 64 MiB for pictures"),
        "{message}"
    );
    let help = judged.findings[0].help.clone().unwrap();
    assert!(
        help.starts_with(
            "save it without interlacing, or save a smaller copy; or allow it with `memory = "
        ),
        "{help}"
    );
    assert_eq!(told(&prepare(dir.path())), error);
    // What the help says is enough: then the file is found to be no whole picture.
    let memory: u32 = help
        .split([' ', '`'])
        .find_map(|word| word.parse().ok())
        .unwrap();
    let settings = dir.path().join("catalogue.toml");
    let text = fs::read_to_string(&settings).unwrap();
    let allowed = text.replace("memory = 64", &format!("memory = {memory}"));
    fs::write(&settings, allowed).unwrap();
    let error = ["records/designs/1/impressions/1.toml:2:22 picture-unreadable"];
    assert_eq!(told(&look(dir.path())), error);
}

#[test]
fn a_colour_profile_that_makes_no_sense_is_a_hint_at_the_picture() {
    let dir = senseless_profile();
    let hint = ["records/designs/1/impressions/1.toml:2:22 picture-profile"];
    assert_eq!(told(&look(dir.path())), hint);
    let made = prepare(dir.path());
    assert_eq!(told(&made), hint);
    let pictures_made = made.prepared.values().filter(|p| p.made).count();
    assert_eq!(pictures_made, 1);
    // Nothing is decoded now: the cache gives the same findings.
    assert_eq!(told(&prepare(dir.path())), hint);
    assert_eq!(told(&look(dir.path())), hint);

    let srgb = moxcms::ColorProfile::new_srgb().encode().unwrap();
    photograph(dir.path(), "1.png", Some(&srgb));
    assert_eq!(told(&look(dir.path())), Vec::<String>::new());
}

#[test]
fn a_picture_that_is_kept_back_is_looked_at_and_goes_no_further() {
    let dir = with_sheet(
        "[[pictures]]\nfile = \"pictures/shown.png\"\nrights = \"CC0-1.0\"\n\
         [[pictures]]\nfile = \"pictures/back.png\"\nname = \"back\"\nrights = \"in copyright\"\n\
         publish = false\n\
         [[pictures]]\nfile = \"pictures/torn.png\"\nname = \"torn\"\nrights = \"in copyright\"\n\
         publish = false",
    );
    photograph(dir.path(), "shown.png", None);
    photograph(dir.path(), "back.png", None);
    photograph(dir.path(), "torn.png", None);
    let torn = dir.path().join("records/designs/1/pictures/torn.png");
    let bytes = fs::read(&torn).unwrap();
    fs::write(&torn, &bytes[..bytes.len() / 2]).unwrap();

    let error = ["records/designs/1/impressions/1.toml:11:8 picture-unreadable"];
    assert_eq!(told(&look(dir.path())), error);
    let judged = prepare(dir.path());
    assert_eq!(told(&judged), error);
    let keys: Vec<String> = judged.prepared.keys().map(ToString::to_string).collect();
    assert_eq!(keys, ["1.1/recto"]);
    let kept = fs::read_dir(dir.path().join(".keyblock/pictures")).unwrap();
    // One file of pixels, the pack of its tiles, and their manifest.
    assert_eq!(kept.count(), 3);
}

/// A catalogue that withholds pictures in every way that exists.
fn secretive() -> tempfile::TempDir {
    let picture = |name: &str, more: &str| {
        format!(
            "{{ file = \"pictures/{name}.png\", name = \"{name}\", rights = \"CC0-1.0\"{more} }}"
        )
    };
    let design = format!(
        "-- records/designs/1/design.toml\ntitles = [{{ text = \"A Quay\" }}]\n\
         pictures = [{}, {}]\n",
        picture("drawing", ""),
        picture("letter", ", publish = false"),
    );
    let sheet = |number: u32, pictures: &str, more: &str| {
        format!(
            "-- records/designs/1/impressions/{number}.toml\nstatus = \"untraced\"\n{more}\n\
             pictures = [{pictures}]\n"
        )
    };
    let dir = small::lay_down(&[
        &design,
        &sheet(1, &picture("recto", ""), ""),
        &sheet(2, &picture("hidden", ""), "publish = false"),
        &sheet(3, &picture("private", ""), "private = [\"pictures\"]"),
        &sheet(
            4,
            &picture("still-hidden", ""),
            "publish = false\nprivate = [\"publish\"]",
        ),
    ]);
    for name in [
        "drawing",
        "letter",
        "recto",
        "hidden",
        "private",
        "still-hidden",
    ] {
        photograph(dir.path(), &format!("{name}.png"), None);
    }
    dir
}

#[test]
fn photographs_of_what_is_not_published_never_reach_the_site() {
    let dir = secretive();
    let judged = prepare(dir.path());
    assert_eq!(told(&judged), Vec::<String>::new());
    let prepared: BTreeSet<_> = judged.prepared.keys().map(ToString::to_string).collect();
    let may = ["1.1/recto", "1/drawing"].map(str::to_owned);
    assert_eq!(prepared, BTreeSet::from(may));
    let (pulled, site) = judged.pull_site(&|_, _| {}).unwrap();
    let parts = pulled.parts(&site);
    assert_eq!(parts.pictures.len(), 2);
    let services: Vec<_> = parts.bundles.keys().map(String::as_str).collect();
    assert_eq!(services, ["picture/1.1/recto", "picture/1/drawing"]);
    let infos = parts
        .files
        .keys()
        .filter(|path| path.ends_with("info.json"));
    assert_eq!(infos.count(), 2);
}

#[test]
fn the_pictures_that_are_prepared_are_those_of_the_public_catalogue() {
    let dir = secretive();
    let catalogue = look(dir.path()).catalogue;
    let public = Public::from(&catalogue, "a private owner");
    let of = |pictures: Vec<_>| -> BTreeSet<String> {
        let keys = pictures.iter().map(|(key, _)| format!("{key}"));
        keys.collect()
    };
    let published = of(catalogue.published_pictures().collect());
    assert_eq!(published, of(public.pictures().collect()));
    assert_eq!(of(catalogue.pictures().collect()).len(), 6);
}
