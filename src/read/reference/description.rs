//! Reads the fields from which a reference is made out of an entry in BibTeX or BibLaTeX.
//!
//! In: an entry of `biblatex`, with the fields it takes by `crossref` and `xdata`. Out: [`Description`].
//! An absent field is an empty text.

use biblatex::{
    ChunksExt, ChunksRef, Date, DateValue, EditorType, EntryType, PermissiveType, Person,
    RetrievalError, TypeError,
};
use url::Url;

use super::line::isolated;

/// A work of the literature as its entry describes it.
pub(in crate::read) struct Description {
    pub(super) key: String,
    pub(super) kind: Kind,
    /// Whether it was never published: a letter, a ledger, a diary.
    pub(super) is_unpublished: bool,
    pub(super) authors: Vec<Person>,
    pub(super) editors: Vec<Person>,
    pub(super) compilers: Vec<Person>,
    pub(super) translators: Vec<Person>,
    /// The authors of the book that the work is a part of.
    pub(super) host_authors: Vec<Person>,
    /// Title and subtitle.
    pub(super) title: String,
    /// Whether the title is that of a book or report, which is set in italics.
    pub(super) is_a_book_title: bool,
    /// Title and subtitle of the book or journal that the work is a part of.
    pub(super) host: String,
    /// Title and subtitle of the work in several volumes that the book is a volume of.
    pub(super) main_title: String,
    pub(super) genre: Genre,
    pub(super) edition: Edition,
    pub(super) volume: String,
    pub(super) volumes: String,
    pub(super) series: String,
    /// The number of a journal's issue, of a volume in its series, or of a report.
    pub(super) number: String,
    pub(super) pages: String,
    pub(super) chapter: String,
    pub(super) version: String,
    /// The title and place of a conference.
    pub(super) event: String,
    pub(super) place: String,
    pub(super) publisher: String,
    pub(super) date: Option<Date>,
    pub(super) original_date: Option<Date>,
    /// "forthcoming" and the like.
    pub(super) status: String,
    /// The address: `https://doi.org/…` where there is a DOI.
    pub(super) link: String,
    /// When the address was last visited.
    pub(super) visited: Option<Date>,
}

/// How a work is set.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// A book in one volume or several; also collections and proceedings.
    Book,
    /// A part of a book with a title of its own.
    Part,
    /// A contribution to a journal.
    Article,
    /// A thesis.
    Thesis,
    /// A report of an institution.
    Report,
    /// A page of the web.
    Online,
    /// Anything else, such as a manuscript or a leaflet.
    Other,
}

impl Kind {
    fn of(entry: &biblatex::Entry) -> Kind {
        match &entry.entry_type {
            EntryType::Book
            | EntryType::MvBook
            | EntryType::Collection
            | EntryType::MvCollection
            | EntryType::Proceedings
            | EntryType::MvProceedings
            | EntryType::Reference
            | EntryType::MvReference
            | EntryType::Periodical
            | EntryType::Manual => Kind::Book,
            // In BibTeX, `title` is the title of the book here.
            EntryType::InBook if entry.book_title().is_err() && entry.main_title().is_err() => {
                Kind::Book
            }
            EntryType::InBook
            | EntryType::InCollection
            | EntryType::InProceedings
            | EntryType::InReference
            | EntryType::BookInBook
            | EntryType::SuppBook
            | EntryType::SuppCollection => Kind::Part,
            EntryType::Article | EntryType::SuppPeriodical => Kind::Article,
            // In BibLaTeX, a review is a special kind of article.
            EntryType::Unknown(name) if name.eq_ignore_ascii_case("review") => Kind::Article,
            EntryType::Thesis | EntryType::PhdThesis | EntryType::MastersThesis => Kind::Thesis,
            EntryType::Report | EntryType::TechReport => Kind::Report,
            EntryType::Online => Kind::Online,
            _ if entry.url().is_ok() => match entry.entry_type {
                EntryType::Unpublished | EntryType::Dataset | EntryType::Patent => Kind::Other,
                _ => Kind::Online,
            },
            _ => Kind::Other,
        }
    }
}

/// The people under whose names a work is listed, in the full form and in the short one.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Head {
    Authors,
    Editors,
    Compilers,
    Translators,
    /// No people: the title stands first.
    Title,
}

