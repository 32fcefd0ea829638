//! What a cell says of a date: an act, of what it is the date, and when it was.

use crate::exchange::intake::reading::words::Span;
use crate::model::edtf::Date;
use crate::model::words::closed_list;

closed_list! {
    /// What happened.
    Act {
        /// The design was made; also where no verb is written.
        Created = "created",
        /// A printing was published.
        Published = "published",
        /// It was published for the first time.
        FirstPublished = "first-published",
        /// It was printed.
        Printed = "printed",
        /// It was printed again from the original matrix.
        Reprinted = "reprinted",
        /// It was reproduced by other means, or from a new matrix.
        Reproduced = "reproduced",
        /// It was made again in another size: another matrix.
        Enlarged = "enlarged",
        /// This one sheet was pulled.
        Pulled = "pulled",
    }
}

closed_list! {
    /// Of what a date is.
    DateOf {
        /// Of the design.
        Design = "design",
        /// Of a printing.
        Printing = "printing",
        /// Of the one sheet: when it was pulled.
        Sheet = "sheet",
        /// Of another version, on another matrix, which usually has an entry of its own.
        Version = "version",
    }
}

impl Act {
    /// Of what the date of such an act is. A date of printing in a listing is that of the printing to which the sheet
    /// belongs, not of the design (docs/trade.md, "What seems to date a sheet").
    #[must_use]
    pub fn date_of(self) -> DateOf {
        match self {
            Act::Created => DateOf::Design,
            Act::Published
            | Act::FirstPublished
            | Act::Printed
            | Act::Reprinted
            | Act::Reproduced => DateOf::Printing,
            Act::Enlarged => DateOf::Version,
            Act::Pulled => DateOf::Sheet,
        }
    }
}

/// When something was.
#[derive(Clone, Debug, PartialEq)]
pub enum When {
    /// At a date.
    Date(Date),
    /// The cell says that the date is not known.
    NotKnown,
    /// Later than the date before it: `1925, printed later`.
    Later,
}

impl When {
    /// The date, where there is one.
    #[must_use]
    pub fn date(&self) -> Option<&Date> {
        match self {
            When::Date(date) => Some(date),
            When::NotKnown | When::Later => None,
        }
    }
}

/// One statement of a cell of dates.
#[derive(Clone, Debug, PartialEq)]
pub struct DateStatement {
    /// What happened.
    pub act: Act,
    /// When.
    pub when: When,
    /// Where the time stands in the cell.
    pub at: Span,
}
