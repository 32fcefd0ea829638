//! The pages at former addresses: each names the present one (canonical link, RFC 6596), leads there at once, and says so
//! with a link, for readers whose browsers do not follow.
//!
//! A browser that follows a refresh drops the part of the address after `#`, which citations of states and printings
//! have. The script of the page keeps it; without scripts the reader arrives at the head of the page.

use tera::Value;

use crate::page::setting::book::{Book, is_right_to_left};
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::theme_fault::ThemeFault;

/// The page at the former path `path` of the file of `leaf`. A page that only leads to another is passed over.
///
/// # Errors
/// [`ThemeFault`] where the template uses a field that the page does not have.
pub(super) fn write(leaf: &Leaf, path: &str, book: &Book<'_>) -> Result<String, ThemeFault> {
    let settings = &book.public.settings;
    let to = leaf.stands_at.as_ref().unwrap_or(&leaf.address);
    let root = "../".repeat(path.matches('/').count());
    let href = format!("{root}{to}");
    let title = CleanHtml::link(&href, &CleanHtml::text(&leaf.title));
    let mut context = tera::Context::new();
    let text = |text: &str| Value::normal_string(text);
    context.insert_value("root", text(&root));
    context.insert_value("href", text(&href));
    context.insert_value("language", text(&settings.language.value));
    let right_to_left = is_right_to_left(&settings.language.value);
    context.insert_value("right_to_left", Value::from(right_to_left));
    context.insert_value("canonical", text(&to.absolute(&settings.address.value)));
    context.insert_value("title", text(&leaf.title));
    let said = book.words.html("has-moved", None, &[("page", &title)]);
    context.insert_value("said", Value::from_serializable(&said));
    book.templates.render("pages/moved.html", &context)
}
