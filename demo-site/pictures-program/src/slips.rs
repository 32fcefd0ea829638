//! The two slips that the demonstration keeps, to show that alignment refuses them: a detail entered
//! as the whole sheet, and a photograph filed under the wrong number. They are listed here because the
//! records, which contain the slips, cannot tell of them.

/// A detail entered as a whole sheet: the design, the file, and the part of the reference picture
/// that it shows, percent.
const DETAILS: [(&str, &str, [f32; 4]); 1] =
    [("7", "pictures/22-recto.jpg", [55.0, 48.0, 32.0, 32.0])];

/// A photograph filed a second time, under the wrong number: the design and file that it shows, and
/// the design and file as which it is entered.
const MISFILED: [(&str, &str, &str, &str); 1] =
    [("20", "pictures/2-recto.jpg", "7", "pictures/11-recto.jpg")];

/// The part of the reference picture that a photograph entered as whole shows in truth.
pub fn detail(design: &str, file: &str) -> Option<[f32; 4]> {
    let slip = DETAILS.iter().find(|(d, f, _)| (*d, *f) == (design, file));
    slip.map(|(_, _, percent)| *percent)
}

/// Whether a file shows another design, with whose pictures it is painted.
pub fn is_misfiled(design: &str, file: &str) -> bool {
    MISFILED
        .iter()
        .any(|(_, _, d, f)| (*d, *f) == (design, file))
}

/// The designs and files as which a photograph is entered by mistake.
pub fn misfilings(design: &str, file: &str) -> impl Iterator<Item = (&'static str, &'static str)> {
    let of_it = move |(d, f, _, _): &&(&str, &str, &str, &str)| (*d, *f) == (design, file);
    MISFILED.iter().filter(of_it).map(|(_, _, d, f)| (*d, *f))
}
