//! The notes of headings: their texts (ECMA-376, part 1, 18.7), and the boxes in which they are shown.
//!
//! The boxes are in VML (ECMA-376, part 4, 19): spreadsheet programs show no note without one.

use super::MAIN;
use super::sheet::{Sheet, cell_name};
use crate::exchange::xml::Xml;

/// The part of the texts.
pub(super) fn texts(sheet: &Sheet, author: &str) -> Vec<u8> {
    let mut xml = Xml::document();
    xml.element("comments", &[("xmlns", MAIN)], |xml| {
        xml.element("authors", &[], |xml| xml.text("author", &[], author));
        xml.element("commentList", &[], |xml| {
            for (at, note) in noted(sheet) {
                let place = cell_name(at, 1);
                xml.element("comment", &[("ref", &place), ("authorId", "0")], |xml| {
                    xml.element("text", &[], |xml| {
                        xml.element("r", &[], |xml| {
                            xml.text("t", &[], note);
                        });
                    });
                });
            }
        });
    });
    xml.bytes()
}

/// The part of the boxes: 260 points wide, below the heading, hidden until one points at it.
pub(super) fn boxes(sheet: &Sheet) -> Vec<u8> {
    let mut xml = Xml::part();
    let spaces = [
        ("xmlns:v", "urn:schemas-microsoft-com:vml"),
        ("xmlns:o", "urn:schemas-microsoft-com:office:office"),
        ("xmlns:x", "urn:schemas-microsoft-com:office:excel"),
    ];
    xml.element("xml", &spaces, |xml| {
        let kind = [
            ("id", "note"),
            ("coordsize", "21600,21600"),
            ("o:spt", "202"),
            ("path", "m,l,21600r21600,l21600,xe"),
        ];
        xml.element("v:shapetype", &kind, |xml| {
            xml.element("v:stroke", &[("joinstyle", "miter")], |_| {});
            xml.element(
                "v:path",
                &[("gradientshapeok", "t"), ("o:connecttype", "rect")],
                |_| {},
            );
        });
        for (at, note) in noted(sheet) {
            let id = format!("note{at}");
            // Some 52 signs a line.
            let lines: usize = note.lines().map(|line| line.chars().count() / 52 + 1).sum();
            let height = 10 + 14 * lines;
            let style = format!(
                "position:absolute;width:260pt;height:{height}pt;z-index:1;visibility:hidden"
            );
            let shape = [
                ("id", id.as_str()),
                ("type", "#note"),
                ("style", &style),
                ("fillcolor", "#fffef5"),
                ("o:insetmode", "auto"),
            ];
            xml.element("v:shape", &shape, |xml| {
                xml.element("v:fill", &[("color2", "#fffef5")], |_| {});
                xml.element("v:path", &[("o:connecttype", "none")], |_| {});
                xml.element("v:textbox", &[("style", "mso-direction-alt:auto")], |_| {});
                xml.element("x:ClientData", &[("ObjectType", "Note")], |xml| {
                    xml.element("x:MoveWithCells", &[], |_| {});
                    xml.element("x:SizeWithCells", &[], |_| {});
                    let bottom = 2 + height / 18;
                    let (column, right) = (at + 1, at + 4);
                    let anchor = format!("{column}, 8, 1, 4, {right}, 8, {bottom}, 4");
                    xml.text("x:Anchor", &[], &anchor);
                    xml.text("x:AutoFill", &[], "False");
                    xml.text("x:Row", &[], "0");
                    xml.text("x:Column", &[], &at.to_string());
                });
            });
        }
    });
    xml.bytes()
}

/// The notes with their columns, from 0.
fn noted(sheet: &Sheet) -> impl Iterator<Item = (u32, &str)> {
    let columns = sheet.columns.iter().zip(0..);
    let noted = columns.filter(|(column, _)| !column.note.is_empty());
    noted.map(|(column, at)| (at, column.note.as_str()))
}
