//! What `keyblock start` lays down: a catalogue that compiles as it stands, to be overwritten.
//!
//! In: `content/start/`, embedded in the program. Out: files with their paths, the schemas of all
//! records among them; each record's first line leads to its schema, so that editors complete and
//! check. Every key a record can have stands in one of the templates: those that the example does
//! not need begin with `#` and no space, prose begins with `# `.
//!
//! Not here: writing them (`cli`).

use include_dir::{Dir, include_dir};

use crate::read::schema;

static TEMPLATES: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/content/start");

/// The files of an empty catalogue: paths relative to it with `/`, and their content, in the order
/// of the paths.
#[must_use]
pub fn start_files() -> Vec<(String, Vec<u8>)> {
    let mut files = Vec::new();
    collect(&TEMPLATES, &mut files);
    let schemas = schema::files().into_iter();
    files.extend(schemas.map(|(name, text)| (format!("schema/{name}"), text.into_bytes())));
    files.sort();
    files
}

fn collect(folder: &Dir<'_>, files: &mut Vec<(String, Vec<u8>)>) {
    for file in folder.files() {
        let path = file.path().to_string_lossy().replace('\\', "/");
        // Kept under a plain name here, so that it is not taken for this repository's own.
        let path = if path == "gitignore" {
            ".gitignore".to_owned()
        } else {
            path
        };
        files.push((path, file.contents().to_vec()));
    }
    for folder in folder.dirs() {
        collect(folder, files);
    }
}
