//! The page of changes: what changed since the last edition, what that changed, and every edition.

use serde::Serialize;

use super::account::{self, AccountView};
use super::wording::{self, Told};
use crate::page::phrases::imprint;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::export_links::ExportLink;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;
use crate::page::texts::catalogue_pages;
use crate::page::texts::long_text::TextPart;
use crate::page::texts::markdown::{self, Placement};
use crate::study::issued::editions::Editions;

#[derive(Serialize)]
struct View {
    title: String,
    /// The catalogue's own text, before the theme's.
    text: Option<CleanHtml>,
    parts: Vec<TextPart>,
    accounts: Vec<AccountView>,
    /// Every edition, the latest first.
    editions: Vec<CleanHtml>,
    /// The feed.
    feed: Vec<ExportLink>,
}

/// The page of changes; before the first edition there is nothing to compare with.
pub(crate) fn page(here: &Here<'_>) -> Leaf {
    let words = here.words();
    let title = catalogue_pages::title(here.public(), words, Overview::Changes).to_owned();
    let own = catalogue_pages::opening(here.public(), Overview::Changes);
    let edition = imprint::edition(here.book);
    let current = if edition.is_empty() {
        words.word("changes-undated").to_owned()
    } else {
        words.with(
            "changes-current-text",
            &[("edition", Argument::Text(&edition))],
        )
    };
    let mut parts = vec![TextPart::new(
        here,
        "changes-current",
        &CleanHtml::text(&current),
    )];
    let editions = here.book.editions.as_ref();
    if editions.is_none() {
        parts.push(TextPart::of_word(here, "changes-later"));
    }
    let view = View {
        text: own.map(|page| markdown::html(&page.note.text, here, Placement::Page)),
        parts,
        accounts: editions.map_or_else(Vec::new, |editions| accounts(here, editions)),
        editions: editions.map_or_else(Vec::new, |editions| list(here, editions)),
        feed: here.export_links(),
        title: title.clone(),
    };
    Leaf::new(here.address, title, "pages/changes.html", &view)
}

/// What changed since the last edition, where something did, and what the last edition changed, where it was not the
/// first.
fn accounts(here: &Here<'_>, editions: &Editions<'_>) -> Vec<AccountView> {
    let words = here.words();
    let mut accounts = Vec::new();
    let Some((last, edition)) = editions.register().last() else {
        return accounts;
    };
    let name = wording::edition_name(words, edition);
    if !editions.since.is_empty() {
        let told = Told {
            register: &editions.next,
            edition: last + 1,
        };
        let heading = words.with("changes-since", &[("edition", Argument::Text(&name))]);
        let about = vec![CleanHtml::text(words.word("changes-since-text"))];
        accounts.push(account::view(
            here,
            told,
            &editions.since,
            "since",
            heading,
            about,
        ));
    }
    if last > 0
        && let Some(account) = editions.accounts.get(last)
    {
        let told = Told {
            register: editions.register(),
            edition: last,
        };
        let heading = words.with("changes-in", &[("edition", Argument::Text(&name))]);
        accounts.push(account::view(
            here,
            told,
            account,
            "latest",
            heading,
            Vec::new(),
        ));
    }
    accounts
}

fn list(here: &Here<'_>, editions: &Editions<'_>) -> Vec<CleanHtml> {
    let words = here.words();
    let lines = editions.latest_first().map(|(place, edition, account)| {
        let name = wording::edition_and_date(words, edition);
        let name = capitalised(&CleanHtml::text(&name));
        let link = here.link(&Address::Edition(edition.key(place)), &name);
        let added = wording::added(here, account);
        if added.is_empty() {
            link
        } else {
            let added = words.html("edition-added", None, &[("added", &added)]);
            link.then(": ").and(&added)
        }
    });
    lines.collect()
}
