//! The building blocks of every record: names, identifiers, statements, times, dimensions, web pages and pictures.

use super::concepts::{
    self, ALTERNATE_NAME, Concept, DIGITAL_IMAGE, DIMENSIONS, DISPLAY_NAME, FORMER_NAME, HEIGHT,
    LOCAL_NUMBER, PRIMARY_NAME, SORT_NAME, WEB_PAGE, WIDTH,
};
use super::ids;
use super::node::Node;
use crate::model::certainty::{Certainty, Claim, Statement, Statements};
use crate::model::edtf::{Date, Day};
use crate::model::key::PictureKey;
use crate::model::literature::{Citation, Relation};
use crate::model::size::Size;
use crate::page::earlier_numbers::{self, NumberedPart};
use crate::page::html::CleanHtml;
use crate::page::{Address, Here, claims, dates, places};

/// A name of a kind.
pub(super) fn name(content: impl Into<String>, kind: Concept) -> Node {
    Node {
        content: Some(content.into()),
        classified_as: vec![kind.node()],
        ..Node::new("Name")
    }
}

/// The name by which the record is shown.
pub(super) fn primary_name(content: impl Into<String>) -> Node {
    name(content, PRIMARY_NAME)
}

/// A name in a language, where the thesaurus has that.
pub(super) fn name_in(content: impl Into<String>, kind: NameKind, language: Option<&str>) -> Node {
    let kind = match kind {
        NameKind::Primary => PRIMARY_NAME,
        NameKind::Alternate => ALTERNATE_NAME,
        NameKind::Former => FORMER_NAME,
        NameKind::Sort => SORT_NAME,
    };
    Node {
        language: language.and_then(concepts::language).into_iter().collect(),
        ..name(content, kind)
    }
}

/// Whether a claim is certain.
pub(super) fn is_certain(claim: &Claim) -> bool {
    claim.certainty() == Certainty::Certain
}

/// The kinds of names.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum NameKind {
    /// The one that is shown.
    Primary,
    /// Another.
    Alternate,
    /// One that is no longer used.
    Former,
    /// The one by which it is sorted.
    Sort,
}

/// The words that stand for a node when it is shown.
pub(super) fn display(content: impl Into<String>) -> Node {
    Node {
        content: Some(content.into()),
        classified_as: vec![DISPLAY_NAME.bare()],
        ..Node::new("Name")
    }
}

/// An identifier of a kind.
pub(super) fn identifier(content: impl Into<String>, kind: Concept) -> Node {
    Node {
        content: Some(content.into()),
        classified_as: vec![kind.node()],
        ..Node::new("Identifier")
    }
}

/// A number in this catalogue: "OP 7.5".
pub(super) fn number(here: &Here<'_>, number: &str) -> Node {
    let settings = &here.public().settings;
    let assigned = Node {
        label: Some(settings.title.value.clone()),
        ..Node::new("AttributeAssignment")
    };
    Node {
        assigned_by: vec![assigned],
        ..identifier(format!("{} {number}", settings.siglum.value), LOCAL_NUMBER)
    }
}

/// The numbers of earlier catalogues for the same thing; of others, which cover more or less, statements.
pub(super) fn earlier_numbers(
    here: &Here<'_>,
    literature: &[Citation],
    part: NumberedPart,
) -> (Vec<Node>, Vec<Node>) {
    let (mut numbers, mut notes) = (Vec::new(), Vec::new());
    for citation in literature {
        match (&citation.number, citation.relation) {
            (Some(number), Relation::Same) => {
                let work = here.cited(&citation.cite.value, citation.at.as_deref());
                let source = Node {
                    referred_to_by: vec![Node {
                        content: Some(work.plain()),
                        ..Node::new("LinguisticObject")
                    }],
                    ..Node::new("AttributeAssignment")
                };
                numbers.push(Node {
                    assigned_by: vec![source],
                    ..identifier(number.as_str(), LOCAL_NUMBER)
                });
            }
            (Some(_), _) => notes.extend(statement(
                concepts::NOTE,
                earlier_numbers::citation(here, citation, part).plain(),
            )),
            (None, _) => {}
        }
    }
    (numbers, notes)
}

