#!/usr/bin/env bash
# Installs what the tests need and what is not here yet. Knows Debian; elsewhere it says what is missing.
set -euo pipefail
cd "$(dirname "$0")/../.."

wanted=()
need() { command -v "$1" >/dev/null 2>&1 || wanted+=("$2"); }
need chromium chromium
need firefox-esr firefox-esr
need python3 python3
need pip3 python3-pip
python3 -c 'import venv, ensurepip' 2>/dev/null || wanted+=(python3-venv)
need node nodejs
need npm npm
need gcc gcc
need qpdf qpdf
need pdfinfo poppler-utils
[ -n "$(ls -d /usr/lib/postgresql/*/bin 2>/dev/null)" ] || need initdb postgresql
need g++ g++
if [ "${#wanted[@]}" -gt 0 ]; then
  if ! command -v apt-get >/dev/null 2>&1; then
    printf 'please install: %s\n' "${wanted[*]}" >&2
    exit 2
  fi
  as_root=""
  [ "$(id -u)" -eq 0 ] || as_root="sudo"
  $as_root apt-get update -qq
  DEBIAN_FRONTEND=noninteractive $as_root apt-get install -y -qq --no-install-recommends "${wanted[@]}" fonts-dejavu-core >/dev/null
fi

tools/reference/fetch-food-tables.sh

# Python's reference packages in a place of their own.
if [ ! -x target/venv/bin/python ]; then
  python3 -m venv target/venv
fi
target/venv/bin/python -m pip install --quiet --disable-pip-version-check jsonschema==4.25.1 icalendar==7.3.2 highspy==1.16.0 \
  feedparser==6.0.14 extruct==0.18.0 pillow==13.0.0 exifread==3.5.1 jinja2==3.1.6 scipy==1.17.1 numpy==2.4.6

# The browser's driver and the accessibility rules, from the npm registry, under target/.
mkdir -p target/browser
cp tools/test/package.json target/browser/package.json
(cd target/browser && PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1 npm install --no-audit --no-fund --silent)
