//! Impressions.

use super::concepts::{
    self, ACCESSION_NUMBER, ARTWORK, CONDITION, CREDIT_LINE, DESCRIPTION, DIMENSIONS, EDITION,
    FORMER_NAME, MARKINGS, MATERIALS, NOTE, PRINT, PRINTING, PROVENANCE_STATEMENT, TYPE_OF_WORK,
    WATERMARKS,
};
use super::node::Node;
use super::parts::{self, identifier, statement};
use super::reading::{self, CertainReading};
use super::{evidence, identifiers, ids, provenance};
use crate::model::design::{Design, Maker};
use crate::model::document::EvidenceTarget;
use crate::model::impression::{BlockPrinted, Impression, Status};
use crate::model::key::Key;
use crate::model::vocabulary::List;
use crate::page::html::CleanHtml;
use crate::page::{Address, Here, figures, marks, papers, readings, standing_note};

/// The record of a sheet: of the record whose page it has, with the numbers and the history of its others.
pub(super) fn record(here: &Here<'_>, design: &Design, impression: &Impression) -> Node {
    let page = Address::Impression(impression.key.clone());
    let records = here.joined().on_page(design, impression);
    let certain = CertainReading::of(design, impression);
    let number = here.sheet_number(&impression.key);
    let title = here.design_title(design).plain();
    let sheet = &impression.sheet;
    let is_destroyed = impression.status.value == Status::Destroyed;
    let state = certain.state.map(|state| ids::state(here, design, state));
    let leading = figures::leading_picture(here, impression);
    let told = records.iter();
    let told = told.map(|record| EvidenceTarget::Impression(record.key.clone()));
    let evidence = evidence::about_any(here, &told.collect::<Vec<_>>());
    Node {
        identified_by: std::iter::once(parts::primary_name(format!("{title}, {number}")))
            .chain(numbers(here, &records))
            .collect(),
        classified_as: kinds(here, design, impression),
        equivalent: identifiers::equivalents(
            "HumanMadeObject",
            records.iter().flat_map(|record| &record.ids),
        ),
        referred_to_by: statements(here, design, impression, &records),
        shows: std::iter::once(ids::design(here, design))
            .chain(state)
            .collect(),
        attributed_by: reading::assignments(here, design, impression, &certain)
            .into_iter()
            .chain(evidence.attributed_by)
            .collect(),
        produced_by: production(here, design, impression, &certain).boxed(),
        dimension: [
            (&sheet.size, ("sheet", "of-sheet")),
            (&sheet.image, ("image", "of-image")),
            (&sheet.platemark, ("platemark", "of-platemark")),
        ]
        .into_iter()
        .flat_map(|(sizes, of)| parts::dimensions(here, sizes, of))
        .collect(),
        made_of: sheet
            .paper
            .iter()
            .map(|paper| concepts::term(here, "Material", List::Papers, paper.as_str()))
            .collect(),
        current_owner: owners(here, impression),
        current_custodian: keeper(here, impression).into_iter().collect(),
        destroyed_by: is_destroyed.then(|| Box::new(destruction(here))),
        representation: leading
            .and_then(|key| parts::representation(here, &key))
            .into_iter()
            .collect(),
        subject_of: parts::subject_of(here, &page, None)
            .into_iter()
            .chain(pages_of_holder(&records))
            .chain(evidence.subject_of)
            .collect(),
        ..Node::at("HumanMadeObject", ids::record(here, &page), number)
    }
}

/// A print and a work of art; made in these techniques; of this kind where the vocabulary has a word for it.
fn kinds(here: &Here<'_>, design: &Design, impression: &Impression) -> Vec<Node> {
    let technique = design.technique_of(impression).iter();
    let technique = technique.map(|technique| Node {
        classified_as: vec![TYPE_OF_WORK.bare()],
        ..concepts::term(here, "Type", List::Techniques, technique.as_str())
    });
    let kind = impression.kind.iter().next();
    let kind = kind.filter(|kind| parts::is_certain(&kind.claim));
    let kind = kind.map(|kind| concepts::term(here, "Type", List::Kinds, kind.is.as_str()));
    [PRINT.of_kind(TYPE_OF_WORK), ARTWORK.node()]
        .into_iter()
        .chain(technique)
        .chain(kind)
        .collect()
}

/// The numbers of a sheet by all of its records: in this catalogue, with its holder, and before.
fn numbers(here: &Here<'_>, records: &[&Impression]) -> Vec<Node> {
    let mut all = Vec::new();
    for record in records {
        all.push(parts::number(here, &here.record_number(&record.key)));
        let assigned = |holder: Option<&Key>| {
            let by = holder.and_then(|holder| ids::agent(here, holder));
            let assigned = by.map(|by| Node {
                carried_out_by: vec![by],
                ..Node::new("AttributeAssignment")
            });
            assigned.into_iter().collect()
        };
        if let Some(accession) = record.accession_and_part() {
            all.push(Node {
                assigned_by: assigned(record.holder.as_ref().map(|holder| &holder.value)),
                ..identifier(accession, ACCESSION_NUMBER)
            });
        }
        all.extend(identifiers::nodes(&record.ids));
        for former in &record.former_accessions {
            let mut number = Node {
                assigned_by: assigned(former.holder.as_ref().map(|holder| &holder.value)),
                ..identifier(former.number.as_str(), ACCESSION_NUMBER)
            };
            number.classified_as.push(FORMER_NAME.node());
            all.push(number);
        }
    }
    all
}

