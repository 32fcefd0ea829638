//! Designs and impressions as works of art (`VisualArtwork`).

use super::certain::{certain, plain};
use super::thing::{Thing, Value, addresses, identifiers};
use crate::model::certainty::Certainty;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::model::key::Key;
use crate::model::place::Placed;
use crate::model::size::Size;
use crate::model::vocabulary::List as Vocabulary;
use crate::page::preview::open_graph;
use crate::page::setting::address::Address;
use crate::page::setting::book::Here;

pub(super) fn design(here: &Here<'_>, design: &Design) -> Thing {
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

pub(super) fn impression(here: &Here<'_>, design: &Design, impression: &Impression) -> Thing {
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

/// The address of the picture of the page.
fn image(here: &Here<'_>) -> Option<String> {
    open_graph::image(here).map(|image| image.address)
}
