//! The record of a page in the vocabulary of schema.org, as JSON-LD in the page: designs and impressions
//! (`VisualArtwork`), people, holders, the catalogue, its data (`Dataset`), and for every page the pages above it
//! (`BreadcrumbList`).
//!
//! Source: types and properties as in PyPI `msgspec-schemaorg` 0.2.1, made from the vocabulary, with which the tests read
//! the blocks. A search engine needs few facts and no doubts: a date is given only where it is a plain year, month or day
//! and the catalogue is certain of it, a maker only where that is certain. Linked Art, beside the page, has the rest.
//! A private owner has no record here.
//!
//! The block is data and never run, which the Content-Security-Policy of pages allows; no text in it can end it.

use serde::Serialize;

use super::open_graph;
use super::trail;
use crate::model::as_found::OtherId;
use crate::model::certainty::{Certainty, Statements};
use crate::model::design::Design;
use crate::model::edtf::Date;
use crate::model::edtf::parts::Edtf;
use crate::model::holder::{Holder, HolderKind};
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::person::Person;
use crate::model::place::Placed;
use crate::model::size::Size;
use crate::model::vocabulary::List as Vocabulary;
use crate::page::phrases::rights;
use crate::page::setting::address::{Address, Overview};
use crate::page::setting::book::Here;
use crate::page::setting::exports::Subject;
use crate::page::setting::html::CleanHtml;
use crate::page::setting::leaf::Leaf;
use crate::page::setting::words::Argument;

/// The block of a page.
#[derive(Serialize)]
struct Block {
    #[serde(rename = "@context")]
    context: &'static str,
    #[serde(rename = "@graph")]
    graph: Vec<Thing>,
}

/// Anything that a page is about. What is empty is not written.
#[derive(Default, Serialize)]
#[serde(rename_all = "camelCase")]
struct Thing {
    #[serde(rename = "@type")]
    kind: &'static str,
    #[serde(rename = "@id", skip_serializing_if = "Option::is_none")]
    id: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    name: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    alternate_name: Vec<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    description: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    url: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    same_as: Vec<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    image: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    identifier: Vec<Thing>,
    #[serde(rename = "propertyID", skip_serializing_if = "Option::is_none")]
    property_id: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    value: Option<Value>,
    #[serde(skip_serializing_if = "Option::is_none")]
    unit_code: Option<&'static str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    creator: Vec<Thing>,
    #[serde(skip_serializing_if = "Option::is_none")]
    date_created: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    date_modified: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    artform: Vec<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    artwork_surface: Vec<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    height: Option<Box<Thing>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    width: Option<Box<Thing>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    credit_text: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    example_of_work: Option<Box<Thing>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    is_part_of: Option<Box<Thing>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    in_language: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    birth_date: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    death_date: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    address: Option<Box<Thing>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    address_locality: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    address_country: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    license: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    version: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    is_accessible_for_free: Option<bool>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    distribution: Vec<Thing>,
    #[serde(skip_serializing_if = "Option::is_none")]
    content_url: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    encoding_format: Option<&'static str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    item_list_element: Vec<Thing>,
    #[serde(skip_serializing_if = "Option::is_none")]
    position: Option<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    item: Option<String>,
}

/// The value of a property: a number or a text.
#[derive(Serialize)]
#[serde(untagged)]
enum Value {
    Number(f64),
    Text(String),
}

impl Thing {
    fn new(kind: &'static str) -> Thing {
        Thing {
            kind,
            ..Thing::default()
        }
    }

    /// The thing that a page is about, named by the address of the page.
    fn of_page(here: &Here<'_>, kind: &'static str, page: &Address, name: &str) -> Thing {
        let address = page.absolute(&here.public().settings.address.value);
        Thing {
            id: Some(address.clone()),
            url: Some(address),
            name: Some(name.to_owned()),
            ..Thing::new(kind)
        }
    }

    /// A reference to such a thing.
    fn reference(here: &Here<'_>, kind: &'static str, page: &Address, name: &str) -> Thing {
        Thing {
            url: None,
            ..Thing::of_page(here, kind, page, name)
        }
    }

