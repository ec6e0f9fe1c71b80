#!/usr/bin/env bash
# Publishes the demo book with the real program, looks at every page in a real browser, and uses it as readers do.
set -euo pipefail
cd "$(dirname "$0")/../.."
cargo build --quiet -p app --features pdf
rm -rf target/browser/site
target/debug/wellproved publish examples/saltmarsh --out target/browser/site
target/debug/wellproved sheet examples/saltmarsh --format html > target/browser/site/sheets.html
cp tools/test/pages.mjs target/browser/pages.mjs
node target/browser/pages.mjs target/browser/site
cp tools/test/figures.mjs tools/test/reader.mjs tools/test/reader-looks.mjs target/browser/
node target/browser/figures.mjs .
node target/browser/reader.mjs .
node target/browser/reader-looks.mjs .
