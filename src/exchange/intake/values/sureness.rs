//! How sure a column or a value is, as the settings files and reports say it.

use crate::model::certainty::Certainty;
use crate::model::words::closed_list;

closed_list! {
    /// How sure a column or a value is. The order is that of `values.toml`: what needs an editor first.
    Sureness {
        /// Nothing was understood.
        Unread = "unread",
        /// Possible.
        Possible = "possible",
        /// Probable.
        Probable = "probable",
        /// An editor says so.
        ByHand = "by-hand",
        /// Certain.
        Certain = "certain",
    }
}

impl Sureness {
    /// How sure a reading of the program is.
    pub fn of(certainty: Option<Certainty>) -> Sureness {
        match certainty {
            None => Sureness::Unread,
            Some(Certainty::Possible) => Sureness::Possible,
            Some(Certainty::Probable) => Sureness::Probable,
            Some(Certainty::Certain) => Sureness::Certain,
        }
    }

    /// How sure that is; an editor's word is certain.
    pub fn certainty(self) -> Option<Certainty> {
        match self {
            Sureness::Unread => None,
            Sureness::Possible => Some(Certainty::Possible),
            Sureness::Probable => Some(Certainty::Probable),
            Sureness::ByHand | Sureness::Certain => Some(Certainty::Certain),
        }
    }
}
