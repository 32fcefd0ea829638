//! What a cell says of states and of earlier catalogues.

use crate::model::words::closed_list;
use crate::study::numerals::roman;

closed_list! {
    /// What a state is said to be beside a number.
    StateRemark {
        /// The only state.
        Only = "only",
        /// Not in the catalogue.
        Undescribed = "undescribed",
        /// Between the two states named.
        Between = "between",
    }
}

/// A state as a cell says it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct SaidState {
    /// The states, from 1: several where the cell leaves it open ("ii or iii"), or names the neighbours.
    pub states: Vec<u32>,
    /// How many states there are said to be.
    pub of: Option<u32>,
    /// The printing within the state, `b` of `VII/b`.
    pub printing: Option<String>,
    /// What else is said.
    pub remark: Option<StateRemark>,
}

impl SaidState {
    /// The state in the way of catalogues: `ii/iii`, `ii or iii`, `only state`.
    #[must_use]
    pub fn written(&self) -> String {
        let states: Vec<String> = self.states.iter().map(|s| roman(*s)).collect();
        let mut text = match self.remark {
            Some(StateRemark::Only) => "only state".to_owned(),
            Some(StateRemark::Undescribed) => "undescribed".to_owned(),
            Some(StateRemark::Between) => format!("between {}", states.join(" and ")),
            None => states.join(" or "),
        };
        if let Some(of) = self.of {
            text.push('/');
            text.push_str(&roman(of));
        }
        if let Some(printing) = &self.printing {
            text.push('/');
            text.push_str(printing);
        }
        text
    }
}

/// A reference to an earlier catalogue, as a cell gives it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct CatalogueSaid {
    /// The author or the abbreviation of the catalogue, as written.
    pub author: Option<String>,
    /// The number in it.
    pub number: Option<String>,
    /// The state by it.
    pub state: Option<SaidState>,
    /// Whether the cell says that the catalogue does not have it.
    pub is_not_in: bool,
}