    /// An identifier: what it is, and its value.
    fn identifier(property: &str, value: &str) -> Thing {
        Thing {
            property_id: Some(property.to_owned()),
            value: Some(Value::Text(value.to_owned())),
            ..Thing::new("PropertyValue")
        }
    }
}

/// The block of a page; `None` where the page is about nothing of its own: one that only leads to another, or the page
/// of an address that leads to nothing.
pub(crate) fn of_page(here: &Here<'_>, leaf: &Leaf) -> Option<CleanHtml> {
    if leaf.stands_at.is_some() || *here.address == Address::NotFound {
        return None;
    }
    let graph: Vec<Thing> = thing(here)
        .into_iter()
        .chain(breadcrumbs(here, leaf))
        .collect();
    (!graph.is_empty()).then(|| {
        CleanHtml::data(&Block {
            context: "https://schema.org",
            graph,
        })
    })
}

/// What a page is about.
fn thing(here: &Here<'_>) -> Option<Thing> {
    let public = here.public();
    match here.address {
        Address::Opening => Some(catalogue(here)),
        Address::Design(key) => Some(design(here, public.designs.get(key)?)),
        Address::Impression(key) => {
            let design = public.designs.get(&key.design)?;
            Some(impression(
                here,
                design,
                design.impressions.get(&key.number)?,
            ))
        }
        Address::Person(key) => Some(person(here, public.people.get(key)?)),
        Address::Holder(key) => holder(here, public.holders.get(key)?),
        Address::Overview(Overview::Data) => Some(dataset(here)),
        _ => None,
    }
}

/// The pages above, and the page itself.
fn breadcrumbs(here: &Here<'_>, leaf: &Leaf) -> Option<Thing> {
    let base = &here.public().settings.address.value;
    let above = trail::above(here);
    let last = (leaf.title.clone(), here.address.absolute(base));
    if above.is_empty() {
        return None;
    }
    let steps = above
        .into_iter()
        .map(|step| (step.name, step.address.absolute(base)));
    let steps = steps.chain([last]).zip(1..);
    let steps = steps.map(|((name, address), position)| Thing {
        position: Some(position),
        name: Some(name),
        item: Some(address),
        ..Thing::new("ListItem")
    });
    Some(Thing {
        item_list_element: steps.collect(),
        ..Thing::new("BreadcrumbList")
    })
}

/// The catalogue.
fn catalogue(here: &Here<'_>) -> Thing {
    let settings = &here.public().settings;
    Thing {
        in_language: Some(settings.language.value.clone()),
        license: settings.licence.as_deref().and_then(rights::uri),
        ..Thing::of_page(here, "WebSite", &Address::Opening, &settings.title.value)
    }
}

/// The data of the catalogue, with the files that the page about them links to.
fn dataset(here: &Here<'_>) -> Thing {
    let settings = &here.public().settings;
    let base = settings.address.value.trim_end_matches('/');
    let title = [("title", Argument::Text(&settings.title.value))];
    let editors = settings.editors.iter();
    let editors = editors.filter_map(|key| {
        let person = here.public().people.get(&key.value)?;
        let page = Address::Person(key.value.clone());
        Some(Thing::reference(here, "Person", &page, &person.name.value))
    });
    let files = &here.book.exports.files;
    let subject = Subject::Page(here.address.clone());
    let files = files.get(&subject).into_iter().flatten().map(|file| {
        let id = format!("format-{}", file.format);
        Thing {
            name: Some(here.words().word(&id).to_owned()),
            content_url: Some(format!("{base}/{}", file.path)),
            encoding_format: Some(file.media_type),
            ..Thing::new("DataDownload")
        }
    });
    Thing {
        description: Some(here.words().with("dataset-description", &title)),
        creator: editors.collect(),
        license: settings.licence.as_deref().and_then(rights::uri),
        version: settings.edition.clone(),
        date_modified: settings.dated.as_ref().and_then(|date| plain(date)),
        in_language: Some(settings.language.value.clone()),
        is_accessible_for_free: Some(true),
        distribution: files.collect(),
        ..Thing::of_page(here, "Dataset", here.address, &settings.title.value)
    }
}

