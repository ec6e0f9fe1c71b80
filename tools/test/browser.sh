#!/usr/bin/env bash
# Publishes the demo book with the real program and looks at every page in a real browser.
set -euo pipefail
cd "$(dirname "$0")/../.."
cargo build --quiet -p app --features pdf
rm -rf target/browser/site
target/debug/wellproved publish examples/saltmarsh --out target/browser/site
target/debug/wellproved sheet examples/saltmarsh --format html > target/browser/site/sheets.html
cp tools/test/pages.mjs target/browser/pages.mjs
node target/browser/pages.mjs target/browser/site
