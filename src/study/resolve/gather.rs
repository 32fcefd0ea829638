//! Gathers the names, numbers and keys of a catalogue.
//!
//! In: the catalogue as readers may know it, the order of its designs, its concordance and its joined records. Out:
//! [`References`].

use std::collections::BTreeMap;

use super::names::{
    Accession, DesignNames, EarlierRow, Fate, Names, NumberKind, OwnReading, PrintingNames,
    QueryWords, References, Stands, StateNames, WorkNames,
};
use crate::concordance::{Concordance, DesignPart, ReverseRow};
use crate::joined::JoinedSheets;
use crate::numerals::numerals;
use crate::order::Order;
use crate::search::words::{number_key, without_stops};
use keyblock_model::as_found::OtherId;
use keyblock_model::catalogue::Catalogue;
use keyblock_model::design::{Design, TitleKind};
use keyblock_model::document::Document;
use keyblock_model::holder::Holder;
use keyblock_model::key::Key;
use keyblock_model::link::Target;
use keyblock_model::literature::Work;
use keyblock_model::mark::MarkRecord;
use keyblock_model::person::Person;
use keyblock_model::series::SeriesRecord;
use keyblock_model::standing::RecordStanding;
use keyblock_model::words::Standing;

impl References {
    /// The names of a catalogue. `words` are those of its language.
    #[must_use]
    pub fn of(
        catalogue: &Catalogue,
        order: &Order,
        concordance: &Concordance,
        joined: &JoinedSheets,
        words: QueryWords,
    ) -> References {
        let settings = &catalogue.settings;
        let designs = order.keys().iter();
        let designs: Vec<&Design> = designs.filter_map(|k| catalogue.designs.get(k)).collect();
        let names: Vec<DesignNames> = designs.iter().map(|d| design(d, joined)).collect();
        let places: BTreeMap<&Key, usize> = designs.iter().map(|d| &d.key).zip(0..).collect();
        let works = catalogue.literature.values();
        let works = works.map(|w| work(w, concordance, &names, &places));
        let mut references = References {
            siglum: settings.siglum.value.clone(),
            address: settings.address.value.trim_end_matches('/').to_owned(),
            edition: settings.edition.clone(),
            words,
            works: works.collect(),
            holders: catalogue.holders.values().map(holder).collect(),
            people: catalogue.people.values().map(person).collect(),
            exhibitions: catalogue
                .exhibitions
                .values()
                .map(|exhibition| Names::new(&exhibition.key, [exhibition.title.as_str()]))
                .collect(),
            marks: catalogue.marks.values().map(mark).collect(),
            documents: catalogue.documents.values().map(document).collect(),
            series: catalogue.series.values().map(series).collect(),
            accessions: accessions(&designs),
            stands: stands(catalogue, &designs),
            designs: names,
        };
        references.add_former_names(catalogue);
        references
    }
}

impl Names {
    fn new<'n>(key: &Key, names: impl IntoIterator<Item = &'n str>) -> Names {
        Names {
            key: key.clone(),
            names: each_once(names),
            former: Vec::new(),
            was: Vec::new(),
            town: None,
            isil: None,
            ids: Vec::new(),
        }
    }
}

/// The texts, each once, without empty ones.
fn each_once<'t>(texts: impl IntoIterator<Item = &'t str>) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for text in texts {
        if !text.trim().is_empty() && !all.iter().any(|one| one == text) {
            all.push(text.to_owned());
        }
    }
    all
}

