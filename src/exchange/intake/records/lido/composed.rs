//! Cells that are made of several elements.
//!
//! | cell | made of |
//! |---|---|
//! | `…/eventActor` | `Name (role)` of each actor, as the grammar of makers reads it; the display text where no actor is indexed |
//! | `…/eventDate` | the display text, else `earliest/latest`; of a publication with the verb, as the grammar of dates reads it |
//! | `objectMeasurementsSet` | the display text, else `extent: height x width unit` |
//! | `objectMaterialsTechSet`, `…/eventMaterialsTech` | the display text, else the terms |
//! | `event[acquisition]` | how, from whom, when, as the grammar of credit lines reads it; `event[acquisition by another]` where the acquirer is named and is not the repository |
//! | `event[exhibition]`, `event[provenance]` | name, actors, place and date |
//!
//! What a composed cell or a display text says word for word has no column of its own beside it ([`take_said`]): a date that is
//! indexed as it is shown, the actors of an acquisition. What says more or otherwise keeps its column.

use super::kinds;
use crate::exchange::intake::records::measures::{Measure, in_words};
use crate::exchange::intake::records::node::Node;
use crate::exchange::intake::records::reading::Place;
use crate::exchange::intake::records::row::Row;

/// Reads an element that makes a cell with others.
pub(super) fn read(node: &Node, place: &Place, repositories: &[String], row: &mut Row) {
    match &*node.name {
        "event" => event(node, place, repositories, row),
        "eventActor" => actors(node, place, row),
        "eventDate" => date(node, place, row),
        "objectMeasurementsSet" | "eventObjectMeasurements" => measurements(node, place, row),
        "objectMaterialsTechSet" | "eventMaterialsTech" => materials(node, place, row),
        _ => {}
    }
}

/// The first text of a display element, taken.
fn shown<'n>(node: &'n Node, display: &'static str) -> Option<&'n str> {
    node.all(display).find_map(Node::take)
}

/// The first term of a concept.
fn term(concept: &Node) -> Option<&Node> {
    let in_skos = concept
        .all("Concept")
        .flat_map(|inner| inner.all("prefLabel"));
    let own = concept.all("term").chain(in_skos);
    let mut own = own.filter(|term| !term.peek().is_empty());
    // Version 1.0 has texts where 1.1 has concepts.
    own.next()
        .or((!concept.peek().is_empty()).then_some(concept))
}

/// The name of an actor: the preferred one, else the first.
fn name(actor: &Node) -> Option<&Node> {
    let names: Vec<&Node> = actor.at(&["nameActorSet", "appellationValue"]);
    let has_text = |name: &&&Node| !name.peek().is_empty();
    let preferred = names.iter().filter(has_text).find(|name| {
        let pref = name.child("@pref").map_or("", Node::peek);
        pref.ends_with("preferred") || pref.ends_with("lido00169")
    });
    preferred.or(names.iter().find(has_text)).copied()
}

/// An actor in a role, with who takes part in which role.
struct Taking<'n> {
    name: &'n Node,
    role: Option<&'n Node>,
    qualifier: Option<&'n Node>,
}

fn taking(of: &Node) -> Vec<Taking<'_>> {
    let in_roles = of.all("actorInRole").filter_map(|in_role| {
        Some(Taking {
            name: in_role.all("actor").find_map(name)?,
            role: in_role.all("roleActor").find_map(term),
            qualifier: in_role.all("attributionQualifierActor").find_map(term),
        })
    });
    in_roles.collect()
}

fn actors(node: &Node, place: &Place, row: &mut Row) {
    let is_published = place.path().contains("[publication]");
    let all = taking(node);
    for actor in &all {
        // A name is taken where the cell of the whole event says it.
        let is_said = actor.name.is_taken();
        let parts = [actor.role, actor.qualifier];
        if is_said && parts.into_iter().flatten().all(Node::is_taken) {
            continue;
        }
        let name = actor.name.take().unwrap_or(actor.name.peek()).to_owned();
        let said = |node: Option<&Node>| node.map(|n| n.take().unwrap_or(n.peek()).to_owned());
        let role = match said(actor.role) {
            Some(role) => format!(" ({role})"),
            // Whoever takes part in a publication and has no other role published.
            None if is_published => " (publisher)".to_owned(),
            None => String::new(),
        };
        let text = match said(actor.qualifier) {
            Some(qualifier) if leads_to_a_name(&qualifier) => format!("{qualifier} {name}{role}"),
            Some(qualifier) => format!("{name}{role} ({qualifier})"),
            None => format!("{name}{role}"),
        };
        if is_said {
            // The role decided what the cell of the event says of the name.
            row.add_further(&place.heading(), &text);
        } else {
            row.add(&place.heading(), &text);
        }
        for display in node.all("displayActorInRole") {
            take_said(display, &text);
        }
    }
    if all.is_empty()
        && let Some(text) = shown(node, "displayActorInRole")
    {
        row.add(&place.heading(), text);
    }
}

