//! Templates: the theme's pages and parts, and the filter that they may call.
//!
//! In: a theme and its words. Out: pages as text. Everything that templates print is escaped, except
//! [`CleanHtml`](crate::page::setting::html::CleanHtml). A theme that overrides a template may break
//! it: that is a [`ThemeFault`], worded for the author of the template.

use std::sync::Arc;

use tera::{Context, Kwargs, State, Tera, Value};

use super::html::CleanHtml;
use super::theme_fault::ThemeFault;
use super::words::{Argument, Words};
use crate::model::theme::Theme;

/// The templates of a theme, ready to be filled.
pub struct Templates(Tera);

impl Templates {
    /// Reads the theme's `pages/*.html` and `parts/*.html`.
    ///
    /// # Errors
    /// [`ThemeFault`] where one of them is not a valid template, or calls a part or filter that does not exist.
    pub fn new(theme: &Theme, words: &Arc<Words>) -> Result<Templates, ThemeFault> {
        let mut tera = Tera::default();
        let for_filter = Arc::clone(words);
        tera.register_filter("word", move |id: &str, given: Kwargs, _: &State<'_>| {
            word(&for_filter, id, &given)
        });
        let is_template = |path: &str| {
            (path.starts_with("pages/") || path.starts_with("parts/"))
                && std::path::Path::new(path)
                    .extension()
                    .is_some_and(|e| e == "html")
        };
        let mut templates = Vec::new();
        for path in theme.files.keys().filter(|path| is_template(path)) {
            let text = theme.text(path).ok_or_else(|| ThemeFault {
                file: path.clone(),
                line: 0,
                message: "the template is not UTF-8".to_owned(),
            })?;
            templates.push((path.as_str(), text));
        }
        tera.add_raw_templates(templates)
            .map_err(|error| fault(&error, "pages"))?;
        Ok(Templates(tera))
    }

    /// Fills a template.
    ///
    /// # Errors
    /// [`ThemeFault`] where the template uses a field that the page does not have.
    pub fn render(&self, template: &str, context: &Context) -> Result<String, ThemeFault> {
        self.0
            .render(template, context)
            .map_err(|error| fault(&error, template))
    }

    /// Fills a part with its data.
    ///
    /// # Errors
    /// [`ThemeFault`], as [`Templates::render`].
    pub(crate) fn part(&self, name: &str, context: &Context) -> Result<CleanHtml, ThemeFault> {
        self.0
            .render_component(name, context, None, true)
            .map(CleanHtml::trusted)
            .map_err(|error| fault(&error, name))
    }
}

/// The filter `word`: `{{ "designs" | word }}`, `{{ "count-impressions" | word(n = 3) }}`. With a clean
/// argument the result is clean; otherwise it is text and is escaped.
fn word(words: &Words, id: &str, given: &Kwargs) -> Value {
    let mut count = None;
    let mut texts = Vec::new();
    let mut clean = Vec::new();
    for (name, value) in given.iter() {
        let Some(name) = name.as_str() else { continue };
        if let Some(n) = value.as_u64() {
            count = Some(usize::try_from(n).unwrap_or(usize::MAX));
        } else if value.is_safe() {
            let html = value.as_str().unwrap_or_default().to_owned();
            clean.push((name, CleanHtml::trusted(html)));
        } else {
            texts.push((name, value.as_str().unwrap_or_default()));
        }
    }
    if count.is_none() && texts.is_empty() && clean.is_empty() {
        return Value::normal_string(words.word(id));
    }
    if clean.is_empty() {
        let mut given: Vec<_> = texts
            .into_iter()
            .map(|(name, text)| (name, Argument::Text(text)))
            .collect();
        given.extend(count.map(|n| ("n", Argument::Count(n))));
        return Value::normal_string(&words.with(id, &given));
    }
    clean.extend(
        texts
            .into_iter()
            .map(|(name, text)| (name, CleanHtml::text(text))),
    );
    let given: Vec<_> = clean.iter().map(|(name, html)| (*name, html)).collect();
    Value::safe_string(words.html(id, count, &given).as_str())
}

/// The template engine's error as file, line and message.
fn fault(error: &tera::Error, template: &str) -> ThemeFault {
    use tera::ErrorKind;
    let whole = |file: &str, message: String| ThemeFault {
        file: file.to_owned(),
        line: 0,
        message,
    };
    match error.kind() {
        ErrorKind::SyntaxError(report) | ErrorKind::RenderingError(report) => ThemeFault {
            file: report.filename().to_owned(),
            line: report.span().start_line,
            message: report.message().to_owned(),
        },
        ErrorKind::TemplateNotFound(name) => {
            whole(name, "the theme has no such template".to_owned())
        }
        ErrorKind::MissingParent { current, parent } => whole(
            current,
            format!("it extends `{parent}`, which the theme does not have"),
        ),
        ErrorKind::CircularExtend { tpl, .. } | ErrorKind::CircularInclude { tpl, .. } => {
            whole(tpl, "it leads back to itself".to_owned())
        }
        other => whole(template, other.to_string()),
    }
}