/// A statement in words; `None` where there are none.
pub(super) fn statement(kind: Concept, content: impl Into<String>) -> Option<Node> {
    let content = content.into();
    (!content.is_empty()).then(|| Node {
        content: Some(content),
        classified_as: vec![concepts::statement_kind(kind)],
        ..Node::new("LinguisticObject")
    })
}

/// The time of an event: the first and the last moment that it can have been, where the date has them, and the date in
/// words. Qualifiers (`?`, `~`) never move a bound; only the words tell them.
pub(super) fn timespan(here: &Here<'_>, date: &Date) -> Option<Box<Node>> {
    Node {
        begin_of_the_begin: date.earliest().day().and_then(first_moment),
        end_of_the_end: date.latest().day().and_then(last_moment),
        identified_by: vec![display(dates::once(date, here.words()))],
        ..Node::new("TimeSpan")
    }
    .boxed()
}

/// The same of something that lasted throughout the date.
pub(super) fn lasting(here: &Here<'_>, date: &Date) -> Option<Box<Node>> {
    let span = timespan(here, date)?;
    Node {
        identified_by: vec![display(dates::throughout(date, here.words()))],
        ..*span
    }
    .boxed()
}

/// The time of an event of which only is known that it was not after a date.
pub(super) fn at_the_latest(here: &Here<'_>, date: &Date) -> Option<Box<Node>> {
    let until = dates::once_html(date, here.words());
    let said = here.words().html("date-until", None, &[("date", &until)]);
    Node {
        end_of_the_end: date.latest().day().and_then(last_moment),
        identified_by: vec![display(said.plain())],
        ..Node::new("TimeSpan")
    }
    .boxed()
}

/// The first moment of a day, as an `xsd:dateTime`; `None` of a year that has not four digits.
pub(super) fn first_moment(day: Day) -> Option<String> {
    let plain = (0..=9999).contains(&day.year);
    plain.then(|| format!("{day}T00:00:00Z"))
}

/// The last moment of a day.
pub(super) fn last_moment(day: Day) -> Option<String> {
    let plain = (0..=9999).contains(&day.year);
    plain.then(|| format!("{day}T23:59:59Z"))
}

/// Who makes a claim, and when: an assignment of what the node stands at. `None` where neither is recorded.
pub(super) fn assignment(here: &Here<'_>, claim: &Claim) -> Option<Node> {
    let by = claim.by.as_ref().and_then(|by| ids::agent(here, &by.value));
    let date = claim.date.as_ref();
    let source = claim.cite.as_ref();
    let source = source.map(|cite| here.cited(&cite.value, claim.at.as_deref()).plain());
    if by.is_none() && date.is_none() && source.is_none() {
        return None;
    }
    let source = source.map(|content| Node {
        content: Some(content),
        ..Node::new("LinguisticObject")
    });
    Some(Node {
        carried_out_by: by.into_iter().collect(),
        timespan: date.and_then(|date| timespan(here, date)),
        referred_to_by: source.into_iter().collect(),
        ..Node::new("AttributeAssignment")
    })
}

/// The catalogue's own view of a size as height and width, where it is certain, with who measured it; `of` is the part
/// measured, by its entry in the glossary and its word.
pub(super) fn dimensions(
    here: &Here<'_>,
    sizes: &Statements<Size>,
    of: (&'static str, &'static str),
) -> Vec<Node> {
    let Some(Statement { is, claim }) = sizes.iter().next() else {
        return Vec::new();
    };
    if !is_certain(claim) {
        return Vec::new();
    }
    let (entry, word) = of;
    let measuring = Node {
        technique: vec![concepts::glossary_word(
            here,
            entry,
            here.words().word(word),
        )],
        ..assignment(here, claim).unwrap_or_else(|| Node::new("AttributeAssignment"))
    };
    [(is.height_mm(), HEIGHT), (is.width_mm(), WIDTH)]
        .map(|(value, kind)| Node {
            value: Some(value),
            unit: concepts::millimetres().boxed(),
            classified_as: vec![kind.node()],
            assigned_by: vec![measuring.clone()],
            ..Node::new("Dimension")
        })
        .into()
}