fn statements(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    records: &[&Impression],
) -> Vec<Node> {
    let words = here.words();
    let own = impression.identified.as_ref().map(|reading| {
        let full = readings::full(here, design, reading);
        readings::qualified(here, design, impression, reading, &full).plain()
    });
    let own = own.unwrap_or_else(|| words.word("not-identified").to_owned());
    let numbering = impression.numbering.as_ref();
    let edition = match numbering {
        Some(number) => format!("{own}. {}", number.value),
        None => own,
    };
    let stands = [&design.standing, &impression.standing].map(|stands| {
        let note = standing_note::note(here, stands)?;
        statement(NOTE, note.plain())
    });
    let status = impression.status.value;
    let status = (status != Status::Located).then(|| here.status(status));
    let sheet = &impression.sheet;
    let inks: Vec<&str> = sheet.inks.iter().map(|ink| ink.value.as_str()).collect();
    let sizes = papers::sizes(sheet).map(|(sizes, word)| match word {
        "of-sheet" | "of-image" | "of-platemark" => parts::dimensions_in_words(here, sizes, word),
        // They are no dimensions of the sheet.
        _ => parts::sizes_in_words(here, sizes, word),
    });
    let measuring = papers::measuring(here, sheet);
    let measuring = measuring
        .iter()
        .map(|how| statement(DIMENSIONS, how.plain()));
    let paper = [
        papers::colour(sheet),
        papers::chain_lines(here, sheet),
        papers::laid_lines(here, sheet),
        papers::thickness(here, sheet),
        papers::mounted_on(here, sheet),
    ];
    let watermarks = sheet
        .watermark
        .iter()
        .map(|watermark| statement(WATERMARKS, papers::watermark(here, watermark).plain()));
    let on_sheet = impression
        .marks
        .iter()
        .map(|mark| statement(MARKINGS, marks::line(here, mark).plain()));
    let all = [
        statement(EDITION, edition),
        statement(CREDIT_LINE, credit(here, impression).unwrap_or_default()),
        statement(NOTE, status.unwrap_or_default()),
        statement(MATERIALS, inks.join(", ")),
        statement(MATERIALS, CleanHtml::join(&paper, "; ").plain()),
        statement(PROVENANCE_STATEMENT, provenance::in_words(here, records)),
    ];
    let condition = papers::condition(here, impression);
    let condition = condition
        .iter()
        .map(|note| statement(CONDITION, note.plain()));
    all.into_iter()
        .chain(stands)
        .chain(condition)
        .chain(watermarks)
        .chain(sizes)
        .chain(measuring)
        .chain(on_sheet)
        .chain(as_given(here, records))
        .flatten()
        .chain(reading::opinions_in_words(here, design, impression))
        .collect()
}

/// The credit line of the sheet, else of its holder.
pub(in crate::exchange) fn credit(here: &Here<'_>, impression: &Impression) -> Option<String> {
    let holder = impression.holder.as_ref();
    let holder = holder.and_then(|holder| here.public().holders.get(&holder.value));
    let of_holder = holder.and_then(|holder| holder.credit.clone());
    impression.credit.clone().or(of_holder)
}

/// How it was made: by which processes, the work of each maker of the design, and the printing, which is part of a printing of the
/// catalogue where that is certain.
fn production(
    here: &Here<'_>,
    design: &Design,
    impression: &Impression,
    certain: &CertainReading<'_>,
) -> Node {
    let makers = design.makers.iter();
    let makers = makers.filter(|maker| parts::is_certain(&maker.claim));
    let printing = certain.printing.and_then(|key| design.printing(key));
    let of_sheet = impression.sheet.date.iter().next();
    let of_printing = printing.and_then(|printing| printing.date.iter().next());
    let date = of_sheet.or(of_printing);
    let date = date.filter(|date| parts::is_certain(&date.claim));
    let printer = printing.and_then(|printing| printing.printer.iter().next());
    let printer = printer.filter(|printer| parts::is_certain(&printer.claim));
    let printer = printer.and_then(|printer| ids::agent(here, &printer.is.value));
    let printed = Node {
        classified_as: vec![PRINTING.node()],
        carried_out_by: printer.into_iter().collect(),
        timespan: date.and_then(|date| parts::timespan(here, &date.is.value)),
        used_specific_object: matrices(design, impression, certain)
            .into_iter()
            .map(|matrix| ids::matrix(here, design, matrix))
            .collect(),
        part_of_activity: certain
            .printing
            .and_then(|key| ids::printing(here, design, key).boxed()),
        ..Node::new("Production")
    };
    let techniques = design.technique_of(impression).iter();
    let mut processes: Vec<Node> = Vec::new();
    for process in techniques.filter_map(|technique| concepts::process(here, technique.as_str())) {
        if !processes.iter().any(|known| known.id == process.id) {
            processes.push(process);
        }
    }
    Node {
        technique: processes,
        part: made_by(here, makers).into_iter().chain([printed]).collect(),
        ..Node::new("Production")
    }
}

