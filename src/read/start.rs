//! The files that `keyblock start` writes: a small catalogue that compiles, whose records serve as
//! templates.
//!
//! In: `content/start/`, embedded in the program. Out: files with their paths, including the schemas of
//! all records. The first line of each record names its schema, so that editors complete and check.
//! The templates contain every key that a record can have: keys that the example does not need are
//! commented out with `#` and no space; explanations begin with `# `.
//!
//! Not here: writing them to disk (`cli`).

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
        // The file has a plain name here, because git would apply a `.gitignore` to this repository.
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
