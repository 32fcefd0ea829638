//! A time before it is written as EDTF: its ends, each with its qualifiers.

use crate::model::edtf::Date;

/// An end: an EDTF date of one point without qualifiers (`1925`, `1925-05`, `193X`), and its qualifiers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Bound {
    /// The date.
    pub body: String,
    /// Whether it is approximate ("circa").
    pub is_approximate: bool,
    /// Whether it is uncertain ("probably", "?").
    pub is_uncertain: bool,
}

impl Bound {
    /// A point without qualifiers.
    pub fn at(body: impl Into<String>) -> Bound {
        Bound {
            body: body.into(),
            is_approximate: false,
            is_uncertain: false,
        }
    }

    /// A point that is approximate.
    pub fn about(body: impl Into<String>) -> Bound {
        Bound {
            is_approximate: true,
            ..Bound::at(body)
        }
    }

    fn edtf(&self) -> String {
        let qualifier = match (self.is_approximate, self.is_uncertain) {
            (false, false) => "",
            (true, false) => "~",
            (false, true) => "?",
            (true, true) => "%",
        };
        format!("{}{qualifier}", self.body)
    }
}

/// A time with a first and a last point; a single point has one for both.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Extent {
    /// The first point.
    pub first: Bound,
    /// The last point.
    pub last: Bound,
}

impl Extent {
    /// A single point.
    pub fn point(body: impl Into<String>) -> Extent {
        let bound = Bound::at(body);
        Extent {
            first: bound.clone(),
            last: bound,
        }
    }

    /// Whether it is a single point.
    pub fn is_point(&self) -> bool {
        self.first.body == self.last.body
    }

    /// Qualifies both ends.
    pub fn qualify(&mut self, approximate: bool, uncertain: bool) {
        for bound in [&mut self.first, &mut self.last] {
            bound.is_approximate |= approximate;
            bound.is_uncertain |= uncertain;
        }
    }

    fn edtf(&self) -> String {
        if self.is_point() {
            self.first.edtf()
        } else {
            format!("{}/{}", self.first.edtf(), self.last.edtf())
        }
    }

    fn edtf_of_set(&self) -> String {
        if self.is_point() {
            self.first.edtf()
        } else {
            format!("{}..{}", self.first.edtf(), self.last.edtf())
        }
    }
}

/// A time as a cell tells it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Time {
    /// A point or a span.
    Extent(Extent),
    /// One of several ("or").
    OneOf(Vec<Extent>),
    /// Each of several ("and").
    All(Vec<Extent>),
    /// Some time up to a point ("before", "by").
    UpTo(Bound),
    /// Some time from a point on ("after").
    From(Bound),
    /// From a point without an end ("since").
    Since(Bound),
    /// To a point without a beginning ("until").
    Until(Bound),
}

impl Time {
    /// The date; `None` where EDTF has no such one, as where the end lies before the beginning.
    ///
    /// "Before 1925" keeps 1925 and "after 1950" keeps 1950: the words are used loosely, and a reading may not exclude
    /// what the writer meant (so index dates are given, CDWA, from memory).
    pub fn date(&self) -> Option<Date> {
        let set = |extents: &[Extent]| {
            let members: Vec<String> = extents.iter().map(Extent::edtf_of_set).collect();
            members.join(",")
        };
        let text = match self {
            Time::Extent(extent) => extent.edtf(),
            Time::OneOf(extents) => format!("[{}]", set(extents)),
            Time::All(extents) => format!("{{{}}}", set(extents)),
            Time::UpTo(bound) => format!("[..{}]", bound.edtf()),
            Time::From(bound) => format!("[{}..]", bound.edtf()),
            Time::Since(bound) => format!("{}/..", bound.edtf()),
            Time::Until(bound) => format!("../{}", bound.edtf()),
        };
        Date::parse(&text).ok()
    }
}