fn design(here: &Here<'_>, design: &Design) -> Thing {
    let page = Address::Design(design.key.clone());
    let (title, others) = titles(here, design);
    let siglum = &here.public().settings.siglum.value;
    Thing {
        alternate_name: others,
        identifier: std::iter::once(Thing::identifier(siglum, &design.number))
            .chain(identifiers(&design.ids))
            .collect(),
        same_as: addresses(&design.ids).collect(),
        image: image(here),
        date_created: certain(&design.date).and_then(plain),
        is_part_of: Some(Box::new(catalogue_reference(here))),
        ..artwork(
            here,
            design,
            &design.technique,
            certain(&design.size.image),
            Thing::of_page(here, "VisualArtwork", &page, &title),
        )
    }
}

fn impression(here: &Here<'_>, design: &Design, impression: &Impression) -> Thing {
    let page = Address::Impression(impression.key.clone());
    let (title, _) = titles(here, design);
    let number = here.sheet_number(&impression.key);
    let siglum = &here.public().settings.siglum.value;
    let holder = impression.holder.as_ref();
    let holder = holder.and_then(|key| here.public().holders.get(&key.value));
    let accession = impression.accession_and_part().zip(holder);
    let accession =
        accession.map(|(number, holder)| Thing::identifier(&here.holder_name(holder), &number));
    let of_holder = holder.and_then(|holder| holder.credit.clone());
    let of_design = Address::Design(design.key.clone());
    let of_design = Thing::reference(here, "VisualArtwork", &of_design, &title);
    Thing {
        identifier: [Thing::identifier(siglum, &number)]
            .into_iter()
            .chain(accession)
            .chain(identifiers(&impression.ids))
            .collect(),
        same_as: impression
            .web
            .iter()
            .map(|web| web.value.clone())
            .chain(addresses(&impression.ids))
            .collect(),
        image: image(here),
        date_created: certain(&impression.sheet.date).and_then(plain),
        credit_text: impression.credit.clone().or(of_holder),
        example_of_work: Some(Box::new(of_design)),
        artwork_surface: impression
            .sheet
            .paper
            .iter()
            .map(|paper| here.term(Vocabulary::Papers, paper.as_str()))
            .collect(),
        ..artwork(
            here,
            design,
            design.technique_of(impression),
            certain(&impression.sheet.size),
            Thing::of_page(here, "VisualArtwork", &page, &format!("{title}, {number}")),
        )
    }
}

/// What a design and its impressions have in common: technique, makers, size.
fn artwork(
    here: &Here<'_>,
    design: &Design,
    technique: &[Placed<Key>],
    size: Option<&Size>,
    thing: Thing,
) -> Thing {
    let mut creators: Vec<Thing> = Vec::new();
    for maker in &design.makers {
        let key = &maker.person.value;
        let page = Address::Person(key.clone()).absolute(&here.public().settings.address.value);
        let is_known = creators
            .iter()
            .any(|known| known.id.as_ref() == Some(&page));
        let person = here.public().people.get(key);
        if let Some(person) = person
            && maker.claim.certainty() == Certainty::Certain
            && !is_known
        {
            let page = Address::Person(key.clone());
            creators.push(Thing::reference(here, "Person", &page, &person.name.value));
        }
    }
    let millimetres = |value: f64| {
        Box::new(Thing {
            value: Some(Value::Number(value)),
            // UN/CEFACT Recommendation 20: millimetre.
            unit_code: Some("MMT"),
            ..Thing::new("QuantitativeValue")
        })
    };
    Thing {
        artform: technique
            .iter()
            .map(|technique| here.term(Vocabulary::Techniques, technique.as_str()))
            .collect(),
        creator: creators,
        height: size.map(|size| millimetres(size.height_mm())),
        width: size.map(|size| millimetres(size.width_mm())),
        ..thing
    }
}

/// The usual title, and the others.
fn titles(here: &Here<'_>, design: &Design) -> (String, Vec<String>) {
    let usual = design.title();
    let others = design.titles.iter();
    let others = others.filter(|title| !usual.is_some_and(|usual| std::ptr::eq(usual, *title)));
    let title = usual.map_or_else(
        || here.design_title(design).plain(),
        |usual| usual.text.value.clone(),
    );
    (
        title,
        others.map(|title| title.text.value.clone()).collect(),
    )
}

