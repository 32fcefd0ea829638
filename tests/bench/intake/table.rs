//! A large table as a museum hands it in: each row with its own accession number, thousands of designs, a few hundred
//! different dates, techniques and credit lines.

use std::fmt::Write as _;

/// The columns.
const HEADING: &str = "Accession number,Artist,Title,Date,Medium,Dimensions,Height (mm),Width (mm),Paper,Edition,State,\
    Catalogue raisonné,Signature,Inscription,Credit line,Provenance,Condition,Department,File name,Remarks";

const PLACES: [&str; 20] = [
    "Quay",
    "Lock",
    "Ferry",
    "Mill",
    "Sluice",
    "Bridge",
    "Tower",
    "Harbour",
    "Weir",
    "Slipway",
    "Canal",
    "Dyke",
    "Pier",
    "Wharf",
    "Ropewalk",
    "Lighthouse",
    "Shipyard",
    "Basin",
    "Ford",
    "Staithe",
];
const HOURS: [&str; 10] = [
    "Dawn", "Morning", "Noon", "Evening", "Dusk", "Night", "Moonrise", "Low Tide", "Flood", "Frost",
];
const WEATHERS: [&str; 25] = [
    "Rain", "Snow", "Fog", "Hail", "Wind", "Thunder", "Calm", "Mist", "Sleet", "Drizzle", "Storm",
    "Haze", "Rime", "Thaw", "Squall", "Gale", "Cloud", "Sun", "Stars", "Rainbow", "Dust", "Smoke",
    "Shade", "Glare", "Ice",
];
const TECHNIQUES: [&str; 12] = [
    "Woodcut",
    "Colour woodcut",
    "Etching",
    "Etching and aquatint",
    "Drypoint",
    "Lithograph",
    "Linocut",
    "Wood engraving",
    "Colour woodcut with hand colouring",
    "Aquatint",
    "Mezzotint",
    "Engraving",
];
const PAPERS: [&str; 10] = [
    "laid paper",
    "wove paper",
    "japan paper",
    "mulberry paper",
    "simili-japan",
    "cream wove paper",
    "thin japan paper",
    "machine-made paper",
    "handmade laid paper",
    "china paper",
];
const NAMES: [&str; 15] = [
    "Ada Brook",
    "Miss C. Mill",
    "Dr and Mrs Hale",
    "the Harbour Trust",
    "Jonas Weir",
    "Mrs Edda Lock",
    "Olaf Staithe",
    "the artist",
    "the artist's widow",
    "an anonymous donor",
    "Peter and Anna Ford",
    "Lisbeth Quay",
    "Ivo Dyke",
    "the Friends of the Museum",
    "Berta Pier",
];

/// A table of so many rows and 20 columns, as CSV.
pub fn table(rows: usize) -> String {
    let mut text = HEADING.to_owned();
    text.push('\n');
    for n in 0..rows {
        row(&mut text, n);
    }
    text
}

fn row(text: &mut String, n: usize) {
    // 5,000 designs, in an order that seems to be drawn by chance; one row in five has a title of its own.
    let design = n.wrapping_mul(7919) % 5000;
    let place = PLACES[design % 20];
    let (hour, weather) = (HOURS[design / 20 % 10], WEATHERS[design / 200 % 25]);
    let title = match n % 5 {
        4 => format!("{place} at {hour}, {weather}, study {n}"),
        _ => format!("{place} at {hour}, {weather}"),
    };
    let year = 1890 + design % 60;
    let date = match n % 7 {
        0 => format!("c. {year}"),
        1 => format!("{year}-{}", (year + 2) % 100),
        2 => format!("{year}, printed {}", year + 9),
        3 => format!("{year}?"),
        _ => year.to_string(),
    };
    let (height, width) = (100 + design % 190, 90 + design % 230);
    let technique = TECHNIQUES[design % 12];
    let paper = PAPERS[n % 10];
    let (accession_year, number) = (1900 + n / 400, n % 400 + 1);
    let how = ["Gift of", "Bequest of", "Purchased from", "Given by"][n % 4];
    let name = NAMES[n / 3 % 15];
    let numbering = match n % 3 {
        0 => format!("{}/{}", n % 50 + 1, 50),
        1 => "A.P.".to_owned(),
        _ => String::new(),
    };
    let state = ["", "", "i", "ii", "iii", "only state"][n % 6];
    let signature = ["signed in pencil, lower right", "", "monogram in the block"][n % 3];
    let provenance = [
        "",
        "",
        "",
        "Ex coll. Jonas Weir",
        "Acquired from the artist",
    ][n % 5];
    let condition = ["good", "foxed", "trimmed to the image", "slight toning", ""][n % 5];
    let remarks = if n.is_multiple_of(11) {
        format!("Seen on screen {n}")
    } else {
        String::new()
    };
    let _ = writeln!(
        text,
        "{accession_year}.{number},\"Vorsand, Ilka\",\"{title}\",\"{date}\",\"{technique} on {paper}\",\
         \"image: {height} x {width} mm; sheet: {} x {} mm\",{height},{width},{paper},{numbering},{state},\
         \"Doran {}\",\"{signature}\",,\"{how} {name}, {accession_year}\",{provenance},{condition},\
         Prints and Drawings,{accession_year}-{number}.jpg,{remarks}",
        height + 40,
        width + 50,
        design + 1,
    );
}
