//! The texts and references of every record, and references to nothing.
//!
//! Reading order: [`renewed`] puts present keys in place of former ones; [`occurrences`] walks a record along its declared keys, once as recorded and once
//! without its [`private`] fields; [`note`] does the same for Markdown; [`resolve`] reports references
//! to nothing, except those that [`echoes`] leaves out because their target was not read. [`content`] gives the digest
//! of each key of a record.

pub(crate) mod content;
pub(crate) mod echoes;
pub(crate) mod note;
pub(crate) mod occurrences;
pub(crate) mod private;
pub(crate) mod renewed;
pub(crate) mod resolve;
pub(crate) mod withheld;
