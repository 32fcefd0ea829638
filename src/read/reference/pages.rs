//! Ranges of pages; the last page is shortened by the rule of the Chicago Manual.

/// Page ranges as printed: "102–18" for "102--118".
///
/// Rule (The Chicago Manual of Style, 17th ed., 9.61): where the first number is below 100 or a multiple
/// of 100, the second keeps all digits; after 101 to 109, 201 to 209 … it keeps only the digits that
/// change; otherwise it keeps at least two digits. Ranges of anything but arabic numbers are printed in
/// full.
pub(super) fn pages(written: &str) -> String {
    let ranges = written.split(',').map(|range| {
        let range = range.trim();
        let (first, last) = match range.split_once(['-', '–', '—']) {
            Some((first, last)) => (first.trim(), last.trim_start_matches('-').trim()),
            None => return range.to_owned(),
        };
        format!("{first}–{}", shortened(first, last))
    });
    ranges.collect::<Vec<_>>().join(", ")
}

/// The digits of `last` that are printed after `first`.
fn shortened<'l>(first: &str, last: &'l str) -> &'l str {
    let is_number = |text: &str| !text.is_empty() && text.bytes().all(|c| c.is_ascii_digit());
    let is_whole = !is_number(first)
        || !is_number(last)
        || first.len() != last.len()
        || first.len() < 3
        || first.ends_with("00");
    if is_whole {
        return last;
    }
    let same = first
        .bytes()
        .zip(last.bytes())
        .take_while(|(a, b)| a == b)
        .count();
    let is_low = first.as_bytes()[first.len() - 2] == b'0';
    let least = if is_low { 1 } else { 2 };
    &last[same.min(last.len() - least)..]
}
