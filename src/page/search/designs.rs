//! Designs, their states and their printings, as they are searched.

use super::former;
use super::narrowing::{self, Ranks};
use crate::model::design::Design;
use crate::model::link::Target;
use crate::model::literature::{Citation, Work};
use crate::model::vocabulary::List as Vocabulary;
use crate::page::phrases::formerly;
use crate::page::phrases::source_names::first_author;
use crate::page::phrases::{dates, identifiers, standing_note};
use crate::page::plates::figures;
use crate::page::setting::address::{Address, Fragment};
use crate::page::setting::book::Here;
use crate::page::texts::plain_text;
use crate::study::numerals::roman;
use crate::study::search::entry::{Entry, EntryKind, Field};

/// A design.
pub(super) fn design(here: &Here<'_>, design: &Design, ranks: &Ranks) -> Entry {
    let mut entry = of_design(here, design, EntryKind::Design, "");
    entry.number.clone_from(&design.number);
    entry.add(Field::Number, &design.number);
    entry.add_all(Field::Accession, identifiers::searched(&design.ids));
    former::add(here, Target::Design(design.key.clone()), &mut entry);
    let numbers = formerly::former_numbers(here, design);
    entry.add_all(Field::Number, numbers.iter().map(|n| n.value.as_str()));
    entry.add_all(
        Field::Number,
        earlier_numbers(here, &design.literature, None),
    );
    entry.add_all(Field::Name, design.titles.iter().map(|t| t.text.as_str()));
    let techniques = techniques(here, design);
    let date = here.design_date(design);
    entry.about = [date.as_str(), &techniques]
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(", ");
    entry.add(Field::Fact, techniques);
    entry.add(Field::Fact, date);
    for maker in &design.makers {
        entry.add(Field::Fact, here.person(&maker.person.value).plain());
    }
    for key in &design.technique {
        let synonyms = here.synonyms(Vocabulary::Techniques, key.as_str());
        entry.add_all(Field::Fact, synonyms);
    }
    for key in &design.support {
        add_term(here, &mut entry, Vocabulary::Papers, key.as_str());
    }
    let series = design.series.iter();
    entry.add_all(
        Field::Fact,
        series.map(|place| here.series_name(&place.of.value)),
    );
    entry.add_all(
        Field::Fact,
        design.subjects.iter().map(|s| here.subject(s).plain()),
    );
    for matrix in &design.matrices {
        let texts = [&matrix.material, &matrix.carries, &matrix.colour];
        entry.add_all(Field::Text, texts.into_iter().flatten());
        let accession = matrix.accession.as_ref();
        entry.add_all(Field::Accession, accession.map(|number| number.as_str()));
    }
    entry.add_all(
        Field::Text,
        design.points.iter().map(|point| point.ask.as_str()),
    );
    let standing = standing_note::note(here, &design.standing);
    entry.add_all(Field::Text, standing.map(|note| note.plain()));
    entry.add(
        Field::Text,
        plain_text::note(here, design.commentary.as_ref()),
    );
    entry.picture = figures::design_picture(here, design).and_then(|key| smallest(here, &key));
    entry.values = ranks.techniques(design);
    entry
        .values
        .extend(narrowing::decade(here, design.date.own()));
    entry
}

/// The states of a design, without withdrawn ones.
pub(super) fn states(here: &Here<'_>, design: &Design, ranks: &Ranks) -> Vec<Entry> {
    let entry = |state: &crate::model::state::State| {
        let key = &state.key.value;
        let numeral = here.book.studies.numeral(&design.key, key)?;
        let mut entry = of_design(
            here,
            design,
            EntryKind::State,
            &format!("#{}", Fragment::State(key)),
        );
        let number = format!("{} {}", design.number, numeral.roman());
        entry.number = if numeral.is_only() {
            format!("{}, {}", design.number, here.words().word("only-state"))
        } else {
            number.clone()
        };
        entry.add(Field::Number, format!("{number}/{}", roman(numeral.of())));
        entry.add(Field::Number, number);
        entry.add_all(
            Field::Number,
            earlier_numbers(here, &state.literature, Some(&design.literature)),
        );
        entry.about = state.summary.clone().unwrap_or_default();
        entry.add(Field::Text, entry.about.clone());
        // Not as numbers, because the same numeral is now that of another state.
        entry.add(
            Field::Text,
            formerly::numerals(here, &design.key, key).plain(),
        );
        titles_as_facts(&mut entry, design);
        let by = state.by.as_ref();
        entry.add_all(Field::Fact, by.map(|key| here.person(&key.value).plain()));
        let date = state.date.own();
        entry.add_all(
            Field::Fact,
            date.map(|date| dates::once(date, here.words())),
        );
        entry.values = ranks.techniques(design);
        entry.values.extend(narrowing::state(here, design, key));
        entry
            .values
            .extend(narrowing::decade(here, date.or(design.date.own())));
        Some(entry)
    };
    design.standing_states().filter_map(entry).collect()
}