/// A size in words, with the views of others and what is not certain, where that says more than [`dimensions`].
pub(super) fn dimensions_in_words(
    here: &Here<'_>,
    sizes: &Statements<Size>,
    word: &'static str,
) -> Option<Node> {
    let tells_more = sizes.iter().any(|s| !is_certain(&s.claim)) || sizes.iter().count() > 1;
    sizes_in_words(here, sizes, word).filter(|_| tells_more)
}

/// A size in words, with the views of others and what is not certain.
pub(super) fn sizes_in_words(
    here: &Here<'_>,
    sizes: &Statements<Size>,
    word: &'static str,
) -> Option<Node> {
    let said: Vec<String> = sizes
        .iter()
        .map(|Statement { is, claim }| {
            let size = CleanHtml::text(&format!("{} mm ({})", is.value, here.words().word(word)));
            claims::with_claim(here, size, claim).plain()
        })
        .collect();
    statement(DIMENSIONS, said.join("; "))
}

/// The page about a thing, and its manifest where it has one. `fragment` is the place on the page.
pub(super) fn subject_of(here: &Here<'_>, page: &Address, fragment: Option<&str>) -> Vec<Node> {
    let mut address = ids::page_address(here, page);
    if let Some(fragment) = fragment {
        address = format!("{address}#{fragment}");
    }
    let manifest = fragment.is_none() && places::has_manifest(here, page);
    let manifest = manifest.then(|| Node {
        conforms_to: vec![Node {
            id: Some("http://iiif.io/api/presentation/".to_owned()),
            ..Node::new("InformationObject")
        }],
        ..digital(places::manifest_id(here, page), places::MANIFEST_TYPE)
    });
    std::iter::once(web_page(address))
        .chain(manifest.map(carried_by))
        .collect()
}

/// A page on the web, as what tells of a thing.
pub(super) fn web_page(address: impl Into<String>) -> Node {
    carried_by(page_file(address))
}

/// A page on the web, as a file.
pub(super) fn page_file(address: impl Into<String>) -> Node {
    Node {
        classified_as: vec![WEB_PAGE.node()],
        ..digital(address.into(), "text/html")
    }
}

fn carried_by(carrier: Node) -> Node {
    Node {
        digitally_carried_by: vec![carrier],
        ..Node::new("LinguisticObject")
    }
}

/// A file on the web.
pub(super) fn digital(address: String, format: &str) -> Node {
    Node {
        access_point: vec![Node {
            id: Some(address),
            ..Node::new("DigitalObject")
        }],
        format: Some(format.to_owned()),
        ..Node::new("DigitalObject")
    }
}

/// A picture as what represents a thing: its file, and its image service where it has one.
pub(super) fn representation(here: &Here<'_>, key: &PictureKey) -> Option<Node> {
    let file = places::largest_file(here, key)?;
    let service = places::service_id(here, key).map(|id| Node {
        access_point: vec![Node {
            id: Some(id),
            ..Node::new("DigitalObject")
        }],
        conforms_to: vec![Node {
            id: Some("http://iiif.io/api/image".to_owned()),
            ..Node::new("InformationObject")
        }],
        ..Node::new("DigitalService")
    });
    let image = Node {
        classified_as: vec![DIGITAL_IMAGE.node()],
        digitally_available_via: service.into_iter().collect(),
        ..digital(file.address, "image/jpeg")
    };
    Some(Node {
        digitally_shown_by: vec![image],
        ..Node::new("VisualItem")
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// XML Schema 1.1, `dateTime`: a year has at least four digits. JSON schemas of the model ask for RFC 3339, which
    /// has exactly four.
    #[test]
    fn moments_have_years_of_four_digits() {
        let moment = |text: &str| {
            let date = Date::parse(text).unwrap();
            let first = date.earliest().day().and_then(first_moment);
            let last = date.latest().day().and_then(last_moment);
            (first, last)
        };
        let some = |text: &str| Some(text.to_owned());
        assert_eq!(
            moment("1927~"),
            (some("1927-01-01T00:00:00Z"), some("1927-12-31T23:59:59Z"))
        );
        assert_eq!(moment("1940/.."), (some("1940-01-01T00:00:00Z"), None));
        assert_eq!(moment("-0044"), (None, None));
    }
}
