//! The census of 100,000 impressions, against the time of reading them.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use keyblock::read::read;
use keyblock::study::Studies;
use keyblock::study::census::{DesignScope, Groups, of_everything};

use super::{median, tell};

const DESIGNS: usize = 1_000;
const OF_EACH: usize = 100;
const HOLDERS: usize = 300;

/// Writes a catalogue with records of usual length, with doubts among them: in each design a chain
/// of five that may be one sheet, and a connected part of thirty, too large for an exact count.
fn lay_down(folder: &Path) {
    let write = |path: String, text: &str| {
        let path = folder.join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    };
    let settings = "title = \"A Hundred Thousand\"\nsiglum = \"HT\"\nartist = \"artist\"\nlanguage = \"en\"\naddress = \"https://prints.example.org\"\ndated = \"2026\"\n";
    write("catalogue.toml".into(), settings);
    write(
        "records/people/artist.toml".into(),
        "name = \"The Artist\"\n",
    );
    for holder in 0..HOLDERS {
        let text = format!(
            "name = \"Museum {holder}\"\nkind = \"museum\"\nplace = \"Town {}\"\ncountry = \"{}\"\n",
            holder / 2,
            ["NL", "FR", "DE", "JP", "US"][holder % 5]
        );
        write(format!("records/holders/museum-{holder}.toml"), &text);
    }
    for design in 0..DESIGNS {
        let mut text = format!("titles = [{{ text = \"Print {design}\" }}]\n");
        for state in 0..4 {
            let _ = write!(text, "[[states]]\nkey = \"s{state}\"\n");
        }
        for printing in ["own", "second"] {
            let _ = write!(
                text,
                "[[printings]]\nkey = \"{printing}\"\nkind = \"lifetime\"\nstates = \"all\"\nedition = 60\n"
            );
        }
        write(format!("records/designs/{design}/design.toml"), &text);
        for number in 1..=OF_EACH {
            let path = format!("records/designs/{design}/impressions/{number}.toml");
            write(path, &impression(design, number));
        }
    }
}

fn impression(design: usize, number: usize) -> String {
    let mut text = format!(
        "holder = \"museum-{}\"\naccession = \"{design}.{number}\"\nstatus = \"located\"\nkind = \"edition\"\nnumbering = \"{}/60\"\n",
        (design * 7 + number * 13) % HOLDERS,
        1 + number % 60
    );
    let maybe = match number {
        2..=5 | 12..=41 => Some(number - 1),
        _ => None,
    };
    if let Some(other) = maybe {
        let _ = writeln!(
            text,
            "maybe_same_as = [{{ impression = \"{design}.{other}\" }}]"
        );
    }
    let _ = write!(
        text,
        "identified = {{ state = \"s{}\", printing = \"{}\", certainty = \"probable\", basis = \"photograph\" }}\n\
         sheet = {{ size = [{}, {}] }}\n\
         sightings = [{{ date = \"{}\" }}, {{ date = \"1990\", basis = \"literature\" }}]\n\
         [[provenance]]\nowner = {{ name = \"Owner {}\" }}\nfrom = \"{}\"\nhow = \"purchase\"\n",
        number % 4,
        ["own", "second"][number % 2],
        300 + number % 20,
        200 + number % 20,
        1930 + number % 60,
        number % 40,
        1950 + number % 30,
    );
    text
}

pub fn measure() {
    let memory = Path::new("/dev/shm");
    let folder = if memory.is_dir() {
        tempfile::tempdir_in(memory).unwrap()
    } else {
        tempfile::tempdir().unwrap()
    };
    lay_down(folder.path());
    let reading = median(3, || read(folder.path()));
    let catalogue = read(folder.path()).catalogue;
    assert_eq!(catalogue.impressions().count(), DESIGNS * OF_EACH);
    let counting = median(3, || {
        let groups = Groups::of(&catalogue);
        of_everything(&catalogue, &groups, DesignScope::All)
    });
    tell(
        "the census of 100,000 impressions",
        counting,
        "reading them",
        reading,
    );
    let studies = median(3, || Studies::of(&catalogue));
    tell("every study of them", studies, "reading them", reading);
    let command = median(3, || {
        let output = std::process::Command::new(env!("CARGO_BIN_EXE_keyblock"))
            .args(["census", "--json", "--in"])
            .arg(folder.path())
            .output()
            .unwrap();
        assert!(output.status.success());
        output
    });
    tell(
        "census --json, reading included",
        command,
        "reading them",
        reading,
    );
}
