//! The theme's own files: styles, scripts, drawings, and the style sheet of the block ink.

use crate::model::public::Public;
use crate::model::theme::Theme;
use crate::page::setting::ink;

/// The theme's files with its drawings in the block ink, and the style sheet of that ink, which
/// replaces any of the same name.
pub(super) fn assets(theme: &Theme, public: &Public) -> impl Iterator<Item = (String, Vec<u8>)> {
    const STYLE_SHEET: &str = "assets/ink.css";
    let ink = public.settings.ink;
    let own = theme
        .files
        .iter()
        .filter(|(path, _)| path.starts_with("assets/") && *path != STYLE_SHEET)
        .map(move |(path, content)| {
            let inked = match std::str::from_utf8(content) {
                Ok(svg) if path.ends_with(".svg") => ink::inked(svg, ink).into_bytes(),
                _ => content.to_vec(),
            };
            (path.clone(), inked)
        });
    let style_sheet = ink::style_sheet(ink).into_bytes();
    own.chain(std::iter::once((STYLE_SHEET.to_owned(), style_sheet)))
}
