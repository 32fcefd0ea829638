//! What a column can hold.

use crate::model::words::closed_list;

closed_list! {
    /// What a column holds.
    Holds {
        /// The number under which the holder keeps the sheet.
        Accession = "accession",
        /// A number that it had before.
        FormerAccession = "former-accession",
        /// The title.
        Title = "title",
        /// People with their roles.
        Maker = "maker",
        /// Dates.
        Date = "date",
        /// Technique, paper, colours.
        Medium = "medium",
        /// The paper.
        Paper = "paper",
        /// The watermark.
        Watermark = "watermark",
        /// Sizes in words.
        Dimensions = "dimensions",
        /// A height alone.
        Height = "height",
        /// A width alone.
        Width = "width",
        /// A depth alone.
        Depth = "depth",
        /// The unit of the lengths beside it.
        Unit = "unit",
        /// The credit line.
        Credit = "credit",
        /// How the holder acquired the sheet: a way of transfer.
        Acquisition = "acquisition",
        /// Inscriptions.
        Inscription = "inscription",
        /// The signature.
        Signature = "signature",
        /// The state, of an earlier catalogue or of one that the cell does not name.
        State = "state",
        /// The design in this catalogue: its number or its key.
        Design = "design",
        /// The state in this catalogue: its numeral or its key.
        OwnState = "own-state",
        /// The printing in this catalogue: its name or its key.
        Printing = "printing",
        /// The impression in this catalogue: its key.
        Impression = "impression",
        /// The kind of impression.
        Kind = "kind",
        /// Number and edition.
        Numbering = "numbering",
        /// The number in a catalogue.
        CatalogueNumber = "catalogue-number",
        /// Provenance.
        Provenance = "provenance",
        /// Stamps and collectors' marks.
        Marks = "marks",
        /// Condition.
        Condition = "condition",
        /// The name of a photograph's file.
        Photograph = "photograph",
        /// The day on which the sheet was seen.
        Seen = "seen",
        /// Who saw it.
        SeenBy = "seen-by",
        /// How it was seen: in the original, from a photograph, by report.
        Basis = "basis",
        /// The holder's own page.
        Web = "web",
        /// An identifier of a database.
        Id = "id",
        /// The department that keeps it.
        Department = "department",
        /// The holder.
        Holder = "holder",
        /// The series or portfolio.
        Series = "series",
        /// Literature.
        Literature = "literature",
        /// Exhibitions.
        Exhibition = "exhibition",
        /// Rights in the picture.
        Rights = "rights",
        /// Whether the picture may be published: yes or no.
        Publish = "publish",
        /// Whether the sheet is located, untraced, destroyed or stolen.
        Status = "status",
        /// Remarks.
        Remarks = "remarks",
        /// Nothing that was recognised.
        Unknown = "unknown",
    }
}
