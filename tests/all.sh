#!/bin/sh
# Runs every check of the repository: format, lints, tests, then the compiled demonstration catalogue in a browser.
# Installs what it needs on a Debian machine (Chromium, Node.js, Python) and nothing elsewhere.
set -eu
cd "$(dirname "$0")/.."
unset CARGO_TARGET_DIR
# What is built once gains nothing from the files that quicken the next build, and they take gigabytes.
export CARGO_INCREMENTAL=0

say() { printf '\n== %s\n' "$*"; }

as_root() {
    if [ "$(id -u)" = 0 ]; then "$@"; elif command -v sudo >/dev/null 2>&1; then sudo "$@"; else
        echo "tests/all.sh: '$*' needs root; run it yourself, then this again" >&2
        exit 1
    fi
}

updated=
package() { # package
    if ! command -v apt-get >/dev/null 2>&1; then
        echo "tests/all.sh: '$1' is missing; install it, then run this again" >&2
        exit 1
    fi
    [ -n "$updated" ] || as_root apt-get -q -q update
    updated=yes
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -q install -y --no-install-recommends "$1" >/dev/null
}
debian() { # command, package
    command -v "$1" >/dev/null 2>&1 || package "$2"
}

say "what the tests need"
debian chromium chromium
debian node nodejs
debian npm npm
(cd tests/browser && npm ci --silent)
debian python3 python3
python3 -c 'import ensurepip, venv' 2>/dev/null || package python3-venv
[ -x target/others/bin/pip ] || python3 -m venv target/others
target/others/bin/pip install --quiet --disable-pip-version-check --requirement tests/reference/requirements.txt

say "form"
cargo fmt --all --check

say "lints"
cargo clippy --quiet --workspace --all-targets -- -D warnings

say "the packages it is built from"
if command -v cargo-deny >/dev/null 2>&1; then
    cargo deny --offline check licenses bans sources
else
    echo "cargo-deny is not installed; tests/all/supply_chain.rs checks licences, sources and duplicates"
fi

say "packages"
sh tests/package.sh

say "the demonstration catalogue"
cargo run --quiet --release -- compile demo-site
# The program that the tests run from here on.
KEYBLOCK="$PWD/target/release/keyblock"
export KEYBLOCK

say "tests"
KEYBLOCK_MADE="$PWD/target/made"
export KEYBLOCK_MADE
# A fifth of the kills and of the broken records of the full run (DEVELOPERS.md, "Tests").
KEYBLOCK_KILLS=40 KEYBLOCK_BROKEN=2000 cargo test --workspace --lib --bins --test all --test memory

say "the examples in comments"
cargo test --quiet --workspace --doc

say "beside the libraries of others"
target/others/bin/python tests/reference/survival.py "$KEYBLOCK" demo-site tests/checks/chao1.csv
target/others/bin/python tests/reference/colours.py "$KEYBLOCK"
target/others/bin/python tests/reference/citations.py demo-site/web
target/others/bin/python tests/reference/feed.py demo-site/web
target/others/bin/python tests/reference/linked_data.py "$KEYBLOCK" demo-site
target/others/bin/python tests/reference/harvest.py demo-site/web
target/others/bin/python tests/reference/forms.py demo-site/web

say "in the browser"
node --test --test-concurrency=1 tests/browser/*.test.mjs
