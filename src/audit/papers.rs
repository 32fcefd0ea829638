//! Rules on the sheet of paper: larger than its frame or mount, and lines of a mould in paper that has none.

use crate::model::catalogue::Catalogue;
use crate::model::codes::Code;
use crate::model::finding::Finding;
use crate::study::Studies;
use crate::study::size_slip::contains;

/// The paper that shows no lines of its mould (docs/trade.md, "Paper").
const WITHOUT_LINES: &str = "wove-paper";

/// A sheet is larger than its frame or its mount.
pub(super) fn larger_than_frame(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let sheet = &impression.sheet;
        let Some(whole) = sheet.size.0.first().map(|size| &size.is) else {
            continue;
        };
        for (around, what) in [(&sheet.frame, "frame"), (&sheet.mount, "mount")] {
            let Some(around) = around.0.first().map(|size| &size.is) else {
                continue;
            };
            if contains(&around.value, &whole.value) {
                continue;
            }
            let message = format!(
                "the sheet of {} measures {} mm, its {what} {} mm",
                design.sheet_number(impression),
                whole.value,
                around.value
            );
            findings.push(
                Finding::new(Code::SheetLargerThanFrame, whole.place, message)
                    .saying("the sheet")
                    .beside(around.place, what)
                    .help("measure again; sizes are height before width, and those of a frame or mount are its outer edges"),
            );
        }
    }
}

/// Chain lines or laid lines were measured on wove paper.
pub(super) fn wove_with_lines(catalogue: &Catalogue, _: &Studies, findings: &mut Vec<Finding>) {
    for (design, impression) in catalogue.impressions() {
        let sheet = &impression.sheet;
        let paper = sheet.paper.as_ref();
        let Some(paper) = paper.filter(|paper| paper.value.as_str() == WITHOUT_LINES) else {
            continue;
        };
        let chain = sheet.chain_lines.as_ref();
        let laid = sheet.laid_lines.as_ref();
        for (lines, what) in [(chain, "chain lines"), (laid, "laid lines")] {
            let Some(lines) = lines else { continue };
            let message = format!(
                "{} is on wove paper, and has {what}",
                design.sheet_number(impression)
            );
            findings.push(
                Finding::new(Code::WoveWithLines, lines.place, message)
                    .saying("measured here")
                    .beside(paper.place, "the paper")
                    .help("look at the paper against the light: wove paper shows no lines; if it is laid, write `laid-paper`"),
            );
        }
    }
}
