//! One page before it is framed: address, titles, template and view.

use serde::Serialize;
use tera::Value;

use super::address::Address;

/// One page before it is framed.
pub(crate) struct Leaf {
    /// Its address.
    pub address: Address,
    /// Its title, for the browser.
    pub title: String,
    /// Its description in one sentence, for search results and previews.
    pub description: String,
    /// How it is cited: "CP 14.7"; `None` for pages about the whole.
    pub cited: Option<String>,
    /// The parts that have citations of their own, with their addresses: "CP 14 iii/v, https://…".
    pub cited_parts: Vec<String>,
    /// The address of the page that says the same, where this one only leads there.
    pub stands_at: Option<Address>,
    /// The template.
    pub template: &'static str,
    /// The data of the template.
    pub view: Value,
}

impl Leaf {
    /// A leaf whose template gets `view`.
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
            cited_parts: Vec::new(),
            stands_at: None,
            template,
            view: Value::from_serializable(view),
        }
    }

    /// The same with `text` as its description.
    pub fn described(mut self, text: String) -> Leaf {
        self.description = text;
        self
    }

    /// The same, as a page that only leads to `address`.
    pub fn standing_at(mut self, address: Address) -> Leaf {
        self.stands_at = Some(address);
        self
    }

    /// The same, cited as `text`.
    pub fn cited_as(mut self, text: String) -> Leaf {
        self.cited = Some(text);
        self
    }

    /// The same, with parts that have citations of their own.
    pub fn with_cited_parts(mut self, parts: Vec<String>) -> Leaf {
        self.cited_parts = parts;
        self
    }
}
