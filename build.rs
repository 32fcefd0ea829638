//! Rebuilds the program when a file is added to the folders embedded in it: the theme and the templates.
//! (Cargo notices changes inside those files without this.)

fn main() {
    println!("cargo:rerun-if-changed=themes/laid");
    println!("cargo:rerun-if-changed=content");
    println!("cargo:rerun-if-changed=build.rs");
}
