//! Tests of the checker itself, on small sources.

use std::path::PathBuf;

use super::circles::circles;
use super::flow_faults;
use super::modules::{House, lines_for_tests};
use super::sources::{Crate, Texts};

/// A house of the files given, by path and text; `lib.rs` begins the package.
fn house(files: &[(&str, &str)]) -> House {
    let texts: Texts = files
        .iter()
        .map(|(path, text)| (PathBuf::from(path), (*text).to_owned()))
        .collect();
    let mut crates = vec![Crate {
        name: "keyblock".into(),
        root: "lib.rs".into(),
    }];
    if files.iter().any(|(path, _)| *path == "model/lib.rs") {
        crates.push(Crate {
            name: "keyblock_model".into(),
            root: "model/lib.rs".into(),
        });
    }
    House::of(&crates, &texts)
}

/// The faults of a `study` file with this text, in a house whose stages `read`, `model` and `study` have a
/// file each.
fn of_study(text: &str) -> Vec<String> {
    let files = [
        ("lib.rs", "pub mod model; pub mod read; pub mod study;"),
        ("model/mod.rs", "pub mod key;"),
        ("model/key.rs", "pub struct Key; pub struct Place;"),
        (
            "read/mod.rs",
            "pub mod walk; pub use crate::model::key::Key; pub fn load() {}",
        ),
        (
            "read/walk.rs",
            "pub struct Walk; pub mod deep { pub fn all() {} }",
        ),
        ("study/mod.rs", text),
    ];
    flow_faults(&house(&files))
}

/// The circles among files of `study`.
fn circles_of(files: &[(&str, &str)]) -> Vec<String> {
    let plan = [("lib.rs", "pub mod study;")];
    circles(&house(&[&plan, files].concat()).dependencies())
}

fn reaches(line: usize) -> Vec<String> {
    vec![format!("study/mod.rs:{line}: study reaches to read")]
}

#[test]
fn ok_a_stage_that_keeps_to_what_it_may_import() {
    assert_eq!(
        of_study("use crate::model::key::{Key, Place}; fn f(_: Key, _: Place) {}"),
        [""; 0]
    );
    assert_eq!(
        of_study("use std::fmt; use rayon::prelude::*; fn f(read: u8) -> u8 { read }"),
        [""; 0]
    );
    assert_eq!(
        of_study("/// See [`crate::read::walk`].\npub(in crate::study) fn f() {}"),
        [""; 0]
    );
}

#[test]
fn err_a_path_wherever_it_stands() {
    for text in [
        "\nuse crate::read::walk::Walk;",
        "\nuse crate::{model::key::Key, read::walk};",
        "\nuse crate::{\nmodel::key::Key as Name, read::{self, walk::Walk as W}};\nfn f(_: W) {}",
        "\nuse crate::read::*;",
        "\nuse super::read;",
        "\nfn f(_: &crate::read::walk::Walk) {}",
        "\nfn f() -> Vec<fn(crate::read::walk::Walk)> { vec![] }",
        "\nfn f() { crate::read::load(); }",
        "\nfn f() { super::read::load() }",
        "\nfn f() { let _ = vec![crate::read::load()]; }",
        "\nfn f() { println!(\"{}\", g(&[crate::read::walk::deep::all()])); }",
        "\n#[derive(Serialize)] struct S { #[serde(with = \"crate::read::walk\")] a: u8 }",
        "\nimpl Iterator for crate::read::walk::Walk {}",
        "\nfn f() { use crate::read::load; load() }",
        "\npub use crate::read::load;",
    ] {
        let told = of_study(text);
        assert!(!told.is_empty(), "{text}");
        let is_told =
            |told: &String| told.starts_with("study/mod.rs:") && told.ends_with("reaches to read");
        assert!(told.iter().all(is_told), "{text}: {told:?}");
    }
    assert_eq!(
        of_study("use crate::model;\n\nfn f(_: crate::read::walk::Walk) {}"),
        reaches(3)
    );
}

#[test]
fn err_what_another_stage_reexports() {
    // The item is defined in `model`, but the path to it goes through `read`.
    assert_eq!(of_study("\nuse crate::read::Key;"), reaches(2));
}

#[test]
fn tests_at_the_top_hide_nothing() {
    let text = "#[cfg(test)]\nmod tests { use crate::read::load; }\n\nuse crate::read::walk;";
    assert_eq!(of_study(text), reaches(4));
}

#[test]
fn tests_may_build_their_input_with_any_stage() {
    for text in [
        "#[cfg(test)] mod tests { use crate::read::load; fn f() { load() } }",
        "#[cfg(test)] mod tests;",
        "#[cfg(all(test, unix))] use crate::read::load;",
        "#[test] fn f() { crate::read::load() }",
        "struct S; impl S { #[cfg(test)] fn f() { crate::read::load() } }",
    ] {
        assert_eq!(of_study(text), [""; 0], "{text}");
    }
    assert_eq!(
        of_study("#[cfg(not(test))]\nuse crate::read::load;"),
        reaches(2)
    );
}