/// The parts of the makers of a design, each once, with their roles.
fn made_by<'a>(here: &Here<'_>, makers: impl Iterator<Item = &'a Maker>) -> Vec<Node> {
    let mut parts: Vec<Node> = Vec::new();
    for maker in makers {
        let Some(person) = ids::agent(here, &maker.person.value) else {
            continue;
        };
        let role = maker.role.as_ref();
        let role = role.map(|role| concepts::term(here, "Type", List::Roles, role.as_str()));
        let mut known = parts.iter_mut();
        match known.find(|part| part.carried_out_by.first() == Some(&person)) {
            Some(part) => part.classified_as.extend(role),
            None => parts.push(Node {
                classified_as: role.into_iter().collect(),
                carried_out_by: vec![person],
                ..Node::new("Production")
            }),
        }
    }
    parts
}

/// The matrices that a sheet was printed from: those seen on it; else those of its printing; else the only one.
fn matrices<'a>(
    design: &'a Design,
    impression: &'a Impression,
    certain: &CertainReading<'_>,
) -> Vec<&'a Key> {
    let printed = |printed: BlockPrinted| printed == BlockPrinted::Printed;
    let seen = impression.blocks.iter();
    let seen: Vec<&Key> = seen
        .filter(|(_, of)| printed(of.value))
        .map(|(matrix, _)| &matrix.value)
        .collect();
    if !impression.blocks.is_empty() {
        return seen;
    }
    let printing = certain.printing.and_then(|key| design.printing(key));
    let used = printing.map_or(&[][..], |printing| printing.matrices.as_slice());
    match (used, design.matrices.as_slice()) {
        ([], [only]) => vec![&only.key.value],
        (used, _) => used.iter().map(|matrix| &matrix.value).collect(),
    }
}

/// Who keeps it now.
fn keeper(here: &Here<'_>, impression: &Impression) -> Option<Node> {
    let holder = impression.holder.as_ref();
    let holder = holder.filter(|_| impression.status.value == Status::Located);
    ids::agent(here, &holder?.value)
}

/// Who owns it now: the holder, unless the record names another, or several. Nobody of a sheet that is untraced or
/// destroyed.
fn owners(here: &Here<'_>, impression: &Impression) -> Vec<Node> {
    let id = ids::record(here, &Address::Impression(impression.key.clone()));
    match (impression.status.value, impression.owners.as_slice()) {
        (Status::Located, []) => keeper(here, impression).into_iter().collect(),
        (Status::Located | Status::Stolen, [owner]) => {
            let owner = ids::party(here, owner, format!("{id}#owner"));
            owner.into_iter().collect()
        }
        (Status::Located | Status::Stolen, owners) => {
            let owners = owners.iter().zip(1..);
            owners
                .filter_map(|(owner, at)| ids::party(here, owner, format!("{id}#owner-{at}")))
                .collect()
        }
        (Status::Untraced | Status::Destroyed, _) => Vec::new(),
    }
}

/// The holder's own pages of a sheet, by each of its records.
fn pages_of_holder(records: &[&Impression]) -> Vec<Node> {
    let pages = records.iter().filter_map(|record| record.web.as_ref());
    pages.map(|web| parts::web_page(web.as_str())).collect()
}

/// The holder's own description, field by field in its words and language, named as such.
fn as_given(here: &Here<'_>, records: &[&Impression]) -> Vec<Option<Node>> {
    let name = here.words().word("as-given");
    let given = records.iter().filter_map(|record| record.as_given.as_ref());
    let fields = given.flat_map(|given| {
        let language = given.language().and_then(concepts::language);
        given
            .fields
            .iter()
            .map(move |field| (field, language.clone()))
    });
    fields
        .map(|(field, language)| {
            let said = format!("{}: {}", field.name.value, field.text.value);
            Some(Node {
                identified_by: vec![parts::display(name)],
                language: language.into_iter().collect(),
                ..statement(DESCRIPTION, said)?
            })
        })
        .collect()
}

fn destruction(here: &Here<'_>) -> Node {
    let label = here.words().listed("status", Status::Destroyed);
    Node {
        label: Some(label.to_owned()),
        ..Node::new("Destruction")
    }
}
