//! The arguments of `add`: a kind of record, what names it, and what is known of it.

use std::path::{Path, PathBuf};

use crate::cli::voice::Remedy;
use crate::model::key::Key;

/// The arguments of `add`.
#[derive(Debug, clap::Args)]
pub(in crate::cli) struct AddArguments {
    /// What to add.
    #[command(subcommand)]
    pub(super) what: Added,
}

#[derive(Debug, clap::Subcommand)]
pub(super) enum Added {
    /// The next impression of a design
    #[command(
        after_help = "For example\n  keyblock add impression 14 --holder harbour-museum --accession 1962.44"
    )]
    Impression {
        /// The design: its key, or the number that readers see
        design: String,
        /// Who keeps it: a holder's key
        #[arg(long, value_name = "KEY")]
        holder: Option<String>,
        /// Its accession number
        #[arg(long, value_name = "NUMBER")]
        accession: Option<String>,
        /// Where it stands: located (where a holder is named), untraced, destroyed, stolen
        #[arg(long, value_name = "WORD")]
        status: Option<String>,
        /// What it is: a key of the vocabulary of kinds, such as edition or trial-proof
        #[arg(long, value_name = "KEY")]
        kind: Option<String>,
        #[command(flatten)]
        folder: InFolder,
    },
    /// A design
    #[command(
        after_help = "For example\n  keyblock add design --title \"The Last Ferry\"\n  keyblock add design \"R 7\"\n  keyblock add design --title \"The Crane\" --series quays --position 3"
    )]
    Design {
        /// The number that readers see; the next whole number where none is named
        number: Option<String>,
        /// Its title
        #[arg(long, value_name = "TEXT")]
        title: Option<String>,
        /// When it was made (EDTF)
        #[arg(long, value_name = "DATE")]
        date: Option<String>,
        /// Keys of the vocabulary of techniques, joined by commas
        #[arg(long, value_name = "KEYS")]
        technique: Option<String>,
        /// The series that it belongs to: its key or title
        #[arg(long, value_name = "SERIES")]
        series: Option<String>,
        /// Its number in the series, as the series or a list gives it; it is never counted on
        #[arg(long, value_name = "NUMBER", requires = "series")]
        position: Option<String>,
        #[command(flatten)]
        folder: InFolder,
    },
    /// A museum, library, private owner or dealer
    #[command(
        after_help = "For example\n  keyblock add holder \"Harbour Museum\" --kind museum --place Northport --country NO"
    )]
    Holder {
        /// Its name
        name: String,
        /// What it is: museum, library, archive, foundation, private, trade, unknown
        #[arg(long, value_name = "WORD")]
        kind: Option<String>,
        /// The town
        #[arg(long, value_name = "TEXT")]
        place: Option<String>,
        /// The country: two capital letters (ISO 3166-1)
        #[arg(long, value_name = "CODE")]
        country: Option<String>,
        #[command(flatten)]
        named: OwnKey,
        #[command(flatten)]
        folder: InFolder,
    },
    /// A person or workshop
    #[command(
        after_help = "For example\n  keyblock add person \"Ada Willem\" --roles printer,publisher"
    )]
    Person {
        /// The name
        name: String,
        /// Keys of the vocabulary of roles, joined by commas
        #[arg(long, value_name = "KEYS")]
        roles: Option<String>,
        /// When they were born (EDTF)
        #[arg(long, value_name = "DATE")]
        born: Option<String>,
        /// When they died (EDTF)
        #[arg(long, value_name = "DATE")]
        died: Option<String>,
        #[command(flatten)]
        named: OwnKey,
        #[command(flatten)]
        folder: InFolder,
    },
    /// A letter, ledger, contract or other document
    #[command(
        after_help = "For example\n  keyblock add document \"Letter on the second edition\" --kind letter --date 1931-05-12"
    )]
    Document {
        /// Its title
        title: String,
        /// What it is: a key of the vocabulary of documents, such as letter or ledger
        #[arg(long, value_name = "KEY")]
        kind: Option<String>,
        /// When it was written (EDTF)
        #[arg(long, value_name = "DATE")]
        date: Option<String>,
        /// Who keeps it: a holder's key
        #[arg(long, value_name = "KEY")]
        holder: Option<String>,
        /// Where it stands there
        #[arg(long, value_name = "TEXT")]
        shelfmark: Option<String>,
        #[command(flatten)]
        named: OwnKey,
        #[command(flatten)]
        folder: InFolder,
    },
    /// A seal, stamp or collector's mark that several sheets share
    #[command(
        after_help = "For example\n  keyblock add mark studio-seal --kind seal --text \"AP in a square\""
    )]
    Mark {
        /// Its key, or a name from which the key is made
        name: String,
        /// What it is: signature, stamp, seal, collector, inscription
        #[arg(long, value_name = "WORD")]
        kind: Option<String>,
        /// Its words
        #[arg(long, value_name = "TEXT")]
        text: Option<String>,
        #[command(flatten)]
        folder: InFolder,
    },
    /// A series: a portfolio, parts, a set, an album, or prints that belong together
    #[command(
        after_help = "For example\n  keyblock add series \"Estuary Weather\" --issued portfolio --date 1931"
    )]
    Series {
        /// Its title
        title: String,
        /// How it was published: portfolio, parts, set, album
        #[arg(long, value_name = "WORD")]
        issued: Option<String>,
        /// When it was published, or its prints were made (EDTF)
        #[arg(long, value_name = "DATE")]
        date: Option<String>,
        /// Who published it: the key of a person or a holder
        #[arg(long, value_name = "KEY")]
        publisher: Option<String>,
        #[command(flatten)]
        named: OwnKey,
        #[command(flatten)]
        folder: InFolder,
    },
}

/// Where to add it.
#[derive(Debug, clap::Args)]
pub(super) struct InFolder {
    /// The catalogue's folder; this folder, or the nearest catalogue above, where none is named
    #[arg(long = "in", value_name = "DIR")]
    dir: Option<PathBuf>,
}

/// The key, where the name shall not give it.
#[derive(Debug, clap::Args)]
pub(super) struct OwnKey {
    /// Its key, where it shall not be made from the name
    #[arg(long, value_name = "KEY", value_parser = own_key)]
    pub(super) key: Option<Key>,
}

fn own_key(text: &str) -> Result<Key, Remedy> {
    text.parse().map_err(|_| {
        Remedy(match Key::nearest_form(text) {
            Some(key) => format!("write `{key}`"),
            None => "keys are lower-case letters and digits, joined by single hyphens".to_owned(),
        })
    })
}

impl AddArguments {
    /// The catalogue's folder, where one is named.
    pub(in crate::cli) fn dir(&self) -> Option<&Path> {
        let (Added::Impression { folder, .. }
        | Added::Design { folder, .. }
        | Added::Holder { folder, .. }
        | Added::Person { folder, .. }
        | Added::Document { folder, .. }
        | Added::Mark { folder, .. }
        | Added::Series { folder, .. }) = &self.what;
        folder.dir.as_deref()
    }
}
