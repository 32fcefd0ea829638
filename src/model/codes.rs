//! The codes of findings: one table, from which the documentation is made.
//!
//! A code names the fault, not the cure, and never changes its meaning. A test fails on a code that
//! no broken record in `tests/` raises.

/// The severity of a finding (docs/definitions.md, "Findings").
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Forbids publishing: the record cannot be understood or must not be published.
    Error,
    /// A question that only scholarship can settle: the scholar should look.
    Doubt,
    /// A suggestion: nothing is wrong with the scholarship.
    Hint,
}

impl Severity {
    /// The word used in reports and in `--json`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Severity::Error => "error",
            Severity::Doubt => "doubt",
            Severity::Hint => "hint",
        }
    }
}

macro_rules! codes {
    ($($(#[$doc:meta])* $name:ident = $text:literal, $severity:ident, $meaning:literal;)*) => {
        /// Which fault a finding reports.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Code { $(#[doc = $meaning] $name,)* }

        impl Code {
            /// Every code, in the order of the table.
            pub const ALL: &'static [Code] = &[$(Code::$name,)*];

            /// The code as printed and as given in `--json`; it never changes.
            #[must_use]
            pub fn as_str(self) -> &'static str {
                match self { $(Code::$name => $text,)* }
            }

            /// The severity of a finding with this code.
            #[must_use]
            pub fn severity(self) -> Severity {
                match self { $(Code::$name => Severity::$severity,)* }
            }

            /// The code that is printed as `word`, if there is one.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Code> {
                Code::ALL.iter().copied().find(|code| code.as_str() == word)
            }

            /// The meaning of the code, in a sentence.
            #[must_use]
            pub fn meaning(self) -> &'static str {
                match self { $(Code::$name => $meaning,)* }
            }
        }
    };
}

