#!/bin/sh
# Passes every test of the house that runs without a browser: form, then tests. The walk through the
# compiled demonstration catalogue in a browser is tests/browser (see DEVELOPERS.md).
set -eu
cd "$(dirname "$0")/.."

say() { printf '\n== %s\n' "$*"; }

say "form"
cargo fmt --check -- src/lib.rs src/main.rs tests/all/main.rs

say "tests"
cargo test --lib --bins --test all

say "the demonstration catalogue"
cargo run --quiet --release -- compile demo-site
