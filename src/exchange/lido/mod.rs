//! LIDO 1.1 (Lightweight Information Describing Objects): the records of sheets in the exchange format of museums.
//!
//! One file beside each design has a record for each of its sheets (`lidoWrap`). A file for each sheet would be as large
//! in all and make as many files again as the site has; a file of the whole stands in the OAI-PMH static repository
//! ([`super::oai`]), which holds the same records. Records of one sheet make one record. One that was
//! withdrawn makes none, unless an edition issued it: then the record stays and says why.
//!
//! | file | subject |
//! |---|---|
//! | `record` | the record of a sheet |
//! | `identification` | what identifies it: titles, marks, holders, state, description, sizes, paper |
//! | `events` | what happened to it: production, acquisitions, exhibitions |
//! | `relations` | what it shows, and to what it is related |
//! | `parts` | concepts, actors, dates, measurements |
//!
//! Order and names of elements follow the XML Schema of LIDO 1.1 (CIDOC Working Group LIDO, CC BY 4.0), which no package
//! registry carries; `tests/all/lido.rs` holds the records to its rules.

mod events;
mod identification;
mod parts;
mod record;
mod relations;

use super::format::{Format, Sources};
use super::issued::was_issued;
use super::xml::Xml;
use crate::model::design::Design;
use crate::model::impression::Impression;
use crate::page::{Address, Here, Subject};

/// The namespace of LIDO.
pub(super) const NAMESPACE: &str = "http://www.lido-schema.org";

/// The address of its XML Schema.
pub(super) const SCHEMA: &str = "http://www.lido-schema.org/schema/v1.1/lido-v1.1.xsd";

pub(super) const FORMAT: Format = Format {
    name: "lido",
    file: "lido.xml",
    folders: &["design/…/"],
    media_type: "application/xml",
    relation: "alternate",
    subjects,
    write,
};

/// The sheets of a design that have a record: each once, without withdrawn ones.
pub(super) fn sheets<'d>(
    sources: &Sources<'_>,
    design: &'d Design,
) -> impl Iterator<Item = &'d Impression> {
    let joined = &sources.studies.joined;
    let is_withdrawn = design.standing.is_withdrawn();
    let sheets = design.impressions.values();
    sheets.filter(move |sheet| {
        !is_withdrawn && !sheet.standing.is_withdrawn() && joined.has_page(&sheet.key)
    })
}

/// The sheets with a record beside their design: those above, and those that an edition issued and that were withdrawn,
/// whose records say so.
fn sheets_of_file<'d>(
    sources: &Sources<'_>,
    design: &'d Design,
) -> impl Iterator<Item = &'d Impression> {
    let (public, joined) = (sources.public, &sources.studies.joined);
    let is_withdrawn = design.standing.is_withdrawn();
    let sheets = design.impressions.values();
    sheets.filter(move |sheet| {
        let stands = !is_withdrawn && !sheet.standing.is_withdrawn();
        joined.has_page(&sheet.key) && (stands || was_issued(public, &sheet.key))
    })
}

fn subjects(sources: &Sources<'_>) -> Vec<Subject> {
    let designs = sources.public.designs.values();
    designs
        .filter(|design| sheets_of_file(sources, design).next().is_some())
        .map(|design| Subject::Page(Address::Design(design.key.clone())))
        .collect()
}

fn write(here: &Here<'_>, subject: &Subject) -> Option<Vec<u8>> {
    let Subject::Page(Address::Design(key)) = subject else {
        return None;
    };
    let design = here.public().designs.get(key)?;
    let sources = Sources::of(here.book);
    let mut xml = Xml::document();
    // Elements without a prefix take a quarter less; attributes need one.
    let namespaces = [("xmlns", NAMESPACE), ("xmlns:lido", NAMESPACE)];
    xml.element("lidoWrap", &namespaces, |xml| {
        for sheet in sheets_of_file(&sources, design) {
            xml.line();
            record(xml, here, design, sheet, &[]);
        }
        xml.line();
    });
    xml.line();
    Some(xml.bytes())
}

/// The record of a sheet, as an element `lido` with these attributes.
pub(super) fn record(
    xml: &mut Xml,
    here: &Here<'_>,
    design: &Design,
    sheet: &Impression,
    attributes: &[(&str, &str)],
) {
    xml.element("lido", attributes, |xml| {
        record::content(xml, here, design, sheet);
    });
}
