//! Keyblock compiles plain TOML records with Markdown notes into the cross-linked web catalogue
//! raisonné of a printmaker.
#![forbid(unsafe_code)]

pub mod picture;
