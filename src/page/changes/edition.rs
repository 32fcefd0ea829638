//! The page of an edition: what it changed, and how numbers and numerals read in it. The page is small and no copy of the
//! site: everything else that the edition said is kept with the records.

use serde::Serialize;

use super::account::{self, AccountView};
use super::then_and_now;
use super::wording::{self, Told};
use crate::model::register::IssuedEdition;
use crate::page::lists::table::Table;
use crate::page::phrases::dates;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::html::{CleanHtml, capitalised};
use crate::page::setting::leaf::Leaf;
use crate::study::issued::account::EditionAccount;

#[derive(Serialize)]
struct View {
    title: String,
    brief: CleanHtml,
    account: AccountView,
    then: Option<Table>,
    /// The edition before and the one after, and the page of all.
    ways: Vec<CleanHtml>,
}

/// The page of the edition at `place` in the register.
pub(crate) fn page(here: &Here<'_>, place: usize) -> Leaf {
    let words = here.words();
    let Some(editions) = &here.book.editions else {
        return Leaf::new(here.address, String::new(), "pages/edition.html", &());
    };
    let register = editions.register();
    let nothing = EditionAccount::default();
    let account = editions.accounts.get(place).unwrap_or(&nothing);
    let edition = register.editions.get(place);
    let name = edition.map_or_else(String::new, |edition| wording::edition_name(words, edition));
    let title = capitalised(&CleanHtml::text(&name)).plain();
    let dated = edition.map_or_else(CleanHtml::empty, |edition| {
        dates::once_html(&edition.dated.value, words)
    });
    let brief = if place == 0 {
        let added = wording::added(here, account);
        words.html(
            "edition-first",
            None,
            &[("date", &dated), ("added", &added)],
        )
    } else {
        words.html("edition-dated", None, &[("date", &dated)])
    };
    let told = Told {
        register,
        edition: place,
    };
    // Everything in the first edition was new.
    let shown = if place == 0 { &nothing } else { account };
    let heading = words.word("changes").to_owned();
    let view = View {
        account: account::view(here, told, shown, "edition", heading, Vec::new()),
        then: then_and_now::table(here, editions, place),
        ways: ways(here, &register.editions, place),
        title: title.clone(),
        brief: brief.clone(),
    };
    let described = format!("{title}. {}", brief.plain());
    Leaf::new(here.address, title, "pages/edition.html", &view).described(described)
}

fn ways(here: &Here<'_>, editions: &[IssuedEdition], place: usize) -> Vec<CleanHtml> {
    let to = |place: usize| {
        let edition = editions.get(place)?;
        let name = wording::edition_and_date(here.words(), edition);
        let name = capitalised(&CleanHtml::text(&name));
        Some(here.link(&Address::Edition(edition.key(place)), &name))
    };
    let before = place.checked_sub(1).and_then(to);
    let all = Address::Overview(Overview::Changes);
    let all = here.link(
        &all,
        &CleanHtml::text(here.words().word("changes-all-editions")),
    );
    before
        .into_iter()
        .chain(to(place + 1))
        .chain([all])
        .collect()
}
