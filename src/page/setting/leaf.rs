//! One page, ready to be framed: its address, its titles, its template and what the template is told.

use serde::Serialize;
use tera::Value;

use super::address::Address;

/// One page, ready to be framed and written.
pub(crate) struct Leaf {
    /// Where it stands.
    pub address: Address,
    /// Its title, for the browser.
    pub title: String,
    /// What it tells, in a sentence, for those who find it elsewhere.
    pub description: String,
    /// What is cited: "CP 14.7"; nothing for pages about the whole.
    pub cited: Option<String>,
    /// The template.
    pub template: &'static str,
    /// What the template is told.
    pub view: Value,
}

impl Leaf {
    /// A leaf with `view` as its template sees it.
    pub fn new<V: Serialize>(
        address: &Address,
        title: String,
        template: &'static str,
        view: &V,
    ) -> Leaf {
        Leaf {
            address: address.clone(),
            description: title.clone(),
            title,
            cited: None,
            template,
            view: Value::from_serializable(view),
        }
    }

    /// The same, described in `text`.
    pub fn described(mut self, text: String) -> Leaf {
        self.description = text;
        self
    }

    /// The same, cited as `text`.
    pub fn cited_as(mut self, text: String) -> Leaf {
        self.cited = Some(text);
        self
    }
}
