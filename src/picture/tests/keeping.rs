//! The cache: a picture is made once, with the same bytes every time, and a partial file is never
//! used.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Mutex;

use super::samples::*;
use crate::{Fault, Plan, Prepared, Request, Store, check_all, prepare_all};

fn plan() -> Plan {
    Plan {
        widths: vec![60, 120, 240],
        quality: 80,
        largest: 1000,
        limits: crate::Limits {
            pixels: 1_000_000,
            ..crate::Limits::default()
        },
    }
}

/// A folder with a few photographs, and the requests for them.
fn photographs(dir: &Path) -> Vec<Request> {
    (1_u8..=6)
        .map(|number| {
            let source = dir.join(format!("{number}.jpg"));
            let picture = busy(100 + u32::from(number) * 30, 90, u32::from(number));
            fs::write(&source, oriented(&jpeg(&picture), number)).unwrap();
            Request {
                source,
                largest: None,
            }
        })
        .collect()
}

fn prepare_in(requests: &[Request], plan: &Plan, cache: &Path) -> Vec<Prepared> {
    prepare_all(requests, plan, &Store::at(cache), &|_, _| {})
        .into_iter()
        .map(Result::unwrap)
        .collect()
}

/// Every file of a folder by name.
fn contents(dir: &Path) -> BTreeMap<String, Vec<u8>> {
    fs::read_dir(dir)
        .unwrap()
        .map(|entry| {
            let entry = entry.unwrap();
            (
                entry.file_name().into_string().unwrap(),
                fs::read(entry.path()).unwrap(),
            )
        })
        .collect()
}

#[test]
fn a_second_run_makes_nothing() {
    let dir = tempfile::tempdir().unwrap();
    let cache = dir.path().join("cache");
    let requests = photographs(dir.path());
    let first = prepare_in(&requests, &plan(), &cache);
    assert!(first.iter().all(|prepared| prepared.made));
    let kept = contents(&cache);
    let second = prepare_in(&requests, &plan(), &cache);
    assert!(second.iter().all(|prepared| !prepared.made));
    assert_eq!(contents(&cache), kept);
    for (first, second) in first.iter().zip(&second) {
        assert_eq!(first.derivatives, second.derivatives);
        assert_eq!((first.width, first.colour), (second.width, second.colour));
    }
}

#[test]
fn a_moved_photograph_is_known_by_its_content() {
    let dir = tempfile::tempdir().unwrap();
    let requests = photographs(dir.path());
    let cache = dir.path().join("cache");
    prepare_in(&requests, &plan(), &cache);
    let moved = dir.path().join("renamed.jpg");
    fs::rename(&requests[0].source, &moved).unwrap();
    assert!(
        !prepare_in(
            &[Request {
                source: moved,
                largest: None
            }],
            &plan(),
            &cache
        )[0]
        .made
    );
}

#[test]
fn other_parameters_make_other_files() {
    let dir = tempfile::tempdir().unwrap();
    let requests = &photographs(dir.path())[..1];
    let cache = dir.path().join("cache");
    let name = |plan: &Plan| {
        prepare_in(requests, plan, &cache)[0].derivatives[0]
            .name
            .clone()
    };
    let first = name(&plan());
    assert_ne!(
        name(&Plan {
            quality: 81,
            ..plan()
        }),
        first
    );
    assert_ne!(
        name(&Plan {
            widths: vec![60, 120],
            ..plan()
        }),
        first
    );
    assert_ne!(
        name(&Plan {
            largest: 999,
            ..plan()
        }),
        first
    );
    // The order in which widths are listed does not matter.
    assert_eq!(
        name(&Plan {
            widths: vec![240, 60, 120, 60],
            ..plan()
        }),
        first
    );
}

#[test]
fn one_thread_and_two_give_the_same_bytes_in_the_same_order() {
    let dir = tempfile::tempdir().unwrap();
    let requests = photographs(dir.path());
    let run = |threads: usize| {
        let cache = dir.path().join(format!("cache-{threads}"));
        let pool = rayon::ThreadPoolBuilder::new()
            .num_threads(threads)
            .build()
            .unwrap();
        let prepared = pool.install(|| prepare_in(&requests, &plan(), &cache));
        let names: Vec<_> = prepared
            .iter()
            .flat_map(|prepared| prepared.derivatives.iter().map(|made| made.name.clone()))
            .collect();
        (names, contents(&cache))
    };
    assert_eq!(run(1), run(2));
}

#[test]
fn what_a_killed_run_left_is_made_again() {
    let dir = tempfile::tempdir().unwrap();
    let requests = &photographs(dir.path())[..1];
    let cache = dir.path().join("cache");
    let prepared = prepare_in(requests, &plan(), &cache).remove(0);
    let sound = contents(&cache);
    let file = prepared.derivatives[0].file.clone();
    let manifest: PathBuf = cache.join(
        sound
            .keys()
            .find(|name| Path::new(name).extension().unwrap() == "json")
            .unwrap(),
    );

    let shorten = |path: &Path| fs::write(path, &fs::read(path).unwrap()[..10]).unwrap();
    let damages: [&dyn Fn(); 5] = [
        &|| fs::remove_file(&manifest).unwrap(),
        &|| shorten(&manifest),
        &|| fs::write(&manifest, "{}").unwrap(),
        &|| fs::remove_file(&file).unwrap(),
        &|| shorten(&file),
    ];
    for damage in damages {
        damage();
        assert!(prepare_in(requests, &plan(), &cache)[0].made);
        assert_eq!(contents(&cache), sound);
    }
    // A file that was being written when the program was killed has another name and is never read.
    fs::write(file.with_extension("1-1.partial"), b"half").unwrap();
    assert!(!prepare_in(requests, &plan(), &cache)[0].made);
}