fn design(design: &Design, joined: &JoinedSheets) -> DesignNames {
    let numerals = numerals(design);
    let state = |state: &keyblock_model::state::State| StateNames {
        key: state.key.value.clone(),
        place: numerals.get(&state.key.value).map(|n| n.place()),
        was: Vec::new(),
        formerly: Vec::new(),
    };
    let withdrawn = design.states.iter().filter(|s| s.standing.is_withdrawn());
    let first = design.title();
    let is_former = |kind: TitleKind| kind == TitleKind::Former;
    let current = design.titles.iter().filter(|t| !is_former(t.kind));
    let former = design.titles.iter().filter(|t| is_former(t.kind));
    let titles = each_once(first.into_iter().chain(current).map(|t| t.text.as_str()));
    DesignNames {
        key: design.key.clone(),
        number: design.number.clone(),
        former: each_once(former.map(|title| title.text.as_str()))
            .into_iter()
            .filter(|title| !titles.contains(title))
            .collect(),
        titles,
        ids: ids(&design.ids),
        was: Vec::new(),
        formerly: Vec::new(),
        states: design
            .standing_states()
            .chain(withdrawn)
            .map(state)
            .collect(),
        printings: design
            .printings
            .iter()
            .map(|printing| PrintingNames {
                key: printing.key.value.clone(),
                name: printing.name.clone(),
                was: Vec::new(),
            })
            .collect(),
        impressions: design.impressions.keys().copied().collect(),
        joined: design
            .impressions
            .values()
            .filter(|impression| !joined.has_page(&impression.key))
            .map(|impression| {
                let page = joined.page_of(&impression.key);
                (impression.key.number, page.number)
            })
            .collect(),
    }
}

fn work(
    work: &Work,
    concordance: &Concordance,
    designs: &[DesignNames],
    places: &BTreeMap<&Key, usize>,
) -> WorkNames {
    let ours = |row: &&ReverseRow| {
        let design = *places.get(&row.ours.design)?;
        let names = designs.get(design)?;
        let (state, printing) = match &row.ours.part {
            DesignPart::Whole => (None, None),
            DesignPart::State(key) => (names.states.iter().position(|s| s.key == *key), None),
            DesignPart::Printing(key) => (None, names.printings.iter().position(|p| p.key == *key)),
        };
        Some(OwnReading {
            design,
            state,
            printing,
            relation: row.relation,
        })
    };
    let numbers = concordance.numbers_of(&work.key).into_iter();
    let author = work.authors.split([',', ';']).next().unwrap_or_default();
    WorkNames {
        key: work.key.clone(),
        short: work.short.clone(),
        title: work.title.clone(),
        author: Some(author.trim().to_owned()).filter(|author| !author.is_empty()),
        was: Vec::new(),
        rows: numbers
            .filter(|number| !number.fragment.is_empty())
            .map(|number| EarlierRow {
                number: number.number.map(str::to_owned),
                part: number.part.map(str::to_owned),
                fragment: number.fragment,
                ours: number.rows.iter().filter_map(ours).collect(),
            })
            .collect(),
    }
}

fn ids(ids: &[OtherId]) -> Vec<String> {
    each_once(ids.iter().map(|other| other.id.as_str()))
}

fn holder(holder: &Holder) -> Names {
    let former = holder.formerly.iter().map(|former| former.name.as_str());
    Names {
        former: each_once(former),
        town: holder.town.as_ref().map(|town| town.value.clone()),
        isil: holder.isil.as_ref().map(|isil| isil.value.clone()),
        ids: ids(&holder.ids),
        ..Names::new(&holder.key, [holder.name.as_str()])
    }
}

fn person(person: &Person) -> Names {
    let others = person.names.iter().map(|name| name.text.as_str());
    let names = std::iter::once(person.name.as_str()).chain(person.sort.as_deref());
    Names {
        ids: ids(&person.ids),
        ..Names::new(&person.key, names.chain(others))
    }
}

/// A mark by its text; by its key in words where it has none.
fn mark(mark: &MarkRecord) -> Names {
    let in_words = mark.key.as_str().replace('-', " ");
    let text = mark
        .text
        .as_ref()
        .map_or(in_words.as_str(), |text| &text.value);
    let numbers = mark.reference.iter().filter_map(|r| r.number.as_deref());
    Names::new(&mark.key, std::iter::once(text).chain(numbers))
}

