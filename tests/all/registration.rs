//! Alignment: pairs of photographs with an exactly known map from one to the other, pairs of different designs,
//! points tied by hand, and files.
//!
//! `tests/pairs` draws them. The largest error allowed, at 1000 px, is 2 px for easy and middling pairs and 5 px
//! for hard ones; pairs of different designs must be refused (common practice, no source).

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Mutex;

use image::GrayImage;
use keyblock::model::boxes::PercentBox;
use keyblock::model::registration::{Homography, Refusal, Registration};
use keyblock::picture::align::{
    CacheAccess, Photograph, PhotographPair, Subject, align, align_all, align_by_hand,
};
use keyblock::picture::{Limits, Store};

use super::pairs::{Class, corner_error, pair, photograph};

fn aligned(registration: &Registration) -> Homography {
    match registration {
        Registration::Aligned(aligned) => aligned.matrix,
        other => panic!("{other:?}"),
    }
}

#[test]
fn impressions_of_one_design_lie_on_each_other() {
    for (class, seed, most) in [
        (Class::Easy, 301, 1.0),
        (Class::Medium, 302, 2.0),
        (Class::Hard, 303, 5.0),
    ] {
        let pair = pair(class, seed);
        let (reference, picture) = (Subject::new(&pair.reference), Subject::new(&pair.picture));
        let found = align(&reference, &picture);
        let error = corner_error(&pair, &aligned(&found));
        assert!(error < most, "{class:?}: {error} px");
        assert_eq!(found, align(&reference, &picture), "not the same twice");
    }
}

#[test]
fn different_designs_are_refused_even_with_one_border_and_title() {
    let reference = Subject::new(&photograph(Class::Easy, 310, Some(9)));
    for (seed, series) in [(311, Some(9)), (312, None)] {
        let other = Subject::new(&photograph(Class::Easy, seed, series));
        let found = align(&reference, &other);
        assert!(
            matches!(found, Registration::Refused(_)),
            "{seed}: {found:?}"
        );
    }
}

#[test]
fn a_blank_back_has_nothing_to_compare() {
    let front = Subject::new(&photograph(Class::Easy, 313, None));
    let back = Subject::new(&GrayImage::from_pixel(1000, 740, image::Luma([221])));
    let Registration::Refused(refused) = align(&front, &back) else {
        panic!("a blank back was aligned");
    };
    assert_eq!(refused.why, Refusal::LittleToCompare);
}

#[test]
fn ties_decide_and_ties_that_lie_are_refused() {
    let pair = pair(Class::Medium, 314);
    let (reference, picture) = (Subject::new(&pair.reference), Subject::new(&pair.picture));
    let places = [
        (200.0, 180.0),
        (800.0, 190.0),
        (790.0, 560.0),
        (210.0, 550.0),
    ];
    let miss = [1.5, -2.0, 1.0, -1.0];
    let tie = |shift: f64| -> Vec<[(f64, f64); 2]> {
        places
            .iter()
            .zip(miss)
            .map(|(&(x, y), miss)| {
                let (u, v) = pair.truth.apply(x, y).unwrap();
                [(x + miss + shift, y - miss), (u, v)]
            })
            .collect()
    };
    let Registration::Aligned(by_hand) = align_by_hand(&reference, &picture, &tie(0.0)) else {
        panic!("good ties refused");
    };
    assert!(by_hand.by_hand);
    assert!(corner_error(&pair, &by_hand.matrix) < 2.0);
    let Registration::Refused(refused) = align_by_hand(&reference, &picture, &tie(90.0)) else {
        panic!("ties to the wrong place accepted");
    };
    assert_eq!(refused.why, Refusal::TiesDisagree);
}

/// A pair as files: the reference as it is; the picture mirrored, on the right half of a sheet twice as
/// wide.
fn as_files(folder: &Path) -> (PhotographPair, Homography) {
    let pair = pair(Class::Easy, 315);
    let (width, height) = pair.picture.dimensions();
    let mirrored = image::imageops::flip_horizontal(&pair.picture);
    let mut sheet = GrayImage::from_pixel(2 * width, height, image::Luma([128]));
    image::imageops::replace(&mut sheet, &mirrored, i64::from(width), 0);
    let save = |name: &str, picture: &GrayImage| -> PathBuf {
        let file = folder.join(name);
        picture.save(&file).unwrap();
        file
    };
    let photograph = |source, area, mirrored| Photograph {
        source,
        area,
        mirrored,
    };
    // A pixel of the sheet, mirrored back on its half, is a pixel of the picture.
    let to_picture = [
        -1.0,
        0.0,
        f64::from(2 * width) - 1.0,
        0.0,
        1.0,
        0.0,
        0.0,
        0.0,
        1.0,
    ];
    let truth = Homography::new(to_picture)
        .unwrap()
        .then(&pair.truth)
        .unwrap();
    let half = PercentBox::new(50.0, 0.0, 50.0, 100.0).unwrap();
    let asked = PhotographPair {
        reference: photograph(save("reference.png", &pair.reference), None, false),
        picture: photograph(save("sheet.png", &sheet), Some(half), true),
        ties: Vec::new(),
    };
    (asked, truth)
}

#[test]
fn a_mirrored_image_on_an_uncut_sheet_is_found_and_kept() {
    let folder = tempfile::tempdir().unwrap();
    let (asked, truth) = as_files(folder.path());
    let same = PhotographPair {
        picture: asked.reference.clone(),
        ..asked.clone()
    };
    let pairs = [asked, same];
    let cache = folder.path().join("cache");
    let (limits, store) = (Limits::default(), Store::at(&cache));
    let told = Mutex::new(Vec::new());
    let progress = |done, of| told.lock().unwrap().push((done, of));
    let looked = align_all(&pairs, limits, &store, CacheAccess::ReadOnly, &progress);
    assert!(!cache.exists(), "something was kept");
    assert_eq!(told.lock().unwrap().iter().max(), Some(&(2, 2)));
    assert_eq!(looked[1], Ok(Registration::Reference));
    let found = aligned(looked[0].as_ref().unwrap());
    for (x, y) in [
        (1100.0, 100.0),
        (1900.0, 100.0),
        (1500.0, 400.0),
        (1100.0, 600.0),
    ] {
        let ((u, v), (tu, tv)) = (found.apply(x, y).unwrap(), truth.apply(x, y).unwrap());
        let away = libm::hypot(u - tu, v - tv);
        assert!(away < 1.0, "{away} px at {x}, {y}");
    }

    let kept = align_all(&pairs, limits, &store, CacheAccess::ReadWrite, &|_, _| ());
    assert_eq!(kept, looked);
    let files: Vec<PathBuf> = fs::read_dir(&cache)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    assert_eq!(files.len(), 1, "{files:?}");
    // The kept result is used: a number changed in it comes back.
    let text = fs::read_to_string(&files[0]).unwrap();
    let (before, after) = text.split_once("\"confidence\":").unwrap();
    let rest = &after[after.find(',').unwrap()..];
    let half = 0.5_f64.to_bits();
    fs::write(&files[0], format!("{before}\"confidence\":{half}{rest}")).unwrap();
    let again = align_all(&pairs, limits, &store, CacheAccess::ReadOnly, &|_, _| ());
    match again[0] {
        Ok(Registration::Aligned(aligned)) => assert_eq!(aligned.confidence.to_bits(), half),
        ref other => panic!("{other:?}"),
    }
}
