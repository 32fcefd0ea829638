//! What was understood of a row, in words.

use std::sync::Arc;

use super::reported::Reported;
use super::words::{act, measured};
use crate::exchange::intake::columns::Holds;
use crate::exchange::intake::facts::{Facts, GivenSize};
use crate::exchange::intake::reading::credit::Credit;
use crate::exchange::intake::reading::dates::When;
use crate::exchange::intake::reading::states::CatalogueSaid;
use crate::model::key::Key;
use crate::model::size::Mm;
use crate::model::vocabulary::List;
use crate::model::words::ClosedList as _;
use crate::page::dates;

/// One thing that was understood.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(super) struct Understood {
    /// What it is.
    pub label: String,
    /// What it says.
    pub text: String,
}

/// Everything that was understood of a row, in the order of an entry.
pub(super) fn understood(reported: &Reported<'_>, facts: &Facts) -> Vec<Understood> {
    let mut found = Vec::new();
    let mut add = |label: &str, text: String| {
        if !text.is_empty() {
            let label = label.to_owned();
            found.push(Understood { label, text });
        }
    };
    add("title", title(facts));
    add("number in this catalogue", own(facts));
    for said in &facts.references {
        add("earlier catalogue", reference(said));
    }
    for dated in &facts.dates {
        add(act(dated.act), when(reported, &dated.when));
    }
    add("made by", makers(reported, facts));
    add(
        "technique",
        terms(reported, List::Techniques, &facts.techniques),
    );
    add("paper", terms(reported, List::Papers, &facts.papers));
    add("printed", inks(facts));
    for size in &facts.sizes {
        add(measured(size.of), self::size(size));
    }
    let kinds: Vec<Key> = facts.kind.iter().cloned().collect();
    add("kind of impression", terms(reported, List::Kinds, &kinds));
    add("number", numbering(facts));
    add("acquired", credit(reported, facts.credit()));
    add("seen", sighting(reported, facts));
    add("own page", facts.web.clone().unwrap_or_default());
    add(
        "rights in the picture",
        facts.rights.clone().unwrap_or_default(),
    );
    for (holds, text) in facts.texts.iter() {
        // A holder that no record has stands among what was not understood.
        let is_told = [Holds::Unknown, Holds::Accession, Holds::Holder].contains(&holds);
        if !is_told {
            add(super::words::holds(holds), text.to_owned());
        }
    }
    found
}

/// The title, one that a cataloguer supplied in brackets.
pub(super) fn title(facts: &Facts) -> String {
    match &facts.title {
        Some(title) if title.is_supplied => format!("[{}]", title.text),
        Some(title) => title.text.clone(),
        None => String::new(),
    }
}

fn own(facts: &Facts) -> String {
    let own = &facts.own;
    let parts = [
        own.design.clone(),
        own.state.as_ref().map(|state| format!("state {state}")),
        own.printing
            .as_ref()
            .map(|printing| format!("printing {printing}")),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    parts.join(", ")
}

/// A number and a state in an earlier catalogue.
pub(super) fn reference(said: &CatalogueSaid) -> String {
    let state = said.state.as_ref().map(|state| {
        let written = state.written();
        if written.ends_with("state") || written == "undescribed" {
            written
        } else {
            format!("state {written}")
        }
    });
    let number = [said.author.clone(), said.number.clone()];
    let number: Vec<String> = number.into_iter().flatten().collect();
    let number = (!number.is_empty()).then(|| number.join(" "));
    let absent = said.is_not_in.then(|| "not in it".to_owned());
    let parts: Vec<String> = [number, state, absent].into_iter().flatten().collect();
    parts.join(", ")
}

/// When something was, in words.
pub(super) fn when(reported: &Reported<'_>, when: &When) -> String {
    match when {
        When::Date(date) => dates::once(date, reported.words),
        When::NotKnown => "not known, as the cell says".to_owned(),
        When::Later => "later".to_owned(),
    }
}

/// The terms of a vocabulary by their names.
pub(super) fn terms(reported: &Reported<'_>, list: List, keys: &[Key]) -> String {
    let name = |key: &Key| {
        let term = reported.catalogue.vocabularies.term(list, key.as_str());
        let label = term.and_then(|term| term.label("en"));
        label.unwrap_or(key.as_str()).to_owned()
    };
    let names: Vec<String> = keys.iter().map(name).collect();
    names.join(", ")
}

fn inks(facts: &Facts) -> String {
    let of = |count: Option<u32>, one: &str, many: &str| {
        count.map(|count| match count {
            1 => format!("1 {one}"),
            count => format!("{count} {many}"),
        })
    };
    let parts = [
        of(facts.colours, "colour", "colours"),
        of(facts.matrices, "block or plate", "blocks or plates"),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    parts.join(", ")
}

/// A size in millimetres, with the words it was taken from where these are not the same.
pub(super) fn size(size: &GivenSize) -> String {
    let mm = millimetres(size);
    let sight = if size.is_sight {
        ", within the mount"
    } else {
        ""
    };
    let is_same = |c: &char| !c.is_whitespace();
    let plain: String = mm.replace('×', "x").chars().filter(is_same).collect();
    let said: String = size.said.to_lowercase().replace('×', "x");
    let said: String = said.chars().filter(is_same).collect();
    if said.is_empty() || said == plain {
        format!("{mm}{sight}")
    } else {
        format!("{mm}{sight} (from “{}”)", size.said)
    }
}

/// `212 × 301 mm`, height before width.
pub(super) fn millimetres(size: &GivenSize) -> String {
    let one = |mm: f64| Mm::new(mm).map_or_else(|| mm.to_string(), |mm| mm.to_string());
    format!("{} × {} mm", one(size.height.mm), one(size.width.mm))
}

/// The number of the sheet and the size of the edition.
pub(super) fn numbering(facts: &Facts) -> String {
    let edition = facts.edition.map(|edition| format!("edition of {edition}"));
    let parts = [facts.numbering.clone(), edition];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    parts.join(", ")
}

/// People with their roles.
pub(super) fn makers(reported: &Reported<'_>, facts: &Facts) -> String {
    let one = |maker: &Arc<crate::exchange::intake::facts::GivenMaker>| {
        let role = terms(reported, List::Roles, std::slice::from_ref(&maker.role));
        format!("{} ({role})", maker.name)
    };
    let makers: Vec<String> = facts.makers.iter().map(one).collect();
    makers.join("; ")
}

/// When the sheet was seen, and how.
fn sighting(reported: &Reported<'_>, facts: &Facts) -> String {
    let date = facts.seen.as_deref();
    let parts = [
        date.map(|date| dates::once(date, reported.words)),
        facts.basis.map(|basis| basis.word().to_owned()),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    parts.join(", ")
}

/// How a sheet was acquired.
pub(super) fn credit(reported: &Reported<'_>, credit: &Credit) -> String {
    let how: Vec<Key> = credit.how.iter().cloned().collect();
    let how = terms(reported, List::Transfers, &how);
    let parts = [
        (!how.is_empty()).then_some(how),
        credit.from.as_ref().map(|from| format!("from {from}")),
        credit.through.as_ref().map(|by| format!("through {by}")),
        credit.year.map(|year| year.to_string()),
        credit.is_joint.then(|| "jointly with others".to_owned()),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    parts.join(", ")
}