/// A document by its title, by its key in words where it has none, and by its shelfmark.
fn document(document: &Document) -> Names {
    let in_words = document.key.as_str().replace('-', " ");
    let title = document.title.as_ref();
    let title = title.map_or(in_words.as_str(), |title| &title.value);
    let shelfmark = document.shelfmark.as_ref().map(|mark| mark.as_str());
    Names::new(&document.key, std::iter::once(title).chain(shelfmark))
}

/// A series by its titles, by its key in words where it has none.
fn series(series: &SeriesRecord) -> Names {
    let name = series.name();
    let other = series.titles.iter().map(|title| title.text.value.as_str());
    let other = other.filter(|title| *title != name);
    Names::new(&series.key, std::iter::once(name.as_ref()).chain(other))
}

/// The records that do not simply stand: a part or sheet of a design stands as the design does, unless it says more.
fn stands(catalogue: &Catalogue, designs: &[&Design]) -> BTreeMap<String, Stands> {
    let mut all = BTreeMap::new();
    let mut add = |named: String, standing: &RecordStanding| {
        let how = match standing.standing {
            Standing::Accepted => return,
            Standing::Doubtful => Fate::Doubtful,
            Standing::Rejected => Fate::Rejected,
            Standing::Withdrawn => Fate::Withdrawn,
        };
        let see = catalogue.to_see_instead(standing);
        all.insert(named, Stands { how, see });
    };
    for design in designs {
        let key = &design.key;
        add(format!("design:{key}"), &design.standing);
        for state in &design.states {
            add(format!("state:{key}/{}", state.key.value), &state.standing);
        }
        for printing in &design.printings {
            let part = &printing.key.value;
            add(format!("printing:{key}/{part}"), &printing.standing);
        }
        for impression in design.impressions.values() {
            add(
                format!("impression:{}", impression.key),
                &impression.standing,
            );
        }
    }
    for series in catalogue.series.values() {
        add(format!("series:{}", series.key), &series.standing);
    }
    for key in catalogue.holders.keys() {
        if let Some(successor) = catalogue.last_successor(key) {
            let stands = Stands {
                how: Fate::TakenOver,
                see: vec![Target::Holder(successor.clone())],
            };
            all.insert(format!("holder:{key}"), stands);
        }
    }
    all
}

/// The accession numbers of every sheet, with and without the part that it is of one, and its identifiers elsewhere, by
/// their keys: as they are written, and without punctuation.
fn accessions(designs: &[&Design]) -> BTreeMap<String, Vec<Accession>> {
    let mut all: BTreeMap<String, Vec<Accession>> = BTreeMap::new();
    for design in designs {
        for impression in design.impressions.values() {
            let holder = impression.holder.as_ref();
            let of_part = impression.part.as_ref();
            let of_part = of_part.and_then(|_| impression.accession_and_part());
            let accession = impression.accession.as_ref();
            let present = accession.map(|number| number.value.clone());
            let present = present.into_iter().chain(of_part).map(|number| {
                let holder = holder.map(|key| key.value.clone());
                (number, holder, NumberKind::Present)
            });
            let former = impression.former_accessions.iter().map(|former| {
                let holder = former.holder.as_ref().map(|key| key.value.clone());
                (former.number.clone(), holder, NumberKind::Former)
            });
            let elsewhere = impression.ids.iter().map(|other| &other.id);
            let elsewhere = elsewhere.chain(&impression.web);
            let elsewhere = elsewhere.map(|id| (id.value.clone(), None, NumberKind::Elsewhere));
            for (number, holder, kind) in present.chain(former).chain(elsewhere) {
                let Some(key) = number_key(&number) else {
                    continue;
                };
                let accession = Accession {
                    impression: impression.key.clone(),
                    holder,
                    kind,
                    is_bare: false,
                };
                let bare = without_stops(&key);
                if bare != key {
                    let bare = all.entry(bare).or_default();
                    bare.push(Accession {
                        is_bare: true,
                        ..accession.clone()
                    });
                }
                all.entry(key).or_default().push(accession);
            }
        }
    }
    all
}
