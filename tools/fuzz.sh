#!/bin/sh
# Throws mutated texts at the document reader and the quantity parser.
#   tools/fuzz.sh [SECONDS [TARGET]]     60 seconds each of document and quantities unless said otherwise
# Stable Rust and a C++ compiler are enough. Leaves with status 1 when a target found something; what it
# found lies in target/fuzz/findings/TARGET/ and runs again as an argument of target/fuzz/HOST/release/TARGET.
set -eu

seconds=${1:-60}
targets=${2:-document quantities}
root=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
place=${CARGO_TARGET_DIR:-$root/target}/fuzz
host=$(rustc -vV | sed -n 's/^host: //p')
coverage='-Cpasses=sancov-module -Cllvm-args=-sanitizer-coverage-level=4'
coverage="$coverage -Cllvm-args=-sanitizer-coverage-inline-8bit-counters"
coverage="$coverage -Cllvm-args=-sanitizer-coverage-pc-table -Cllvm-args=-sanitizer-coverage-trace-compares"

# The first byte of a document says what file of a book it is; see fuzz/targets/document.rs.
seed() {
    { printf "$1"; cat "$2"; } > "$place/corpus/document/seed-$(printf '%s' "$2" | sed "s|$root/||; s|[^a-z0-9.-]|-|g")"
}

plant() {
    mkdir -p "$place/corpus/document" "$place/corpus/quantities" "$place/pages"
    for file in "$root"/examples/*/book.toml; do seed '\000' "$file"; done
    for file in "$root"/examples/*/ingredients/*.toml; do seed '\001' "$file"; done
    for file in "$root"/examples/*/kitchens/*.toml; do seed '\002' "$file"; done
    for file in "$root"/examples/*/trials/*.toml; do seed '\003' "$file"; done
    for file in "$root"/examples/*/trials/*.csv; do seed '\004' "$file"; done
    for file in "$root"/examples/*/kitchens/*.csv; do seed '\005' "$file"; done
    for file in "$root"/examples/*/prices.toml; do seed '\007' "$file"; done
    for file in "$root"/examples/*/larder.toml; do seed '\010' "$file"; done
    for file in "$root"/examples/*/tastings/*.toml; do seed '\011' "$file"; done
    for file in "$root"/examples/*/formulas/*.toml "$root"/fuzz/targets/*.toml; do seed '\006' "$file"; done
    # Each indented or fenced example of a fault's or rule's page is a document of its own.
    for page in "$root"/crates/formula/src/fault/*.md "$root"/crates/bench/src/rules/*.md; do
        name=$(basename "$page" .md)
        awk -v to="$place/pages/$name" \
            '/^```/ { inside = !inside; if (inside) part++; next } inside { print > (to "-" part ".toml") }' "$page"
    done
    for file in "$place"/pages/*.toml; do
        if [ -f "$file" ]; then seed '\006' "$file"; fi
    done
    grep -ho '"[0-9½-][^"]*"' "$root"/examples/*/*/*.toml | tr -d '"' | sort -u | while read -r figure; do
        printf '%s' "$figure" > "$place/corpus/quantities/seed-$(printf '%s' "$figure" | cksum | tr ' ' '-')"
    done
}

run() {
    mkdir -p "$place/findings/$1"
    status=0
    (cd "$place" && "./$host/release/$1" "corpus/$1" -max_total_time="$seconds" -max_len="$2" -timeout=10 \
        -rss_limit_mb=2048 -dict="$root/fuzz/$1.dict" -artifact_prefix="findings/$1/" \
        -print_final_stats=1 > "$1.log" 2>&1) || status=$?
    runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$place/$1.log")
    memory=$(sed -n 's/^stat::peak_rss_mb: *//p' "$place/$1.log")
    reached=$(sed -n 's/.* cov: \([0-9]*\) .*/\1/p' "$place/$1.log" | tail -1)
    if [ "$status" -eq 0 ] && [ "${runs:-0}" -gt 0 ]; then
        echo "$1: fine after ${runs:-no} texts in $seconds s, $reached places of the code reached, ${memory:-?} MB at most"
        return 0
    fi
    echo "$1: FOUND SOMETHING after ${runs:-?} texts; see $place/$1.log"
    grep -a -m 5 -e 'panicked at' -e 'ERROR: libFuzzer' -e 'Test unit written' -A 1 "$place/$1.log" || true
    return 1
}

plant
# The same versions as the program's own, and libfuzzer-sys added to them.
cp "$root/Cargo.lock" "$root/fuzz/Cargo.lock"
RUSTFLAGS="--cfg fuzzing -Ccodegen-units=1 $coverage" CARGO_TARGET_DIR="$place" \
    cargo build --quiet --release --target "$host" --manifest-path "$root/fuzz/Cargo.toml"
found=0
for target in $targets; do
    case $target in
        quantities) longest=64 ;;
        *) longest=16384 ;;
    esac
    run "$target" "$longest" || found=1
done
exit "$found"
