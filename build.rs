//! Builds again where a file is added to what the program carries: the theme and the templates.
//! (Changes inside those files are noticed without this.)

fn main() {
    println!("cargo:rerun-if-changed=themes/laid");
    println!("cargo:rerun-if-changed=content");
    println!("cargo:rerun-if-changed=build.rs");
}
