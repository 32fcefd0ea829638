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
    FileMissing = "file-missing", Error, "A file that every catalogue needs is missing.";
    FileUnexpected = "file-unexpected", Hint, "A file is in a place where no record belongs.";
    FileTooLarge = "file-too-large", Error, "A text file is larger than any record can be.";
    TextNotUtf8 = "text-not-utf8", Error, "A text file is not UTF-8.";
    MergeUnfinished = "merge-unfinished", Error, "A file contains the markers of an unfinished merge.";
    PathLeaves = "path-leaves", Error, "A path leads out of the catalogue.";
    NestedTooDeep = "nested-too-deep", Error, "Something is nested deeper than any record or text needs.";
    ListTooLong = "list-too-long", Error, "A list is longer than any record needs.";
    DesignTooLarge = "design-too-large", Error, "A design has more states, printings and points than can be compared.";
    FindingsUntold = "findings-untold", Hint, "A file has more findings than are reported at once.";
    TomlSyntax = "toml-syntax", Error, "The file is not TOML.";
    BibtexSyntax = "bibtex-syntax", Error, "The literature is not BibTeX.";
    // Keys and values of a record.
    KeyUnknown = "key-unknown", Error, "A record has a key that means nothing there.";
    KeyMissing = "key-missing", Error, "A key that the record must have is missing.";
    KeyMisplaced = "key-misplaced", Error, "A key stands below a table header to which it does not belong.";
    KeyForm = "key-form", Error, "A key is not lower-case letters and digits joined by hyphens.";
    KeyTwice = "key-twice", Error, "The same key is used twice where keys must differ.";
    WasItself = "was-itself", Error, "A record names its own key as a former key.";
    WasPresent = "was-present", Error, "A record names as a former key one that another record has now.";
    WasTwice = "was-twice", Error, "Two records name the same former key.";
    ValueType = "value-type", Error, "A value is not of the type that the key takes.";
    ValueUnknown = "value-unknown", Error, "A word is not one of those that the key takes.";
    ValueEmpty = "value-empty", Error, "A text that must not be empty is empty.";
    ValueRange = "value-range", Error, "A number lies outside what is possible.";
    DateSyntax = "date-syntax", Error, "A date is not EDTF.";
    DateTime = "date-time", Hint, "A date has a time of day, which a catalogue does not use.";
    SizeSyntax = "size-syntax", Error, "A size is not [height, width] in millimetres.";
    BoxSyntax = "box-syntax", Error, "A box is not [left, top, width, height] in percent of its picture.";
    CodeSyntax = "code-syntax", Error, "A country, language, ISIL or colour code is malformed.";
    AddressSyntax = "address-syntax", Error, "A web address is malformed.";
    // References.
    SeeCircle = "see-circle", Error, "Withdrawn records refer to each other.";
    SuccessorCircle = "successor-circle", Error, "Holders are recorded as each other's successors.";
    KeyFormer = "key-former", Hint, "A record or part is named by a former key.";
    DesignUnknown = "design-unknown", Error, "The catalogue has no such design.";
    ImpressionUnknown = "impression-unknown", Error, "The catalogue has no such impression.";
    HolderUnknown = "holder-unknown", Error, "The catalogue has no such holder.";
    PersonUnknown = "person-unknown", Error, "The catalogue has no such person.";
    PartyUnknown = "party-unknown", Error, "Neither a person nor a holder has the key.";
    LiteratureUnknown = "literature-unknown", Error, "The literature has no such entry.";
    ExhibitionUnknown = "exhibition-unknown", Error, "The exhibitions have no such entry.";
    MarkUnknown = "mark-unknown", Error, "The catalogue has no such mark.";
    DocumentUnknown = "document-unknown", Error, "The catalogue has no such document.";
    SeriesUnknown = "series-unknown", Error, "The catalogue has no such series.";
    MarkConditionUnknown = "mark-condition-unknown", Error, "The record of the mark has no such condition.";
    TermUnknown = "term-unknown", Error, "The vocabulary has no such term.";
    MatrixUnknown = "matrix-unknown", Error, "The design has no such block, plate, stone or screen.";
    PointUnknown = "point-unknown", Error, "The design has no such point.";
    PointValueUnknown = "point-value-unknown", Error, "The point has no such value.";
    StateUnknown = "state-unknown", Error, "The design has no such state.";
    PrintingUnknown = "printing-unknown", Error, "The design has no such printing.";
    VariantUnknown = "variant-unknown", Error, "The design has no such variant.";
    PictureUnknown = "picture-unknown", Error, "The catalogue has no such picture.";
    PageUnknown = "page-unknown", Error, "A link in a text leads to no page of the catalogue.";
    ThemeUnknown = "theme-unknown", Error, "The catalogue has no such theme.";
    LinkUnknown = "link-unknown", Error, "The target of a link in a text is not understood.";
    // States and printings.
    StateShowsOther = "state-shows-other", Error, "A state shows a point that does not rest on the matrix.";
    ShowsConflict = "shows-conflict", Error, "A state and a printing that contains it share no value at a point.";
    DecidesAndStrays = "decides-and-strays", Error, "A point is said both to decide and to stray.";
    StateCycle = "state-cycle", Error, "A state follows itself.";
    StateNoDifference = "state-no-difference", Doubt, "A state shows no matrix difference from the one before.";
    StatesInseparable = "states-inseparable", Doubt, "No recorded point separates two states of one printing.";
    PrintingsInseparable = "printings-inseparable", Hint, "No recorded point separates the sheets of two printings.";
    PrintingsByMark = "printings-by-mark", Doubt, "Only a mark separates the sheets of two printings.";
    CertainByMark = "certain-by-mark", Doubt, "An impression is called certain though only marks speak for its printing.";
    MarkShared = "mark-shared", Doubt, "A mark used by two people is relied on to separate their printings.";
    MarkOutOfTime = "mark-out-of-time", Doubt, "A mark was applied when its user did not have it, or when it was in another condition.";
    MarkUserUnlisted = "mark-user-unlisted", Doubt, "A mark was applied by someone who is not among the users in its record.";
    MarkOtherKind = "mark-other-kind", Doubt, "A mark on a sheet is of another kind than in its record.";
    WearBackwards = "wear-backwards", Doubt, "The wear of a matrix would have to go backwards.";
    OrderBackwards = "order-backwards", Doubt, "By states and dates, several sheets would each have been printed before another of them.";
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
    NumberingForm = "numbering-form", Hint, "A numbering has no form that can be counted.";
    NumberAboveEdition = "number-above-edition", Doubt, "A number lies above the largest declared edition.";
    NumberOfOtherEdition = "number-of-other-edition", Doubt, "A numbering names a size of the edition that no one declares.";
    NumberTwice = "number-twice", Doubt, "The same number of one edition is recorded on two sheets.";
    NumberUnlikeWear = "number-unlike-wear", Doubt, "Two sheets have the same number of one edition and differ in wear.";
    NumberUnexpected = "number-unexpected", Doubt, "A sheet of a printing said to be unnumbered is numbered.";
    SeriesAboveDeclared = "series-above-declared", Doubt, "More designs stand in a series than it is declared to have.";
    SeriesPositionTwice = "series-position-twice", Doubt, "Two designs have the same place in a series.";
    SeriesNamedByTitle = "series-named-by-title", Hint, "A series that has a record is named by its title or its key in place of the record.";
    DesignNumberTwice = "design-number-twice", Error, "Two designs have the same number, or the number of one is the key of another.";
    LocatedNowhere = "located-nowhere", Doubt, "A sheet is said to be located, but neither its holder nor its owner is recorded.";
    DestroyedWithHolder = "destroyed-with-holder", Doubt, "A sheet is said to be destroyed, and a holder has it.";
    SameAndNot = "same-and-not", Doubt, "Two records are said to be one sheet, and also not to be.";
    SameSheetContradicted = "same-sheet-contradicted", Doubt, "Two records are said to be one sheet, and what they record contradicts it.";
    SheetTooOften = "sheet-too-often", Error, "More records are said to be one sheet than one sheet can have.";
    MayBeOneSheet = "may-be-one-sheet", Doubt, "Two records that have not been compared yet may be one sheet.";
    SameAsItself = "same-as-itself", Error, "A record is said to be the same sheet as itself.";
    SizesDisagree = "sizes-disagree", Doubt, "Two measurements of what should be one size differ.";
    SizesNear = "sizes-near", Hint, "Two measurements of what should be one size differ, but no more than paper explains.";
    SizeSidesSwapped = "size-sides-swapped", Doubt, "The height and width of a measurement seem to be swapped.";
    SizeUnitMistaken = "size-unit-mistaken", Doubt, "A measurement seems to be in inches or centimetres, or to have been converted though it was in millimetres.";
    ImageLargerThanSheet = "image-larger-than-sheet", Doubt, "The image or platemark is larger than the sheet.";
    SheetLargerThanFrame = "sheet-larger-than-frame", Doubt, "A sheet is larger than its frame or its mount.";
    WoveWithLines = "wove-with-lines", Doubt, "Chain lines or laid lines were measured on wove paper, which has none.";
    // Provenance and dates.
    ProvenanceOrder = "provenance-order", Doubt, "Provenance entries are not in chronological order.";
    ProvenanceOverlap = "provenance-overlap", Doubt, "Two owners hold one sheet at the same certain time.";
    ProvenanceTextApart = "provenance-text-apart", Doubt, "The provenance written by hand names a year from 1933 to 1945, or someone on record, that no entry has; or a note names such a year.";
    KnownBeforePrint = "known-before-print", Doubt, "A sheet was owned, handled, kept, seen, photographed or shown before it was printed.";
    HolderSucceeded = "holder-succeeded", Doubt, "A sheet is with a holder that has a successor, or came there after the succession.";
    DatedAfterCatalogue = "dated-after-catalogue", Doubt, "Something is dated after the catalogue itself.";
    DatesBackwards = "dates-backwards", Doubt, "Something ends before it begins, or comes before what it follows.";
    LifeDates = "life-dates", Doubt, "Someone does something before birth or after death.";
    // Pictures.
    PictureMissing = "picture-missing", Error, "A picture file is missing.";
    PictureUnreadable = "picture-unreadable", Error, "A picture file cannot be read.";
    PictureMemory = "picture-memory", Error, "A picture file needs more memory than the catalogue allows for pictures.";
    PictureProfile = "picture-profile", Hint, "The colour profile in a picture file cannot be used, so its colours may be wrong.";
    PictureOrphan = "picture-orphan", Hint, "A picture file belongs to no record.";
    // Text and privacy.
    MarkupCleaned = "markup-cleaned", Hint, "Markup in a text was removed.";
    PrivateNamePublished = "private-name-published", Error, "The name of a private owner stands in text that is published.";
    PrivateNamePart = "private-name-part", Doubt, "A surname or place that is kept private stands alone in text or in a key that is published.";
    PrivateKeyTelling = "private-key-telling", Error, "The key of a private holder shares a word with the name or place.";
    PrivateFieldUnknown = "private-field-unknown", Error, "A list of private fields names one that the table does not have.";
    PrivateFieldRefused = "private-field-refused", Error, "A list of private fields names one that cannot be private.";
    SignInvisible = "sign-invisible", Hint, "A text contains an invisible character that its script does not need.";
    DirectionTurned = "direction-turned", Hint, "A text changes the direction of writing, or does not restore it.";
    RightsUnsaid = "rights-unsaid", Hint, "The catalogue does not say under which licence it is published.";
    // What was issued.
    RegisterDamaged = "register-damaged", Error, "The register of issued addresses is malformed.";
    AddressVanished = "address-vanished", Error, "An address that an edition issued leads to nothing.";
    AddressReused = "address-reused", Error, "An address that an edition issued leads to something else.";
    EntryReplaced = "entry-replaced", Doubt, "Nothing of an entry is left as an edition issued it.";
    // What was settled.
    SettledRefused = "settled-refused", Error, "A record settles a finding that cannot be settled.";
    SettledWithoutDigest = "settled-without-digest", Hint, "A record does not say what a settled doubt rested on.";
    SettledChanged = "settled-changed", Hint, "What a settled doubt rests on has changed, so the doubt is raised again.";
    SettledNothing = "settled-nothing", Hint, "A record settles a doubt that it does not raise.";
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
