//! Numbers with their nouns.

/// "1 design", "2 designs".
pub(super) fn counted(n: usize, one: &str, many: &str) -> String {
    format!("{n} {}", if n == 1 { one } else { many })
}
