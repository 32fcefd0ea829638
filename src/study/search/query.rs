//! A query without what stands before a number: the siglum of the catalogue, and words such as "no.".
//!
//! `find.js` does the same for the search in the browser, and `references.js` for references.

/// A query without the siglum and the words before its number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BareQuery<'q> {
    /// The parts that are left.
    pub parts: &'q [String],
    /// Whether the siglum stood before them.
    pub names_catalogue: bool,
}

/// Takes the siglum and words such as "no." off the head of a query, wherever something follows. All are parts as
/// [`super::words::number_parts`] gives them.
///
/// ```
/// # use keyblock::study::search::{query::bare, words::number_parts};
/// let query = number_parts("OP no. 7 iii");
/// let left = bare(&query, &number_parts("OP"), &["no".to_owned()]);
/// assert_eq!(left.parts, ["7", "iii"]);
/// assert!(left.names_catalogue);
/// ```
#[must_use]
pub fn bare<'q>(query: &'q [String], siglum: &[String], before: &[String]) -> BareQuery<'q> {
    let mut left = BareQuery {
        parts: query,
        names_catalogue: false,
    };
    loop {
        let parts = left.parts;
        let is_siglum =
            !siglum.is_empty() && parts.len() > siglum.len() && parts.starts_with(siglum);
        if is_siglum {
            left.parts = &parts[siglum.len()..];
            left.names_catalogue = true;
        } else if parts.len() > 1 && before.contains(&parts[0]) {
            left.parts = &parts[1..];
        } else {
            return left;
        }
    }
}
