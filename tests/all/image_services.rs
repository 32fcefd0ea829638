//! Image services: the files that the standard derives from `info.json` exist, and no others; no picture is
//! larger than it may be; changed pictures are written anew, and unchanged ones are not.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use image::{Rgb, RgbImage};
use keyblock::issue::publish;
use keyblock::picture::tiles;
use keyblock::press::{PictureWork, Pulled, judge};
use serde_json::Value;

use crate::program::files_below;
use crate::small;

/// IIIF Image API 3.0 and its Implementation Notes: the canonical paths of six pictures.
const IIIF_TILES: &str = include_str!("../checks/iiif_tiles.csv");

/// Source: `tests/checks/iiif_tiles.csv`, columns `image` and `path`. The viewer openseadragon 6.1.1 requests
/// the same tiles.
#[test]
fn files_stand_where_the_standard_puts_them() {
    let mut paths: BTreeMap<(u32, u32), BTreeSet<String>> = BTreeMap::new();
    for line in IIIF_TILES.lines().skip(2) {
        let (image, _) = line.split_once(',').unwrap();
        let (width, height) = image.split_once('x').unwrap();
        let path = line.rsplit_once("/0/default.jpg").unwrap().0;
        // The path is the last column but one; it is quoted where it holds a comma.
        let path = path
            .rsplit_once('"')
            .map_or_else(|| path.rsplit_once(',').unwrap().1, |(_, quoted)| quoted);
        let size = (width.parse().unwrap(), height.parse().unwrap());
        let path = format!("{path}/0/default.jpg");
        paths.entry(size).or_default().insert(path);
    }
    assert_eq!(paths.len(), 6);
    assert!(paths.values().map(BTreeSet::len).sum::<usize>() > 114);
    for (picture, expected) in paths {
        // The table gives each picture whole at every level.
        let factors = tiles::factors(picture).into_iter().rev();
        let wholes: Vec<_> = factors
            .map(|factor| tiles::reduced(picture, factor))
            .collect();
        let files = tiles::files(picture, &wholes);
        let ours: BTreeSet<_> = files.iter().map(|file| file.path.clone()).collect();
        assert_eq!(ours.len(), files.len(), "a path stands twice");
        assert_eq!(ours, expected, "{picture:?}");
    }
}

/// The files that a client derives from an `info.json`: path and size in px. Written from the standard, not
/// from the program's code: Image API 3.0, sections 4.8 and 5.3 to 5.5, and level 0 of its compliance document.
fn implied(info: &Value) -> BTreeMap<String, (u64, u64)> {
    let number = |value: &Value| value.as_u64().unwrap();
    let (width, height) = (number(&info["width"]), number(&info["height"]));
    let largest = match (info.get("maxWidth"), info.get("maxHeight")) {
        (Some(most_width), Some(most_height)) => (number(most_width), number(most_height)),
        (None, None) => (width, height),
        _ => panic!("{info}: each needs the other"),
    };
    assert!(largest.0 <= width && largest.1 <= height, "{info}");
    let mut files = BTreeMap::from([("full/max".to_owned(), largest)]);
    for size in info["sizes"].as_array().into_iter().flatten() {
        let (w, h) = (number(&size["width"]), number(&size["height"]));
        files.insert(format!("full/{w},{h}"), (w, h));
    }
    for set in info["tiles"].as_array().unwrap() {
        for factor in set["scaleFactors"].as_array().unwrap() {
            let (factor, side) = (number(factor), number(&set["width"]));
            for y in (0..height).step_by(usize::try_from(side * factor).unwrap()) {
                for x in (0..width).step_by(usize::try_from(side * factor).unwrap()) {
                    let w = (side * factor).min(width - x);
                    let h = (side * factor).min(height - y);
                    let size = (w.div_ceil(factor), h.div_ceil(factor));
                    let path = match (w == width && h == height, factor) {
                        (true, 1) => "full/max".to_owned(),
                        (true, _) => format!("full/{},{}", size.0, size.1),
                        (false, _) => format!("{x},{y},{w},{h}/{},{}", size.0, size.1),
                    };
                    files.insert(path, size);
                }
            }
        }
    }
    files
        .into_iter()
        .map(|(path, size)| (format!("{path}/0/default.jpg"), size))
        .collect()
}

/// A catalogue of one design with two sheets, of which the second has a picture that may not be larger
/// than 300 px, and the same photograph again.
fn catalogue() -> tempfile::TempDir {
    let dir = small::lay_down(&[
        "-- records/designs/1/design.toml\ntitles = [{ text = \"A Quay\" }]\n\
         pictures = [{ file = \"pictures/large.jpg\", name = \"drawing\", rights = \"CC0-1.0\" }]\n",
        "-- records/designs/1/impressions/1.toml\nstatus = \"untraced\"\n\
         pictures = [{ file = \"pictures/large.jpg\", rights = \"CC-BY-4.0\" }]\n",
        "-- records/designs/1/impressions/2.toml\nstatus = \"untraced\"\n\
         pictures = [{ file = \"pictures/large.jpg\", rights = \"On loan\", largest = 300 }]\n",
        "-- records/designs/1/impressions/3.toml\nstatus = \"untraced\"\n\
         pictures = [{ file = \"pictures/other.jpg\", rights = \"On loan\" }]\n",
        "-- records/designs/1/impressions/4.toml\nstatus = \"untraced\"\n\
         pictures = [{ file = \"pictures/wide.jpg\", rights = \"On loan\" }]\n",
    ]);
    photograph(dir.path(), "large.jpg", 1100, 600, 10);
    photograph(dir.path(), "other.jpg", 530, 40, 20);
    photograph(dir.path(), "wide.jpg", 2200, 60, 30);
    dir
}

