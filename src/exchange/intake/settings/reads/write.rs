//! Facts to a table of TOML.

use super::super::super::toml_text::text_value as quoted;
use super::super::text::{number, one_or_several};
use super::lengths::within;
use crate::exchange::intake::facts::{DatedAct, Facts, GivenSize};
use crate::exchange::intake::reading::dates::When;
use crate::exchange::intake::reading::states::CatalogueSaid;
use crate::model::edtf::Date;
use crate::model::key::Key;
use crate::model::words::ClosedList;
use crate::study::numerals::roman;

/// A table in braces that is being written.
#[derive(Default)]
struct Table(Vec<String>);

impl Table {
    fn put(&mut self, key: &str, value: impl AsRef<str>) {
        self.0.push(format!("{key} = {}", value.as_ref()));
    }

    fn text(&mut self, key: &str, text: Option<impl AsRef<str>>) {
        if let Some(text) = text {
            self.put(key, quoted(text.as_ref()));
        }
    }

    fn whole(&mut self, key: &str, number: Option<u32>) {
        if let Some(number) = number {
            self.put(key, number.to_string());
        }
    }

    fn flag(&mut self, key: &str, is_so: bool) {
        if is_so {
            self.put(key, "true");
        }
    }

    fn texts<T: AsRef<str>>(&mut self, key: &str, texts: &[T]) {
        if !texts.is_empty() {
            self.put(key, one_or_several(texts));
        }
    }

    fn finish(self) -> String {
        match self.0.as_slice() {
            [] => "{}".to_owned(),
            fields => format!("{{ {} }}", fields.join(", ")),
        }
    }
}

/// The facts of a value as a table in braces; `text` is the value.
pub(in super::super) fn written(facts: &Facts, text: &str) -> String {
    let mut table = Table::default();
    if let Some(title) = &facts.title {
        table.put("title", quoted(&title.text));
        table.flag("supplied", title.is_supplied);
    }
    for same in facts.dates.chunk_by(|a, b| a.act == b.act) {
        let whens: Vec<&str> = same.iter().map(|dated| when(dated)).collect();
        table.texts(same[0].act.word(), &whens);
    }
    for same in facts.sizes.chunk_by(|a, b| a.of == b.of) {
        let sizes: Vec<String> = same.iter().map(|given| size(given, text)).collect();
        let value = match sizes.as_slice() {
            [one] => one.clone(),
            sizes => format!("[{}]", sizes.join(", ")),
        };
        table.put(same[0].of.word(), value);
    }
    table.texts("technique", &keys(&facts.techniques));
    table.texts("paper", &keys(&facts.papers));
    table.whole("colours", facts.colours);
    table.whole("matrices", facts.matrices);
    table.text("numbering", facts.numbering.as_ref());
    table.whole("edition", facts.edition);
    table.text("kind", facts.kind.as_ref().map(Key::as_str));
    let makers = facts.makers.iter().map(|maker| {
        let mut table = Table::default();
        table.put("name", quoted(&maker.name));
        table.put("role", quoted(maker.role.as_str()));
        table.finish()
    });
    tables(&mut table, "makers", &makers.collect::<Vec<_>>());
    let credit = facts.credit();
    table.text("how", credit.how.as_ref().map(Key::as_str));
    table.text("from", credit.from.as_ref());
    table.text("through", credit.through.as_ref());
    table.whole("year", credit.year);
    table.flag("joint", credit.is_joint);
    let references = facts.references.iter().map(|said| reference(said));
    tables(&mut table, "catalogues", &references.collect::<Vec<_>>());
    table.text("holder", facts.holder.as_ref().map(Key::as_str));
    table.text("series", facts.series.as_ref().map(Key::as_str));
    table.text("seen", facts.seen.as_deref().map(Date::as_str));
    table.text("seen_by", facts.seen_by.as_ref().map(Key::as_str));
    table.text("basis", facts.basis.map(ClosedList::word));
    table.text("web", facts.web.as_ref());
    table.text("rights", facts.rights.as_ref());
    table.finish()
}

fn tables(table: &mut Table, key: &str, rows: &[String]) {
    if !rows.is_empty() {
        table.put(key, format!("[{}]", rows.join(", ")));
    }
}

fn keys(keys: &[Key]) -> Vec<&str> {
    keys.iter().map(Key::as_str).collect()
}

fn when(dated: &DatedAct) -> &str {
    match &dated.when {
        When::Date(date) => date.as_str(),
        When::NotKnown => super::shapes::NOT_KNOWN,
        When::Later => super::shapes::LATER,
    }
}

#[expect(
    clippy::float_cmp,
    reason = "the tolerance is left out only where reading gives exactly the same"
)]
fn size(given: &GivenSize, text: &str) -> String {
    let (height, width) = (number(given.height.mm), number(given.width.mm));
    let lengths = format!("[{height}, {width}]");
    let (high, wide) = (given.height.tolerance_mm, given.width.tolerance_mm);
    let is_plain = high == within(&height) && wide == within(&width);
    let is_all_said = given.said == text.trim();
    if is_plain && is_all_said && !given.is_sight {
        return lengths;
    }
    let mut table = Table::default();
    table.put("size", lengths);
    if !is_plain {
        let within = if high == wide {
            number(high)
        } else {
            format!("[{}, {}]", number(high), number(wide))
        };
        table.put("within", within);
    }
    table.flag("sight", given.is_sight);
    if !is_all_said {
        table.put("said", quoted(&given.said));
    }
    table.finish()
}

fn reference(said: &CatalogueSaid) -> String {
    let mut table = Table::default();
    table.text("after", said.author.as_ref());
    table.text("number", said.number.as_ref());
    if let Some(state) = &said.state {
        let states: Vec<String> = state.states.iter().map(|state| roman(*state)).collect();
        let has_more = state.of.is_some() || state.printing.is_some() || state.remark.is_some();
        if !states.is_empty() || !has_more {
            table.put("state", quoted(&states.join(" or ")));
        }
        table.whole("of", state.of);
        table.text("printing", state.printing.as_ref());
        table.text("remark", state.remark.map(ClosedList::word));
    }
    table.flag("not_in", said.is_not_in);
    table.finish()
}