/// The sort of work, such as a thesis or a report.
pub(super) enum Genre {
    /// The entry does not say.
    Unsaid,
    /// In the words of the entry.
    Written(String),
    /// The id of the word for the entry's type.
    Word(&'static str),
}

/// The edition of the work.
pub(super) enum Edition {
    /// The entry does not say.
    Unsaid,
    /// The first is 1.
    Nth(i64),
    /// In the words of the entry.
    Written(String),
}

impl Description {
    /// # Errors
    /// Where a year, month, day or number of volumes is not one.
    pub(in crate::read) fn read(entry: &biblatex::Entry) -> Result<Description, TypeError> {
        let kind = Kind::of(entry);
        let is_article = kind == Kind::Article;
        let mut editors = Vec::new();
        let mut compilers = Vec::new();
        for (people, role) in entry.editors()? {
            match role {
                EditorType::Compiler => compilers.extend(people),
                _ => editors.extend(people),
            }
        }
        let mut main_title = titled(entry, &["maintitle"], "mainsubtitle");
        let mut host = if is_article {
            titled(entry, &["journaltitle", "journal"], "journalsubtitle")
        } else {
            titled(entry, &["booktitle"], "booksubtitle")
        };
        if kind == Kind::Part && host.is_empty() {
            host = std::mem::take(&mut main_title);
        }
        let publishers = entry.publisher().or_else(|_| entry.organization());
        let publisher = publishers.map_or_else(
            |_| text(entry.institution()),
            |all| {
                let all: Vec<String> = all.iter().map(|one| plain(one)).collect();
                all.join(", ")
            },
        );
        let number = if is_article {
            entry.issue().or_else(|_| entry.number())
        } else {
            entry.number()
        };
        Ok(Description {
            key: entry.key.clone(),
            kind,
            is_unpublished: entry.entry_type == EntryType::Unpublished,
            authors: entry.author().unwrap_or_default(),
            editors,
            compilers,
            translators: entry.translator().unwrap_or_default(),
            host_authors: entry.book_author().unwrap_or_default(),
            title: titled(entry, &["title"], "subtitle"),
            is_a_book_title: matches!(kind, Kind::Book | Kind::Report)
                || entry.entry_type == EntryType::BookInBook,
            host,
            main_title,
            genre: genre(entry),
            edition: match present(entry.edition())? {
                None => Edition::Unsaid,
                Some(PermissiveType::Typed(n)) => Edition::Nth(n),
                Some(PermissiveType::Chunks(chunks)) => Edition::Written(plain(&chunks)),
            },
            volume: match present(entry.volume())? {
                None => String::new(),
                Some(PermissiveType::Typed(n)) => n.to_string(),
                Some(PermissiveType::Chunks(chunks)) => plain(&chunks),
            },
            volumes: present(entry.volumes())?.map_or_else(String::new, |n| n.to_string()),
            series: text(entry.series()),
            number: text(number),
            pages: text(entry.get("pages").ok_or(())),
            chapter: text(entry.chapter()),
            version: text(entry.version()),
            event: joined(&[&text(entry.eventtitle()), &text(entry.venue())], ", "),
            place: text(entry.location()),
            publisher,
            date: date(entry.date())?,
            original_date: date(entry.orig_date())?,
            status: text(entry.pubstate()),
            link: link(entry),
            visited: date(entry.url_date())?,
        })
    }

    /// The same with each of its texts isolated where it is written from right to left.
    pub(super) fn isolated(mut self) -> Description {
        for text in [
            &mut self.title,
            &mut self.host,
            &mut self.main_title,
            &mut self.volume,
            &mut self.series,
            &mut self.number,
            &mut self.pages,
            &mut self.chapter,
            &mut self.version,
            &mut self.event,
            &mut self.place,
            &mut self.publisher,
            &mut self.status,
            &mut self.link,
        ] {
            *text = isolated(text);
        }
        if let Genre::Written(text) = &mut self.genre {
            *text = isolated(text);
        }
        if let Edition::Written(text) = &mut self.edition {
            *text = isolated(text);
        }
        self
    }