fn photograph(dir: &Path, name: &str, width: u32, height: u32, shade: u32) {
    let path = dir.join("records/designs/1/pictures").join(name);
    fs::create_dir_all(path.parent().unwrap()).unwrap();
    let picture = RgbImage::from_fn(width, height, |x, y| {
        Rgb([shade, x % 200, y % 200].map(|value| u8::try_from(value).unwrap()))
    });
    picture.save(path).unwrap();
}

fn compiled(dir: &Path) -> Pulled {
    let judged = judge(dir, &PictureWork::Prepare(&|_, _| {}));
    assert_eq!(judged.tally().errors, 0, "{:?}", judged.findings);
    let (pulled, site) = judged.pull_site(&|_, _| {}).unwrap();
    publish(&pulled.parts(&site), &dir.join("web")).unwrap();
    pulled
}

fn info(service: &Path) -> Value {
    serde_json::from_slice(&fs::read(service.join("info.json")).unwrap()).unwrap()
}

#[test]
fn every_address_that_info_json_implies_is_a_file_of_that_size_and_no_other_file_is_there() {
    let dir = catalogue();
    compiled(dir.path());
    let web = dir.path().join("web");
    for (service, size) in [
        ("picture/1/drawing", (1100, 600)),
        ("picture/1.1/recto", (1100, 600)),
        ("picture/1.2/recto", (300, 164)),
        ("picture/1.3/recto", (530, 40)),
        ("picture/1.4/recto", (2200, 60)),
    ] {
        let folder = web.join(service);
        let info = info(&folder);
        assert_eq!(info["@context"], "http://iiif.io/api/image/3/context.json");
        assert_eq!(info["id"], format!("https://prints.example.org/{service}"));
        assert_eq!(info["type"], "ImageService3");
        assert_eq!(info["protocol"], "http://iiif.io/api/image");
        assert_eq!(info["profile"], "level0");
        assert_eq!(
            (&info["width"], &info["height"]),
            (&size.0.into(), &size.1.into())
        );
        let implied = implied(&info);
        let mut there: BTreeSet<PathBuf> = files_below(&folder).into_iter().collect();
        assert!(there.remove(&folder.join("info.json")));
        for (path, (width, height)) in implied {
            let file = folder.join(path);
            assert!(there.remove(&file), "{} is missing", file.display());
            let (w, h) = image::image_dimensions(&file).unwrap();
            assert_eq!(
                (u64::from(w), u64::from(h)),
                (width, height),
                "{}",
                file.display()
            );
        }
        assert!(there.is_empty(), "nobody can know of {there:?}");
    }
    // The widest is given whole no larger than pages offer it.
    assert_eq!(info(&web.join("picture/1.4/recto"))["maxWidth"], 1920);
    let rights = |service: &str| info(&web.join(service))["rights"].clone();
    let zero = "http://creativecommons.org/publicdomain/zero/1.0/";
    assert_eq!(rights("picture/1/drawing"), zero);
    let by = "http://creativecommons.org/licenses/by/4.0/";
    assert_eq!(rights("picture/1.1/recto"), by);
    assert_eq!(rights("picture/1.2/recto"), Value::Null);
}

#[test]
fn a_photograph_of_two_records_is_cut_once() {
    let dir = catalogue();
    compiled(dir.path());
    let kept = files_below(&dir.path().join(".keyblock/pictures"));
    let packs = kept
        .iter()
        .filter(|f| f.extension().is_some_and(|e| e == "tiles"));
    // The large one in two sizes, the wide one and the other.
    assert_eq!(packs.count(), 4);
}

#[cfg(unix)]
#[test]
fn a_photograph_changed_under_the_same_address_is_rewritten_and_the_others_are_left_alone() {
    use std::os::unix::fs::MetadataExt as _;
    let dir = catalogue();
    compiled(dir.path());
    let tile = |service: &str| {
        let web = dir.path().join("web").join(service);
        web.join("full/max/0/default.jpg")
    };
    let (changed, left) = (tile("picture/1.3/recto"), tile("picture/1.1/recto"));
    let before = fs::read(&changed).unwrap();
    let inode = fs::metadata(&left).unwrap().ino();
    photograph(dir.path(), "other.jpg", 530, 40, 90);
    compiled(dir.path());
    assert_ne!(fs::read(&changed).unwrap(), before);
    assert_eq!(fs::metadata(&left).unwrap().ino(), inode);
    // Where nothing changed, not even the folder is replaced.
    let folder = fs::metadata(dir.path().join("web")).unwrap().ino();
    assert_eq!(compiled(dir.path()).pictures_made(), 0);
    assert_eq!(fs::metadata(dir.path().join("web")).unwrap().ino(), folder);
}