/// `attributed to`, `Werkstatt von`: words that stand before a name.
fn leads_to_a_name(qualifier: &str) -> bool {
    const LEADING: [&str; 12] = [
        "to", "of", "after", "by", "von", "nach", "de", "à", "d'après", "aan", "van", "naar",
    ];
    let last = qualifier.rsplit(' ').next().unwrap_or(qualifier);
    let last = last.to_lowercase();
    LEADING.contains(&last.as_str())
        || ["zugeschrieben", "possibly", "probably"].contains(&last.as_str())
}

fn date(node: &Node, place: &Place, row: &mut Row) {
    let verb = if place.path().contains("[publication]") {
        "published "
    } else {
        ""
    };
    let text = match shown(node, "displayDate") {
        Some(text) => text.to_owned(),
        // The cell of the whole event says it.
        None if !node.text_of("displayDate").is_empty() => return,
        None if edges(node).iter().all(|date| date.is_taken()) => return,
        None => span(node),
    };
    if !text.is_empty() {
        row.add(&place.heading(), &format!("{verb}{text}"));
        take_said(node, &text);
    }
}

/// The first indexed date of a name in an element.
fn edge<'n>(node: &'n Node, name: &'static str) -> Option<&'n Node> {
    node.at(&["date", name]).into_iter().next()
}

/// The indexed dates of an element that have a text.
fn edges(node: &Node) -> Vec<&Node> {
    let edges = ["earliestDate", "latestDate"].into_iter();
    let edges = edges.filter_map(|name| edge(node, name));
    edges.filter(|date| !date.peek().is_empty()).collect()
}

/// The indexed dates of an element: `1912/1915`, one where both are the same.
fn span(node: &Node) -> String {
    let edge = |name| edge(node, name).map_or("", Node::peek).to_owned();
    match (edge("earliestDate"), edge("latestDate")) {
        (from, to) if from == to => from,
        (from, to) if to.is_empty() => format!("{from}/.."),
        (from, to) if from.is_empty() => format!("../{to}"),
        (from, to) => format!("{from}/{to}"),
    }
}

fn measurements(node: &Node, place: &Place, row: &mut Row) {
    let text = shown(node, "displayObjectMeasurements");
    let mut indexed: Vec<String> = Vec::new();
    let mut values: Vec<String> = Vec::new();
    for measured in node.all("objectMeasurements") {
        let of = measured.all("extentMeasurements").filter_map(term);
        let of: Vec<&str> = of.filter_map(Node::take).collect();
        let sets = measured.all("measurementsSet").filter_map(|set| {
            let value = set.all("measurementValue").find_map(Node::take)?;
            let said = |name: &'static str| {
                let term = set.all(name).find_map(term).and_then(Node::take);
                term.unwrap_or("").to_owned()
            };
            Some(Measure {
                kind: said("measurementType"),
                value: value.to_owned(),
                unit: said("measurementUnit"),
            })
        });
        let measures: Vec<Measure> = sets.collect();
        values.extend(measures.iter().map(|measure| measure.value.clone()));
        if !measures.is_empty() {
            indexed.push(in_words(&of.join(" & "), &measures));
        } else if !of.is_empty() {
            indexed.push(of.join(" & "));
        }
    }
    let indexed = indexed.join("; ");
    match text {
        Some(text) => {
            row.add(&place.heading(), text);
            let below = place.below("objectMeasurements");
            let is_said = |value: &String| has_words(&with_points(text), &with_points(value));
            if !values.is_empty() && values.iter().all(is_said) {
                row.add_further(&below, &indexed);
            } else {
                row.add(&below, &indexed);
            }
        }
        None => row.add(&place.heading(), &indexed),
    }
}

fn materials(node: &Node, place: &Place, row: &mut Row) {
    if let Some(text) = shown(node, "displayMaterialsTech") {
        row.add(&place.heading(), text);
        take_said(node, text);
        return;
    }
    let terms = node.at(&["materialsTech", "termMaterialsTech"]);
    let terms: Vec<&str> = terms
        .into_iter()
        .filter_map(term)
        .filter_map(Node::take)
        .collect();
    row.add(&place.heading(), &terms.join(", "));
}

/// The whole of an event in one cell, where a grammar or a reader wants it so.
fn event(node: &Node, place: &Place, repositories: &[String], row: &mut Row) {
    let kind = kinds::event(node);
    match kind.as_str() {
        "acquisition" => acquisition(node, place, repositories, row),
        "exhibition" | "provenance" => {
            let text = in_one_line(node);
            row.add(&place.heading(), &text);
            take_said(node, &text);
        }
        _ => {}
    }
}

/// Elements whose text a cell may say for them. Identifiers and attributes are none: they name, and say nothing.
const SAYING: [&str; 12] = [
    "appellationValue",
    "descriptiveNoteValue",
    "term",
    "prefLabel",
    "displayActorInRole",
    "displayDate",
    "earliestDate",
    "latestDate",
    "displayPlace",
    "eventMethod",
    "termMaterialsTech",
    "attributionQualifierActor",
];