    /// Under whom the work is listed.
    pub(super) fn head(&self) -> Head {
        // Editors and translators of the book that contains a part are named with the book.
        let may_head = |people: &[Person]| !people.is_empty() && self.kind != Kind::Part;
        if !self.authors.is_empty() {
            Head::Authors
        } else if may_head(&self.editors) {
            Head::Editors
        } else if may_head(&self.compilers) {
            Head::Compilers
        } else if may_head(&self.translators) {
            Head::Translators
        } else {
            Head::Title
        }
    }

    /// The people under whom the work is listed.
    pub(super) fn names(&self) -> &[Person] {
        match self.head() {
            Head::Authors => &self.authors,
            Head::Editors => &self.editors,
            Head::Compilers => &self.compilers,
            Head::Translators => &self.translators,
            Head::Title => &[],
        }
    }

    /// The people, unless the work is listed under them.
    pub(super) fn unless_at_head<'p>(&self, role: Head, people: &'p [Person]) -> &'p [Person] {
        if self.head() == role { &[] } else { people }
    }

    /// The year; the last one of a range.
    pub(super) fn year(&self) -> Option<i32> {
        self.date.as_ref().map(|date| match date.value {
            DateValue::At(day)
            | DateValue::After(day)
            | DateValue::Before(day)
            | DateValue::Between(_, day) => day.year,
        })
    }
}

/// An optional field, which must be understood where it is present.
fn present<T>(field: Result<T, RetrievalError>) -> Result<Option<T>, TypeError> {
    match field {
        Ok(value) => Ok(Some(value)),
        Err(RetrievalError::Missing(_)) => Ok(None),
        Err(RetrievalError::TypeError(error)) => Err(error),
    }
}

/// A date; one that is not in the form that BibLaTeX defines is left out.
fn date(field: Result<PermissiveType<Date>, RetrievalError>) -> Result<Option<Date>, TypeError> {
    Ok(match present(field)? {
        Some(PermissiveType::Typed(date)) => Some(date),
        _ => None,
    })
}

fn text<E>(field: Result<ChunksRef<'_>, E>) -> String {
    field.map(plain).unwrap_or_default()
}

fn plain(chunks: ChunksRef<'_>) -> String {
    chunks.format_verbatim().trim().to_owned()
}

/// Title and subtitle with a colon between. The subtitle is kept because catalogues of prints often
/// differ only in it; capitals are kept because English rules for them are wrong in other languages.
fn titled(entry: &biblatex::Entry, titles: &[&str], subtitle: &str) -> String {
    let title = titles.iter().find_map(|field| entry.get(field));
    let head = title.map(plain).unwrap_or_default();
    let tail = entry.get(subtitle).map(plain).unwrap_or_default();
    if head.is_empty() || tail.is_empty() {
        head
    } else {
        format!("{head}: {tail}")
    }
}

fn genre(entry: &biblatex::Entry) -> Genre {
    let written = entry.get("type").or_else(|| entry.get("howpublished"));
    match (written.map(plain).as_deref(), &entry.entry_type) {
        // BibLaTeX defines these as ids of words in the language of the bibliography.
        (Some("phdthesis"), _) | (None, EntryType::PhdThesis) => {
            Genre::Word("bibliography-doctoral")
        }
        (Some("mathesis"), _) | (None, EntryType::MastersThesis) => {
            Genre::Word("bibliography-masters")
        }
        (Some("techreport"), _) | (None, EntryType::TechReport) => {
            Genre::Word("bibliography-technical")
        }
        (Some(genre), _) => Genre::Written(genre.to_owned()),
        (None, EntryType::Unpublished) => Genre::Word("bibliography-manuscript"),
        (None, _) => Genre::Unsaid,
    }
}

/// The parts that are not empty, with `between` between them.
pub(super) fn joined(parts: &[&str], between: &str) -> String {
    let parts: Vec<&str> = parts
        .iter()
        .copied()
        .filter(|part| !part.is_empty())
        .collect();
    parts.join(between)
}

fn link(entry: &biblatex::Entry) -> String {
    if let Ok(doi) = entry.doi() {
        let bare = [
            "https://doi.org/",
            "http://doi.org/",
            "https://dx.doi.org/",
            "doi:",
        ]
        .iter()
        .find_map(|start| doi.strip_prefix(start));
        return format!("https://doi.org/{}", bare.unwrap_or(&doi));
    }
    let url = entry.url().ok().and_then(|url| Url::parse(&url).ok());
    url.map_or_else(String::new, String::from)
}
