//! Names of blocks, plates, stones and screens, and the kind they share.

use crate::model::design::{Design, Matrix, MatrixKind};
use crate::model::key::Key;
use crate::page::setting::book::Here;
use crate::page::setting::words::Argument;

/// The kind that all matrices share.
pub(crate) fn one_kind(matrices: &[Matrix]) -> Option<MatrixKind> {
    let first = matrices.first()?.kind?;
    matrices
        .iter()
        .all(|m| m.kind == Some(first))
        .then_some(first)
}

/// The name of a matrix: "key block"; "block" where that is its key.
pub(crate) fn matrix_name(here: &Here<'_>, design: &Design, key: &Key) -> String {
    let name = key.as_str().replace('-', " ");
    let kind = design.matrix(key).and_then(|m| m.kind);
    match kind.map(|kind| here.words().listed("matrix", kind)) {
        Some(kind) if name == kind || name.ends_with(&format!(" {kind}")) => name,
        Some(kind) => here.words().with(
            "matrix-named",
            &[
                ("name", Argument::Text(&name)),
                ("kind", Argument::Text(kind)),
            ],
        ),
        None => name,
    }
}

impl Here<'_> {
    /// The name of a matrix, as [`matrix_name`].
    pub fn matrix_name(&self, design: &Design, key: &Key) -> String {
        matrix_name(self, design, key)
    }
}