/// Takes the texts in a node that a cell says word for word: they are found there.
fn take_said(node: &Node, cell: &str) {
    let is_kind = &*node.name == "eventType";
    if is_kind {
        return;
    }
    if SAYING.contains(&&*node.name) && has_words(cell, node.peek()) {
        node.take();
    }
    for child in &node.children {
        take_said(child, cell);
    }
}

/// Whether a text stands in another as whole words and numbers: "1912" in "um 1912", neither "12" nor, in "24.1", "24".
fn has_words(text: &str, part: &str) -> bool {
    fn goes_on(mut signs: impl Iterator<Item = char>) -> bool {
        let (next, one_further) = (signs.next(), signs.next());
        next.is_some_and(char::is_alphanumeric)
            || matches!(next, Some('.' | ',')) && one_further.is_some_and(char::is_numeric)
    }
    let mut found = text.match_indices(part);
    !part.is_empty()
        && found.any(|(start, part)| {
            let (before, after) = (&text[..start], &text[start + part.len()..]);
            !goes_on(before.chars().rev()) && !goes_on(after.chars())
        })
}

/// A text with decimal points for decimal commas.
fn with_points(text: &str) -> String {
    text.replace(',', ".")
}

/// Words for who acquired a thing; everybody else in an acquisition is whom it came from.
const ACQUIRERS: [&str; 12] = [
    "owner",
    "new owner",
    "current owner",
    "acquirer",
    "buyer",
    "recipient",
    "eigentümer",
    "besitzer",
    "erwerber",
    "käufer",
    "acquéreur",
    "propriétaire",
];

fn acquisition(node: &Node, place: &Place, repositories: &[String], row: &mut Row) {
    let how = node
        .all("eventMethod")
        .find_map(term)
        .map_or("", Node::peek);
    let mut from: Vec<&str> = Vec::new();
    let mut to: Vec<&str> = Vec::new();
    for actor in node.all("eventActor").flat_map(taking) {
        let role = actor.role.map_or("", Node::peek).to_lowercase();
        let side = if ACQUIRERS.contains(&role.as_str()) {
            &mut to
        } else {
            &mut from
        };
        side.push(actor.name.peek());
    }
    let date = date_shown(node);
    let is_own = |name: &&str| repositories.iter().any(|own| own == name);
    let by_another = !to.is_empty() && !to.iter().any(is_own);
    if by_another {
        let others = [to.join(" and "), how.to_owned(), from_words(&from), date];
        let path = place
            .heading()
            .replace("[acquisition]", "[acquisition by another]");
        let text = said(&others, ", ");
        row.add(&path, &text);
        take_said(node, &text);
        return;
    }
    let words = said(&[how.to_owned(), from_words(&from)], " ");
    let text = said(&[words, date], ", ");
    row.add(&place.heading(), &text);
    take_said(node, &text);
}

fn from_words(from: &[&str]) -> String {
    match from {
        [] => String::new(),
        _ => format!("from {}", from.join(" and ")),
    }
}

/// The date of an event as it is shown, else as it is indexed.
fn date_shown(event: &Node) -> String {
    let dates = event.all("eventDate");
    let mut texts = dates.map(|date| match date.text_of("displayDate") {
        "" => span(date),
        text => text.to_owned(),
    });
    texts.find(|text| !text.is_empty()).unwrap_or_default()
}

fn in_one_line(node: &Node) -> String {
    let name = node.at(&["eventName", "appellationValue"]);
    let name = name.first().map_or("", |name| name.peek()).to_owned();
    let actors = node.all("eventActor").flat_map(taking);
    let actors: Vec<&str> = actors.map(|actor| actor.name.peek()).collect();
    let shown = node.at(&["eventPlace", "displayPlace"]);
    let indexed = node.at(&["eventPlace", "place", "namePlaceSet", "appellationValue"]);
    let place = shown.first().or(indexed.first());
    let place = place.map_or("", |place| place.peek()).to_owned();
    let notes = node.at(&["eventDescriptionSet", "descriptiveNoteValue"]);
    let note = notes.first().map_or("", |note| note.peek()).to_owned();
    said(
        &[name, actors.join(", "), place, date_shown(node), note],
        ", ",
    )
}

fn said(parts: &[String], between: &str) -> String {
    let parts = parts.iter().filter(|part| !part.is_empty());
    parts.cloned().collect::<Vec<_>>().join(between)
}

#[cfg(test)]
mod tests {
    use super::has_words;

    #[test]
    fn words_and_numbers_are_found_whole() {
        for (text, part) in [
            ("um 1912", "1912"),
            ("1907/1917", "1907"),
            ("Radierung auf Bütten", "Bütten"),
            ("gift from C. Mill, 1970", "C. Mill"),
            ("24.1 x 17.8 cm", "24.1"),
        ] {
            assert!(has_words(text, part), "{text}: {part}");
        }
        for (text, part) in [
            ("um 1912", "12"),
            ("Radierungen", "Radierung"),
            ("24.1 cm", "24"),
            ("24.1 cm", "1"),
            ("1912", ""),
        ] {
            assert!(!has_words(text, part), "{text}: {part}");
        }
    }
}
