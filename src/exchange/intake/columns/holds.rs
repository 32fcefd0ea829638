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
        /// Inscriptions.
        Inscription = "inscription",
        /// The signature.
        Signature = "signature",
        /// The state, of an earlier catalogue or ours.
        State = "state",
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
        /// Remarks.
        Remarks = "remarks",
        /// Nothing that was recognised.
        Unknown = "unknown",
    }
}