codes! {
    // The files themselves.
    FileUnreadable = "file-unreadable", Error, "A file of the catalogue cannot be read.";
    FileMissing = "file-missing", Error, "A file that every catalogue needs is not there.";
    FileUnexpected = "file-unexpected", Hint, "A file stands where no record is looked for.";
    FileTooLarge = "file-too-large", Error, "A text file is larger than any record can be.";
    TextNotUtf8 = "text-not-utf8", Error, "A text file is not UTF-8.";
    MergeUnfinished = "merge-unfinished", Error, "A file holds the marks of a merge that was not finished.";
    PathLeaves = "path-leaves", Error, "A path leads out of the catalogue.";
    NestedTooDeep = "nested-too-deep", Error, "Something is nested deeper than any record or text needs.";
    ListTooLong = "list-too-long", Error, "A list is longer than any record needs.";
    DesignTooLarge = "design-too-large", Error, "A design has more states, printings and points than can be compared.";
    FindingsUntold = "findings-untold", Hint, "A file has more findings than are told at once.";
    TomlSyntax = "toml-syntax", Error, "The file is not TOML.";
    BibtexSyntax = "bibtex-syntax", Error, "The literature is not BibTeX.";
    // Keys and values of a record.
    KeyUnknown = "key-unknown", Error, "A record has a key that means nothing there.";
    KeyMissing = "key-missing", Error, "A key that the record must have is missing.";
    KeyMisplaced = "key-misplaced", Error, "A key stands below a table header that swallowed it.";
    KeyForm = "key-form", Error, "A key is not lower-case letters and digits joined by hyphens.";
    KeyTwice = "key-twice", Error, "The same key is used twice where keys must differ.";
    WasItself = "was-itself", Error, "A record names its own key as a key that it had before.";
    WasPresent = "was-present", Error, "A record names as its former key a key that another record has.";
    WasTwice = "was-twice", Error, "Two records name the same former key.";
    ValueType = "value-type", Error, "A value is of another type than the key takes.";
    ValueUnknown = "value-unknown", Error, "A word is not one of those that the key takes.";
    ValueEmpty = "value-empty", Error, "A text that must say something is empty.";
    ValueRange = "value-range", Error, "A number lies outside what is possible.";
    DateSyntax = "date-syntax", Error, "A date is not EDTF.";
    DateTime = "date-time", Hint, "A date carries a time of day, which no catalogue date does.";
    SizeSyntax = "size-syntax", Error, "A size is not [height, width] in millimetres.";
    BoxSyntax = "box-syntax", Error, "A box is not [left, top, width, height] in percent of its picture.";
    CodeSyntax = "code-syntax", Error, "A country, language, ISIL or colour code is malformed.";
    AddressSyntax = "address-syntax", Error, "A web address is malformed.";
    // References.
    SeeCircle = "see-circle", Error, "Withdrawn records name each other to be seen instead.";
    SuccessorCircle = "successor-circle", Error, "Holders are said to have taken each other over.";
    KeyFormer = "key-former", Hint, "A record or part is named by a key that it had before.";
    DesignUnknown = "design-unknown", Error, "A design is named that the catalogue does not have.";
    ImpressionUnknown = "impression-unknown", Error, "An impression is named that the catalogue does not have.";
    HolderUnknown = "holder-unknown", Error, "A holder is named that the catalogue does not have.";
    PersonUnknown = "person-unknown", Error, "A person is named that the catalogue does not have.";
    PartyUnknown = "party-unknown", Error, "Neither a person nor a holder has the key.";
    LiteratureUnknown = "literature-unknown", Error, "The literature has no such entry.";
    ExhibitionUnknown = "exhibition-unknown", Error, "The exhibitions have no such entry.";
    MarkUnknown = "mark-unknown", Error, "A mark is named that the catalogue does not have.";
    MarkConditionUnknown = "mark-condition-unknown", Error, "A sheet names a condition that the record of its mark does not have.";
    TermUnknown = "term-unknown", Error, "The vocabulary has no such term.";
    MatrixUnknown = "matrix-unknown", Error, "The design has no such block, plate, stone or screen.";
    PointUnknown = "point-unknown", Error, "The design has no such point.";
    PointValueUnknown = "point-value-unknown", Error, "The point has no such value.";
    StateUnknown = "state-unknown", Error, "The design has no such state.";
    PrintingUnknown = "printing-unknown", Error, "The design has no such printing.";
    VariantUnknown = "variant-unknown", Error, "The design has no such variant.";
    PictureUnknown = "picture-unknown", Error, "The catalogue has no such picture.";
    PageUnknown = "page-unknown", Error, "A link in a text leads to no page of the catalogue.";
    ThemeUnknown = "theme-unknown", Error, "The catalogue names a theme that it does not have.";
    LinkUnknown = "link-unknown", Error, "A link in a text has no target that is understood.";
    // States and printings.
    StateShowsOther = "state-shows-other", Error, "A state shows a point that does not rest on the matrix.";
    ShowsConflict = "shows-conflict", Error, "A state and a printing that contains it can share no value at a point.";
    DecidesAndStrays = "decides-and-strays", Error, "A point is said both to decide and to stray.";
    StateCycle = "state-cycle", Error, "A state follows itself.";
    StateNoDifference = "state-no-difference", Doubt, "A state shows no matrix difference from the one before.";
    StatesInseparable = "states-inseparable", Doubt, "No recorded point separates two states of one printing.";
    PrintingsInseparable = "printings-inseparable", Hint, "No recorded point separates the sheets of two printings.";
    PrintingsByMark = "printings-by-mark", Doubt, "Only a mark separates the sheets of two printings.";
    CertainByMark = "certain-by-mark", Doubt, "An impression is called certain though only marks speak for its printing.";
    MarkShared = "mark-shared", Doubt, "A mark used by two people is relied on to separate their printings.";
    MarkOutOfTime = "mark-out-of-time", Doubt, "A mark was put on a sheet when its user did not have it, or when it was in another condition.";
    MarkUserUnlisted = "mark-user-unlisted", Doubt, "Somebody put a mark on a sheet who is not among the users of its record.";
    MarkOtherKind = "mark-other-kind", Doubt, "A mark on a sheet is of another kind than its record.";
    WearBackwards = "wear-backwards", Doubt, "The wear of a matrix would have to go backwards.";
    OrderBackwards = "order-backwards", Doubt, "By states and dates, each of several sheets would have been printed before another of them.";
    CouldBeSettled = "could-be-settled", Hint, "What was seen on a sheet allows a narrower identification than the one recorded.";
    IdentificationContradicted = "identification-contradicted", Doubt, "What was observed contradicts the identification.";
    IdentifiedWithdrawn = "identified-withdrawn", Doubt, "A sheet is identified with a state or printing that was withdrawn.";
    StateNotInPrinting = "state-not-in-printing", Doubt, "A sheet is identified with a state that its printing does not contain.";
    DatedBeforeState = "dated-before-state", Doubt, "An impression is dated before its state can be.";
    DatedBeforePrinting = "dated-before-printing", Doubt, "An impression is dated outside its printing.";
    DatedAfterDestruction = "dated-after-destruction", Doubt, "An impression is dated after its matrix was destroyed.";
    PaperTooLate = "paper-too-late", Doubt, "The paper is later than the date of the impression.";
    LookAgain = "look-again", Hint, "A sheet was identified before a neighbouring state was described.";
    StateInNoPrinting = "state-in-no-printing", Hint, "A design has printings, and none of them contains one of its states.";
    // Editions and the census.
    NumberingForm = "numbering-form", Hint, "A numbering is not of a form that can be counted.";
    NumberAboveEdition = "number-above-edition", Doubt, "A number lies above the largest declared edition.";
    NumberOfOtherEdition = "number-of-other-edition", Doubt, "A numbering names a size of the edition that nobody declares.";
    NumberTwice = "number-twice", Doubt, "The same number of one edition is met on two sheets.";
    NumberUnlikeWear = "number-unlike-wear", Doubt, "Two sheets have one number of one edition and unlike wear.";
    NumberUnexpected = "number-unexpected", Doubt, "A sheet of a printing said to be unnumbered is numbered.";
    DesignNumberTwice = "design-number-twice", Error, "Two designs have one number, or the number of one is the key of another.";
    LocatedNowhere = "located-nowhere", Doubt, "A sheet is said to be located, but neither its holder nor its owner is recorded.";
    DestroyedWithHolder = "destroyed-with-holder", Doubt, "A sheet is said to be destroyed, and a holder has it.";
    SameAndNot = "same-and-not", Doubt, "Two records are said to be one sheet and two.";
    SameSheetContradicted = "same-sheet-contradicted", Doubt, "Two records are said to be one sheet, and what they record contradicts it.";
    SheetTooOften = "sheet-too-often", Error, "More records are said to be one sheet than any sheet has.";
    MayBeOneSheet = "may-be-one-sheet", Doubt, "Two records that nobody has compared yet may be one sheet.";
    SameAsItself = "same-as-itself", Error, "A record is said to be the same sheet as itself.";
    SizesDisagree = "sizes-disagree", Doubt, "Two measurements of what should be one size lie apart.";
    SizesNear = "sizes-near", Hint, "Two measurements of what should be one size lie apart no further than paper explains.";
    SizeSidesSwapped = "size-sides-swapped", Doubt, "The height and width of a measurement seem to be exchanged.";
    SizeUnitMistaken = "size-unit-mistaken", Doubt, "A measurement seems to be in inches or centimetres, or to have been converted though it was in millimetres.";
    ImageLargerThanSheet = "image-larger-than-sheet", Doubt, "The image or platemark is larger than the sheet.";
    // Provenance and dates.
    ProvenanceOrder = "provenance-order", Doubt, "Provenance entries are not in the order of time.";
    ProvenanceOverlap = "provenance-overlap", Doubt, "Two owners hold one sheet at the same certain time.";
    ProvenanceTextApart = "provenance-text-apart", Doubt, "The provenance written by hand names a year from 1933 to 1945, or somebody on record, that no entry has; or a note names such a year.";
    KnownBeforePrint = "known-before-print", Doubt, "A sheet was owned, handled, kept, seen or shown before it was printed.";
    HolderSucceeded = "holder-succeeded", Doubt, "A sheet is with a holder that another took over, or came there after that.";
    DatedAfterCatalogue = "dated-after-catalogue", Doubt, "Something is dated after the catalogue itself.";
    DatesBackwards = "dates-backwards", Doubt, "Something ends before it begins, or comes before what it follows.";
    LifeDates = "life-dates", Doubt, "Somebody does something before birth or after death.";
    // Pictures.
    PictureMissing = "picture-missing", Error, "A picture file is not there.";
    PictureUnreadable = "picture-unreadable", Error, "A picture file cannot be read.";
    PictureMemory = "picture-memory", Error, "A picture file needs more memory than the catalogue allows for pictures.";
    PictureProfile = "picture-profile", Hint, "The colour profile in a picture file cannot be used, so its colours may be shown wrong.";
    PictureOrphan = "picture-orphan", Hint, "A picture file belongs to no record.";
    // Text and privacy.
    MarkupCleaned = "markup-cleaned", Hint, "Markup in a text was cleaned away.";
    PrivateNamePublished = "private-name-published", Error, "The name of a private owner stands in text that is published.";
    PrivateNamePart = "private-name-part", Doubt, "A surname or place that is kept private stands alone in text or in a key that is published.";
    PrivateKeyTelling = "private-key-telling", Error, "The key of a private holder shares a word with the name or place.";
    PrivateFieldUnknown = "private-field-unknown", Error, "A list of private fields names one that the table does not have.";
    PrivateFieldRefused = "private-field-refused", Error, "A list of private fields names one that cannot be private.";
    SignInvisible = "sign-invisible", Hint, "A text holds a sign that cannot be seen and that its script does not need.";
    DirectionTurned = "direction-turned", Hint, "A text turns the direction of writing, or leaves it turned.";
    RightsUnsaid = "rights-unsaid", Hint, "The catalogue does not say under which licence it is published.";
    // What was issued.
    RegisterDamaged = "register-damaged", Error, "The register of issued addresses does not have its form.";
    AddressVanished = "address-vanished", Error, "An address that an edition issued leads to nothing.";
    AddressReused = "address-reused", Error, "An address that an edition issued leads to another thing.";
    EntryReplaced = "entry-replaced", Doubt, "Nothing of an entry is left as an edition issued it.";
    // What was settled.
    SettledRefused = "settled-refused", Error, "A record says that a finding is settled that cannot be.";
    SettledWithoutDigest = "settled-without-digest", Hint, "A record does not say what a settled doubt rested on.";
    SettledChanged = "settled-changed", Hint, "What a settled doubt rests on has changed, so the doubt is raised again.";
    SettledNothing = "settled-nothing", Hint, "A record says that a doubt is settled that it does not raise.";
}

impl Code {
    /// Whether a record may say that a finding with this code is settled: a doubt or a hint, unless it is about a
    /// file instead of a record, or about what a record says is settled.
    #[must_use]
    pub fn can_be_settled(self) -> bool {
        let is_of_file = matches!(
            self,
            Code::FileUnexpected
                | Code::FindingsUntold
                | Code::PictureProfile
                | Code::PictureOrphan
                | Code::SettledWithoutDigest
                | Code::SettledChanged
                | Code::SettledNothing
        );
        self.severity() != Severity::Error && !is_of_file
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_are_distinct_keys() {
        let mut seen = std::collections::BTreeSet::new();
        for code in Code::ALL {
            assert!(code.as_str().parse::<crate::key::Key>().is_ok());
            assert!(seen.insert(code.as_str()), "{} stands twice", code.as_str());
            assert!(code.meaning().ends_with('.'));
        }
    }
}
