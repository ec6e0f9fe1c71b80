#!/usr/bin/env bash
# Publishes the demo book, a book of hostile texts and one with pictures with the real program, holds them against
# independent readers, looks at every page in a real browser, and uses it as readers do.
set -euo pipefail
cd "$(dirname "$0")/../.."
cargo build --quiet -p app --features pdf
rm -rf target/browser/site
target/debug/wellproved publish examples/saltmarsh --out target/browser/site
target/debug/wellproved sheet examples/saltmarsh --format html > target/browser/site/sheets.html
target/debug/wellproved label examples/saltmarsh --for uk --format html > target/browser/site/labels-uk.html
target/debug/wellproved label examples/saltmarsh --for us --format html > target/browser/site/labels-us.html
cp tools/test/judging.mjs tools/test/pages.mjs target/browser/
target/venv/bin/python tools/test/site.py
cp tools/test/structured.mjs target/browser/structured.mjs
node target/browser/structured.mjs target/browser/{demo-site,hostile-site,pictures-beside}
rm -rf target/browser/halligofen
target/debug/wellproved publish crates/publish/tests/halligofen --out target/browser/halligofen
target/debug/wellproved label crates/publish/tests/halligofen --for eu --format html > target/browser/halligofen/labels.html
for site in site halligofen hostile-site pictures-beside pictures-within; do
  node target/browser/pages.mjs "target/browser/$site"
done
mkdir -p target/browser/looks
cp tools/test/serving.mjs target/browser/
for walk in sheet-by-hand logging tasting sharing; do
  cp "tools/test/$walk.mjs" target/browser/
  node "target/browser/$walk.mjs" .
done
cp tools/test/figures.mjs tools/test/reader.mjs tools/test/reader-looks.mjs tools/test/usable.mjs target/browser/
node target/browser/figures.mjs .
node target/browser/reader.mjs .
node target/browser/reader.mjs . 60 de
node target/browser/reader-looks.mjs .
node target/browser/usable.mjs .
cp tools/test/workbench.mjs target/browser/
node target/browser/workbench.mjs .