#[test]
fn a_stage_that_is_a_crate_counts_as_before() {
    let with_study = |text: &'static str| {
        let files = [
            (
                "lib.rs",
                "pub use keyblock_model as model; pub mod read; pub mod study;",
            ),
            ("model/lib.rs", "pub mod key; pub mod place;"),
            (
                "model/key.rs",
                "use crate::place::Place; pub struct Key(Place);",
            ),
            ("model/place.rs", "pub struct Place;"),
            (
                "read/mod.rs",
                "pub fn load() -> keyblock_model::key::Key { todo!() }",
            ),
            ("study/mod.rs", text),
        ];
        house(&files)
    };
    let ok = with_study(
        "use crate::model::key::Key; use keyblock_model::place::Place; struct S(Key, Place);",
    );
    assert_eq!(flow_faults(&ok), [""; 0]);
    assert_eq!(circles(&ok.dependencies()), [""; 0]);
    assert_eq!(flow_faults(&with_study("use crate::read::load;")).len(), 1);
    let ours = |file: &str| PathBuf::from(file);
    let dependencies = ok.dependencies();
    assert!(dependencies[&ours("model/key.rs")].contains_key(&ours("model/place.rs")));
}

#[test]
fn err_two_files_that_need_each_other() {
    let told = circles_of(&[
        ("study/mod.rs", "mod a; mod b;"),
        (
            "study/a.rs",
            "use super::b::B;\npub struct A;\nfn f(_: B) {}",
        ),
        (
            "study/b.rs",
            "pub struct B;\n\nfn f() -> super::a::A { todo!() }",
        ),
    ]);
    assert_eq!(
        told,
        ["2 files in a circle: study/a.rs, study/b.rs\
          \n  study/a.rs:1 uses study/b.rs\n  study/b.rs:3 uses study/a.rs"]
    );
}

#[test]
fn err_a_longer_circle_through_groups_and_macros() {
    let told = circles_of(&[
        ("study/mod.rs", "mod a; mod b; mod c;"),
        (
            "study/a.rs",
            "use crate::study::{b::{self, B}, c}; pub struct A; fn f() { b::g(); c::h(); }",
        ),
        (
            "study/b.rs",
            "pub struct B; pub fn g() { vec![crate::study::c::h()]; }",
        ),
        ("study/c.rs", "pub fn h() { format!(\"{}\", super::a::A); }"),
    ]);
    assert_eq!(told.len(), 1);
    assert!(told[0].starts_with("3 files in a circle: study/a.rs, study/b.rs, study/c.rs\n"));
}

#[test]
fn err_a_parent_that_uses_what_is_built_on_it() {
    let told = circles_of(&[
        (
            "study/mod.rs",
            "mod count; pub struct Rows; pub fn of() -> Rows { count::count() }",
        ),
        (
            "study/count.rs",
            "use super::Rows; pub fn count() -> Rows { Rows }",
        ),
    ]);
    assert_eq!(told.len(), 1);
}

#[test]
fn ok_a_parent_that_only_reexports() {
    let told = circles_of(&[
        (
            "study/mod.rs",
            "mod count; pub use count::count; pub struct Rows;",
        ),
        (
            "study/count.rs",
            "use super::Rows; pub fn count() -> Rows { Rows }",
        ),
    ]);
    assert_eq!(told, [""; 0]);
}

#[test]
fn what_is_reexport_is_of_the_file_that_defines_it() {
    // `b` names `A` by its parent, which has it from `a`; `a` needs `b`.
    let told = circles_of(&[
        ("study/mod.rs", "mod a; mod b; pub use a::A; pub use b::*;"),
        ("study/a.rs", "use super::B; pub struct A(B);"),
        ("study/b.rs", "pub struct B; pub fn f(_: super::A) {}"),
    ]);
    assert_eq!(told.len(), 1);
    assert!(told[0].contains("study/a.rs, study/b.rs"));
}

#[test]
fn what_is_reexported_by_its_full_path_is_found() {
    let told = circles_of(&[
        ("study/mod.rs", "mod a; mod b; pub use crate::study::a::A;"),
        (
            "study/a.rs",
            "pub struct A; fn f() { crate::study::b::g() }",
        ),
        ("study/b.rs", "pub fn g(_: crate::study::A) {}"),
    ]);
    assert_eq!(told.len(), 1);
    let own =
        "pub use crate::study::inner::A; mod inner { pub struct A; } fn f(_: crate::study::A) {}";
    assert_eq!(of_study(own), [""; 0]);
}

#[test]
fn ok_modules_of_one_file_tests_and_local_names() {
    let told = circles_of(&[
        (
            "study/mod.rs",
            "mod a; mod b; pub mod inner { pub struct I; }",
        ),
        (
            "study/a.rs",
            "use super::b; pub struct A; fn f(b: u8) { b::g(); mod_of(b) } fn mod_of(_: u8) {}",
        ),
        (
            "study/b.rs",
            "pub fn g() {} #[cfg(test)] mod tests { use crate::study::a::A; }",
        ),
    ]);
    assert_eq!(told, [""; 0]);
}

#[test]
fn lines_for_tests_are_counted_apart() {
    let text = "//! A file.\n\n#[cfg(test)]\nmod tests {\n    fn f() {}\n}\n\nfn g() {}\n";
    assert_eq!(lines_for_tests(text), 4);
}