/// The printings of a design, without withdrawn ones.
pub(super) fn printings(here: &Here<'_>, design: &Design, ranks: &Ranks) -> Vec<Entry> {
    let entry = |printing: &crate::model::printing::Printing| {
        let key = &printing.key.value;
        let mut entry = of_design(
            here,
            design,
            EntryKind::Printing,
            &format!("#{}", Fragment::Printing(key)),
        );
        entry.number.clone_from(&design.number);
        entry.add_all(
            Field::Number,
            earlier_numbers(here, &printing.literature, Some(&design.literature)),
        );
        let name = here.printing_name(design, key);
        let date = printing.date.own();
        let in_words = date.map(|date| dates::once(date, here.words()));
        entry.about = match &in_words {
            Some(date) => format!("{name}, {date}"),
            None => name.clone(),
        };
        entry.add(Field::Name, name);
        entry.add_all(Field::Fact, in_words);
        titles_as_facts(&mut entry, design);
        for made_by in [&printing.printer, &printing.publisher] {
            let parties = made_by
                .iter()
                .map(|said| here.person_or_holder(&said.is.value));
            entry.add_all(Field::Fact, parties.map(|party| party.plain()));
        }
        for key in &printing.paper {
            add_term(here, &mut entry, Vocabulary::Papers, key.as_str());
        }
        entry.values = ranks.techniques(design);
        entry.values.extend(narrowing::printing(here, design, key));
        entry
            .values
            .extend(narrowing::decade(here, date.or(design.date.own())));
        entry
    };
    design.standing_printings().map(entry).collect()
}

/// An entry with the title of a design.
pub(super) fn of_design(
    here: &Here<'_>,
    design: &Design,
    kind: EntryKind,
    fragment: &str,
) -> Entry {
    let address = Address::Design(design.key.clone());
    let title = match design.title() {
        Some(title) if title.supplied => format!("[{}]", title.text.value),
        Some(title) => title.text.value.clone(),
        None => here.words().word("untitled").to_owned(),
    };
    let mut entry = Entry::new(kind, title, format!("{address}{fragment}"));
    let language = design.title().and_then(|title| title.lang.as_ref());
    entry.language = language
        .map(|tag| tag.value.clone())
        .filter(|tag| !tag.eq_ignore_ascii_case(here.language()));
    entry
}

/// The number and the titles of the design, as facts of something that belongs to it.
pub(super) fn titles_as_facts(entry: &mut Entry, design: &Design) {
    entry.add(Field::Fact, &design.number);
    entry.add_all(Field::Fact, design.titles.iter().map(|t| t.text.as_str()));
}

/// A term and its synonyms, as facts.
pub(super) fn add_term(here: &Here<'_>, entry: &mut Entry, list: Vocabulary, key: &str) {
    entry.add(Field::Fact, here.term(list, key));
    entry.add_all(Field::Fact, here.synonyms(list, key));
}

/// The techniques of a design in words.
pub(super) fn techniques(here: &Here<'_>, design: &Design) -> String {
    let terms = design.technique.iter();
    let terms = terms.map(|key| here.term(Vocabulary::Techniques, key.as_str()));
    terms.collect::<Vec<_>>().join(", ")
}

/// The smallest file of a picture.
pub(super) fn smallest(here: &Here<'_>, key: &crate::model::key::PictureKey) -> Option<String> {
    let picture = here.book.pictures.get(key)?;
    picture.sizes.first().map(|size| size.address.clone())
}

/// The numbers that earlier catalogues give: each after the short form of the work, the name of its author and
/// its title, as people cite them; and alone where it has a letter ("W 4"). `of_design`: the citations of
/// the design, for the numbers of its states and printings.
fn earlier_numbers(
    here: &Here<'_>,
    literature: &[Citation],
    of_design: Option<&[Citation]>,
) -> Vec<String> {
    let mut numbers = Vec::new();
    for citation in literature {
        let (Some(own), Some(work)) = (
            &citation.number,
            citation
                .cite
                .work()
                .and_then(|key| here.public().literature.get(key)),
        ) else {
            continue;
        };
        let number = match of_design {
            None => own.clone(),
            Some(of_design) => {
                let mut same_work = of_design.iter().filter(|c| c.cite == citation.cite);
                let Some(number) = same_work.find_map(|c| c.number.as_ref()) else {
                    continue;
                };
                format!("{number} {own}")
            }
        };
        for numbered in as_cited(work, number) {
            if !numbers.contains(&numbered) {
                numbers.push(numbered);
            }
        }
    }
    numbers
}

/// A number of an earlier catalogue as people cite it: after the short form, the first author, the title, and the title
/// before its colon; and alone where it has a letter ("W 4").
pub(super) fn as_cited(work: &Work, number: String) -> Vec<String> {
    let main_title = work.title.split(':').next().unwrap_or_default();
    let names = [
        work.short.as_str(),
        first_author(work),
        main_title.trim(),
        &work.title,
    ];
    let named = names.into_iter().filter(|name| !name.is_empty());
    let mut numbers: Vec<String> = named.map(|name| format!("{name} {number}")).collect();
    if number.chars().any(char::is_alphabetic) {
        numbers.push(number);
    }
    numbers
}
