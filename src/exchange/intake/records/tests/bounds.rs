//! What is refused, and what is bounded.

use std::fmt::Write as _;

use super::*;
use crate::exchange::intake::records::limits::{COLUMNS, DEPTH, FILE_BYTES, RECORD_NODES};

const LIDO: &str = "xmlns='http://www.lido-schema.org'";

fn refused(file: &str) -> String {
    let fault = open::tables(file.as_bytes()).unwrap_err();
    assert!(!fault.help().is_empty());
    fault.message()
}

#[test]
fn other_documents_and_broken_ones_are_refused_with_their_record() {
    for (file, message) in [
        (
            "<!DOCTYPE lido [<!ENTITY a 'aaaa'>]><lido>&a;</lido>".to_owned(),
            "the XML in the file declares entities, which are not read",
        ),
        (
            "<?xml version='1.0'?><html><body/></html>".to_owned(),
            "the file is XML and no LIDO, which is not read",
        ),
        (
            r#"{"type":"Person","_label":"Ada Brook"}"#.to_owned(),
            "the file is JSON without records of Linked Art or IIIF manifests, which is not read",
        ),
        (
            r#"{"type":"Collection","items":[{"type":"Manifest","id":"https://example.org/m"}]}"#
                .to_owned(),
            "the file names 1 records by their addresses and holds none of them",
        ),
        (
            format!(
                "<lidoWrap {LIDO}><lido><lidoRecID>1</lidoRecID></lido><lido><lidoRecID>2</lido"
            ),
            "record 2 cannot be read: it is no sound XML, or longer than it may be",
        ),
        (
            format!("<lidoWrap {LIDO}><lido><lidoRecID>1</lidoRecID></lido><lido><lidoRecID>2"),
            "record 2 cannot be read: the file ends before its last element does",
        ),
        (
            "[{\"type\":\"HumanMadeObject\",\"id\":\"1\",\"x\":1},\n{\"type\":".to_owned(),
            "record 2 (line 2) cannot be read: the file ends before its last object does",
        ),
        (
            "[{\"type\":\"HumanMadeObject\",\"x\":1},\n{\"type\"=2}]".to_owned(),
            "record 2 (line 2) cannot be read: it is no sound JSON, or nested too deeply",
        ),
        (
            format!("<lidoWrap {LIDO}></lidoWrap>"),
            "the file has no cells and no records",
        ),
    ] {
        assert_eq!(refused(&file), message, "{file}");
    }
}

/// A table may begin with a bracket, or with a text in angle brackets.
#[test]
fn tables_that_look_like_records_stay_tables() {
    for file in [
        "[Untitled],etching\n[Lock],woodcut\n",
        "<none>;a\n1;2\n",
        "{x},b\n1,2\n",
    ] {
        let table = one(file.as_bytes());
        assert_eq!(
            (table.kind, table.rows().len()),
            (TableKind::Sheet, 1),
            "{file}"
        );
    }
}

#[test]
fn what_is_too_deep_or_too_large_is_refused() {
    let deep = format!("<lido {LIDO}>{}", "<place>".repeat(DEPTH));
    assert_eq!(
        refused(&deep),
        "the depth of the elements is larger than the 64 levels that are read"
    );
    let deep = r#"{"part":"#.repeat(DEPTH + 2);
    assert_eq!(
        refused(&deep),
        "the depth of the objects is larger than the 64 levels that are read"
    );
    let lists = format!(
        r#"{{"type":"HumanMadeObject","part":{}"#,
        "[".repeat(100_000)
    );
    assert!(refused(&lists).starts_with("record 1 (line 1) cannot be read"));
    let wide = format!(
        r#"{{"type":"HumanMadeObject","part":[{}0]}}"#,
        "0,".repeat(RECORD_NODES)
    );
    assert_eq!(
        refused(&wide),
        "a record is larger than the 100000 elements that are read"
    );
    let wide = format!("<lido {LIDO}>{}</lido>", "<a/>".repeat(RECORD_NODES + 1));
    assert_eq!(
        refused(&wide),
        "a record is larger than the 100000 elements that are read"
    );
    let long = format!("<lido {LIDO}><term>{}</term></lido>", "a".repeat(5 << 20));
    assert_eq!(
        refused(&long),
        "record 1 cannot be read: it is no sound XML, or longer than it may be"
    );
    let parts = format!(
        "<lido {LIDO}>{}</lido>",
        format!("<term>{}</term>", "a".repeat(1 << 20)).repeat(5)
    );
    assert_eq!(
        refused(&parts),
        "a record is larger than the 4194304 bytes that are read"
    );
    let long = format!(
        r#"{{"type":"HumanMadeObject","_label":"{}"}}"#,
        "\\n".repeat(3 << 20)
    );
    assert_eq!(
        refused(&long),
        "a record is larger than the 4194304 bytes that are read"
    );
    let mut file = b"<lido>".to_vec();
    file.resize(usize::try_from(FILE_BYTES).unwrap() + 1, b' ');
    assert!(matches!(
        open::tables(&file),
        Err(TableFault::TooLarge {
            what: "the file",
            ..
        })
    ));
}

/// Records with ever new paths: the commonest have columns, the rest stands in the last one. Nothing is lost.
#[test]
fn countless_paths_share_the_last_column() {
    let mut file = format!("<lidoWrap {LIDO}>");
    for record in 0..500 {
        write!(
            file,
            "<lido><lidoRecID>r{record}</lidoRecID><own{record}>t{record}</own{record}></lido>"
        )
        .unwrap();
    }
    file.push_str("</lidoWrap>");
    let table = one(file.as_bytes());
    assert_eq!(table.width(), COLUMNS);
    let headings: Vec<&str> = table.heading().collect();
    assert_eq!(
        (headings[0], headings[1], headings[COLUMNS - 1]),
        ("lidoRecID", "own0", "further")
    );
    let last = table.rows().last().unwrap();
    assert_eq!(
        (last.cell(0), last.cell(COLUMNS - 1)),
        ("r499", "own499: t499")
    );
    let moved = u32::try_from(501 - (COLUMNS - 1)).unwrap();
    assert_eq!(
        table.notes,
        [TableNote::Records(RecordNote::Further { paths: moved })]
    );
}

/// As many records as a large house has; the order of columns is that of the first records.
#[test]
fn many_records_make_many_rows() {
    let mut file = format!("<lidoWrap {LIDO}>");
    for record in 0..20_000 {
        write!(
            file,
            "<lido><lidoRecID>r{record}</lidoRecID><descriptiveMetadata xml:lang='de'><titleWrap><titleSet><appellationValue>T {record}</appellationValue></titleSet></titleWrap>\
             <repositoryWrap><repositorySet><workID>W{record}</workID></repositorySet></repositoryWrap></descriptiveMetadata></lido>"
        )
        .unwrap();
    }
    file.push_str("</lidoWrap>");
    let table = one(file.as_bytes());
    assert_eq!(table.rows().len(), 20_000);
    let last: Vec<&str> = table.rows().last().unwrap().cells().collect();
    assert_eq!(
        last,
        [
            "r19999",
            "T 19999",
            "W19999",
            "descriptiveMetadata@lang: de"
        ]
    );
}
