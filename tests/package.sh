#!/bin/sh
# Packages the five crates as for a registry, and checks that the program can be built from the packages alone.
#
# The workspace is private, and Cargo packages private crates only one by one: a crate that depends on another
# of the workspace looks for it in the registry. So the packages are made of a copy in which `publish` is set, where
# Cargo lays them over the registry. They are then unpacked into a workspace of their own and built, offline and
# with the versions of Cargo.lock. `cargo check` stands for the build; with the dependencies of the lints at hand it
# takes less than a minute.
set -eu
cd "$(dirname "$0")/.."
CARGO_TARGET_DIR="${CARGO_TARGET_DIR:-$PWD/target}"
export CARGO_TARGET_DIR

copy="$CARGO_TARGET_DIR/packaging"
rm -rf "$copy"
mkdir -p "$copy/unpacked"
tar -cf - --exclude=demo-site/records --exclude=demo-site/web --exclude=node_modules \
    Cargo.toml Cargo.lock build.rs ./*.md LICENSE-* src content themes docs tests demo-site | tar -xf - -C "$copy"
sed 's/^publish = false$/publish = ["crates-io"]/' Cargo.toml >"$copy/Cargo.toml"

(cd "$copy" && cargo package --quiet --offline --no-verify --allow-dirty --exclude-lockfile \
    -p keyblock-model -p keyblock-scaler -p keyblock-picture -p keyblock-study -p keyblock)
version=$(sed -n 's/^version = "\(.*\)"$/\1/p' Cargo.toml | head -n 1)

{
    printf '[workspace]\nresolver = "3"\nmembers = ["keyblock", "keyblock-model", "keyblock-scaler", "keyblock-picture", "keyblock-study"]\n\n[patch.crates-io]\n'
    for crate in keyblock-model keyblock-scaler keyblock-picture keyblock-study; do printf '%s = { path = "%s" }\n' "$crate" "$crate"; done
    # The levels of optimisation, so that the dependencies need not be checked anew.
    sed -n '/^\[profile/,/^$/p' Cargo.toml
} >"$copy/unpacked/Cargo.toml"
for crate in keyblock keyblock-model keyblock-scaler keyblock-picture keyblock-study; do
    package="$CARGO_TARGET_DIR/package/$crate-$version.crate"
    tar -xzf "$package" -C "$copy/unpacked"
    mv "$copy/unpacked/$crate-$version" "$copy/unpacked/$crate"
    files=$(find "$copy/unpacked/$crate" -type f | wc -l)
    size=$(wc -c <"$package")
    echo "$crate: $files files, $((size / 1000)) kB"
    [ "$size" -lt 2000000 ] || { echo "tests/package.sh: $package is too large" >&2; exit 1; }
done
for crate in keyblock keyblock-model keyblock-scaler keyblock-picture keyblock-study; do
    for licence in MIT APACHE; do
        [ -f "$copy/unpacked/$crate/LICENSE-$licence" ] || { echo "tests/package.sh: $crate lacks LICENSE-$licence" >&2; exit 1; }
    done
done
for file in README.md content/licences.txt themes/laid/assets/type.css; do
    [ -f "$copy/unpacked/keyblock/$file" ] || { echo "tests/package.sh: the package lacks $file" >&2; exit 1; }
done
cp Cargo.lock "$copy/unpacked"
# Files of a package have the time of no build: without this, a check of an earlier state would stand for this one.
find "$copy/unpacked" -type f -exec touch {} +
(cd "$copy/unpacked" && cargo check --quiet --offline --bins -p keyblock)
rm -rf "$copy"
