#!/usr/bin/env bash
# Publishes the demo book, a book of hostile texts and one with pictures with the real program, holds them against
# independent readers, looks at every page in a real browser, and uses page and workbench as people do.
set -euo pipefail
cd "$(dirname "$0")/../.."
cargo build --quiet -p app --features pdf
# The walks find their libraries beside them.
cp tools/test/*.mjs target/browser/
walk() { node "target/browser/$1.mjs" . "${@:2}"; }
rm -rf target/browser/site
target/debug/wellproved publish examples/saltmarsh --out target/browser/site
target/debug/wellproved sheet examples/saltmarsh --format html > target/browser/site/sheets.html
target/debug/wellproved label examples/saltmarsh --for uk --format html > target/browser/site/labels-uk.html
target/debug/wellproved label examples/saltmarsh --for us --format html > target/browser/site/labels-us.html
target/venv/bin/python tools/test/site.py
node target/browser/structured.mjs target/browser/{demo-site,hostile-site,pictures-beside}
rm -rf target/browser/halligofen
target/debug/wellproved publish crates/publish/tests/halligofen --out target/browser/halligofen
target/debug/wellproved label crates/publish/tests/halligofen --for eu --format html > target/browser/halligofen/labels.html
for site in site halligofen hostile-site pictures-beside pictures-within; do
  node target/browser/pages.mjs "target/browser/$site"
done
mkdir -p target/browser/looks
for name in sheet-by-hand logging tasting published planning timeline sharing forms figures reader; do
  walk "$name"
done
walk reader 60 de
for name in reader-looks usable workbench workbench-pages main-job second-browser; do
  walk "$name"
done