fn catalogue_reference(here: &Here<'_>) -> Thing {
    let title = &here.public().settings.title.value;
    Thing::reference(here, "WebSite", &Address::Opening, title)
}

fn person(here: &Here<'_>, person: &Person) -> Thing {
    let page = Address::Person(person.key.clone());
    let day = |date: &Option<crate::model::place::Placed<Date>>| {
        date.as_ref().and_then(|date| plain(&date.value))
    };
    Thing {
        alternate_name: person.names.iter().map(|n| n.text.value.clone()).collect(),
        birth_date: day(&person.born),
        death_date: day(&person.died),
        identifier: identifiers(&person.ids).collect(),
        same_as: person
            .authority
            .iter()
            .map(|a| a.value.clone())
            .chain(addresses(&person.ids))
            .collect(),
        ..Thing::of_page(here, "Person", &page, &person.name.value)
    }
}

/// A holder; `None` of a private one.
fn holder(here: &Here<'_>, holder: &Holder) -> Option<Thing> {
    let kind = match holder.kind {
        HolderKind::Museum => "Museum",
        HolderKind::Library => "Library",
        HolderKind::Archive => "ArchiveOrganization",
        HolderKind::Foundation | HolderKind::Trade | HolderKind::Unknown => "Organization",
        HolderKind::Private => return None,
    };
    let page = Address::Holder(holder.key.clone());
    let town = holder.town.as_ref().map(|town| town.value.clone());
    let country = holder.country.as_ref().map(|code| code.value.clone());
    let address = (town.is_some() || country.is_some()).then(|| {
        Box::new(Thing {
            address_locality: town,
            address_country: country,
            ..Thing::new("PostalAddress")
        })
    });
    let isil = holder.isil.iter();
    Some(Thing {
        alternate_name: holder
            .formerly
            .iter()
            .map(|f| f.name.value.clone())
            .collect(),
        identifier: isil
            .map(|isil| Thing::identifier("ISIL", &isil.value))
            .chain(identifiers(&holder.ids))
            .collect(),
        same_as: holder
            .web
            .iter()
            .map(|web| web.value.clone())
            .chain(addresses(&holder.ids))
            .collect(),
        address,
        ..Thing::of_page(here, kind, &page, &here.holder_name(holder))
    })
}

/// The identifiers of a record elsewhere that are no addresses.
fn identifiers(ids: &[OtherId]) -> impl Iterator<Item = Thing> {
    let plain = ids.iter().filter(|other| other.address().is_none());
    plain.map(|other| Thing::identifier(&other.scheme, &other.id))
}

/// Those that are.
fn addresses(ids: &[OtherId]) -> impl Iterator<Item = String> {
    ids.iter()
        .filter_map(|other| other.address().map(str::to_owned))
}

/// The address of the picture of the page.
fn image(here: &Here<'_>) -> Option<String> {
    open_graph::image(here).map(|image| image.address)
}

/// The catalogue's own view, where it is certain.
fn certain<T>(statements: &Statements<T>) -> Option<&T> {
    let own = statements.iter().next()?;
    (own.claim.certainty() == Certainty::Certain).then_some(&own.is.value)
}

/// A date that is a plain year, month or day, which ISO 8601 writes in the same way.
fn plain(date: &Date) -> Option<String> {
    let is_plain = matches!(date.edtf(), Edtf::Date(_)) && !date.is_loose();
    let text = date.as_str();
    let has_digits = text
        .split('-')
        .all(|part| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit()));
    (is_plain && has_digits).then(|| text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_plain_dates_are_given() {
        let given = |text: &str| plain(&Date::parse(text).unwrap());
        for text in ["1927", "1927-03", "1927-03-14"] {
            assert_eq!(given(text).as_deref(), Some(text));
        }
        for text in [
            "1927~",
            "1927?",
            "192X",
            "1927/1931",
            "1927-21",
            "-0044",
            "[1927,1929]",
        ] {
            assert_eq!(given(text), None, "{text}");
        }
    }
}