#[test]
fn neither_the_catalogue_nor_the_picture_is_exceeded() {
    let dir = tempfile::tempdir().unwrap();
    let source = dir.path().join("tall.jpg");
    fs::write(&source, jpeg(&busy(200, 400, 3))).unwrap();
    let longest = |catalogue: u32, own: Option<u32>| {
        let plan = Plan {
            largest: catalogue,
            ..plan()
        };
        let request = Request {
            source: source.clone(),
            largest: own,
        };
        let prepared = prepare_in(&[request], &plan, &dir.path().join("cache")).remove(0);
        assert_eq!((prepared.width, prepared.height), (200, 400));
        for made in &prepared.derivatives {
            let file = image::image_dimensions(&made.file).unwrap();
            assert_eq!(file, (made.width, made.height));
        }
        prepared
            .derivatives
            .iter()
            .map(|made| made.width.max(made.height))
            .max()
            .unwrap()
    };
    assert_eq!(longest(1000, None), 400);
    assert_eq!(longest(300, None), 300);
    assert_eq!(longest(300, Some(150)), 150);
    assert_eq!(longest(150, Some(300)), 150);
    assert_eq!(longest(1000, Some(0)), 1);
}

#[test]
fn a_limit_lowered_later_holds_for_kept_pictures() {
    let dir = tempfile::tempdir().unwrap();
    let requests = &photographs(dir.path())[..1];
    let cache = dir.path().join("cache");
    prepare_in(requests, &plan(), &cache);
    let mut strict = plan();
    strict.limits.pixels = 100;
    let result = prepare_all(requests, &strict, &Store::at(&cache), &|_, _| {}).remove(0);
    assert!(
        matches!(result, Err(Fault::TooManyPixels { limit: 100, .. })),
        "{result:?}"
    );
    let mut strict = plan();
    strict.limits.memory = 100;
    let result = prepare_all(requests, &strict, &Store::at(&cache), &|_, _| {}).remove(0);
    assert!(
        matches!(result, Err(Fault::TooMuchMemory { limit: 100, .. })),
        "{result:?}"
    );
}

#[test]
fn a_picture_asked_for_twice_is_made_once_and_faults_keep_their_place() {
    let dir = tempfile::tempdir().unwrap();
    let sound = photographs(dir.path()).remove(0);
    let broken = Request {
        source: dir.path().join("none.jpg"),
        largest: None,
    };
    let requests = [sound.clone(), broken, sound];
    let told = Mutex::new(Vec::new());
    let cache = dir.path().join("cache");
    let results = prepare_all(&requests, &plan(), &Store::at(&cache), &|done, of| {
        told.lock().unwrap().push((done, of));
    });
    assert_eq!(results[1], Err(Fault::Missing));
    assert_eq!(results[0], results[2]);
    assert!(results[0].as_ref().unwrap().made);
    let mut told = told.into_inner().unwrap();
    told.sort_unstable();
    assert_eq!(told, [(1, 3), (2, 3), (3, 3)]);
}

#[test]
fn a_cache_that_cannot_be_written_is_a_fault_of_the_disk() {
    let dir = tempfile::tempdir().unwrap();
    let requests = photographs(dir.path());
    let blocked = dir.path().join("1.jpg").join("cache");
    let results = prepare_all(&requests, &plan(), &Store::at(&blocked), &|_, _| {});
    assert_eq!(results.len(), requests.len());
    assert!(
        results
            .iter()
            .all(|result| result.as_ref().is_err_and(Fault::is_disk))
    );
    let Err(fault) = &results[0] else {
        unreachable!("every result is a fault")
    };
    let told = format!("{} cannot be written: ", blocked.display());
    assert!(fault.to_string().starts_with(&told), "{fault}");
}

#[test]
fn checking_judges_alike_and_writes_nothing() {
    let dir = tempfile::tempdir().unwrap();
    let cache = dir.path().join("cache");
    let mut requests = photographs(dir.path());
    let cut = dir.path().join("cut.jpg");
    fs::write(&cut, &jpeg(&busy(90, 90, 9))[..200]).unwrap();
    requests.push(Request {
        source: cut,
        largest: None,
    });
    let checked = check_all(&requests, &plan(), &Store::at(&cache), &|_, _| {});
    assert!(!cache.exists());
    let prepared = prepare_all(&requests, &plan(), &Store::at(&cache), &|_, _| {});
    let prepared: Vec<_> = prepared
        .into_iter()
        .map(|result| result.map(|prepared| prepared.colour))
        .collect();
    assert_eq!(checked, prepared);
    assert_eq!(checked.last(), Some(&Err(Fault::CutShort)));
    assert_eq!(
        check_all(&requests, &plan(), &Store::at(&cache), &|_, _| {}),
        prepared
    );
}
