// For the examples in the documentation, which take this file in by `include!`.

/// The catalogue of a literal: files, each below a line `-- path`.
pub fn catalogue(literal: &str) -> keyblock::model::catalogue::Catalogue {
    let folder = tempfile::tempdir().unwrap();
    for file in format!("\n{literal}").split("\n-- ").skip(1) {
        let (path, text) = file.split_once('\n').unwrap();
        let path = folder.path().join(path);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    }
    keyblock::read::read(folder.path()).catalogue
}

/// The key of a design.
pub fn key(text: &str) -> keyblock::model::key::Key {
    text.parse().unwrap()
}
