"""Are the constants of the science really held? Changes one number at a time and runs the tests.

    tools/science/mutations.py [--seed 1] [--count 40] [--group heat]... [--data] [--ranges] [--outside] [--list]

Every numeric literal of crates/science/src outside comments, texts, attributes, array types and test
modules is a candidate, with --data every number in crates/science/data too, and with --ranges the ranges
of validity that equations state: those are said of an equation, not used by it. A stated seed chooses
some; each in turn becomes 10 % larger (a whole number for which that is nothing, 1 larger; a floating
zero is no candidate), the tests run, and the number goes back. "Killed" means that a test failed or ran
for more than ten times as long as usual; "survived", that every test was content. A change that does not
compile is set aside and another is chosen for it.

Left out: documentation examples, for speed, and the tests the_table_is_fresh and the_constants_are_fresh,
because they compare with what the program itself printed: they would notice most changes and prove nothing.

With --outside our own algebra and prototypes do not count: reference files of kind "cross-check" are let pass
and the tests against a prototype are skipped, so a number is killed by something from outside or not at all.

It works in a copy under target/mutations, so the working tree is never touched; the copy is put right at
the start, after every change, and on an interruption.
"""
import argparse
import decimal
import fcntl
import os
import pathlib
import random
import re
import signal
import subprocess
import sys
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
COPY = ROOT / "target/mutations/copy"
BUILD = ROOT / "target/mutations/build"
SCIENCE = pathlib.PurePath("crates/science")
# A little optimisation builds no slower and more than halves the time of the tests. With one seed for all
# random inputs no mutant is killed by chance alone.
SETTINGS = {
    "CARGO_TARGET_DIR": str(BUILD),
    "CARGO_PROFILE_DEV_OPT_LEVEL": "1",
    "PROPTEST_RNG_SEED": "1",
    "PROPTEST_DISABLE_FAILURE_PERSISTENCE": "1",
    "RUST_BACKTRACE": "0",
}
# Tests that hold the program to our own prototypes.
OURS = ["vectors::", "prototype"]
LEFT_OUT = ["the_table_is_fresh", "the_constants_are_fresh"]

RUST_ASIDE = re.compile(
    r"""//[^\n]*|/\*.*?\*/|b?r(?P<fence>\#*)".*?"(?P=fence)|b?"(?:\\.|[^"\\])*"|'(?:\\.[^']*|[^'\\])'|\#!?\[[^\]]*\]""",
    re.DOTALL | re.VERBOSE,
)
RANGE = re.compile(r"\bValid \{[^}]*\}")
ARRAY_LENGTH = re.compile(r";\s*\w+\s*\]")
TOML_ASIDE = re.compile(r'#[^\n]*|"(?:\\.|[^"\\])*"|^[^=\n]*=', re.MULTILINE)
NUMBER = re.compile(
    r"(?:(?<=\.\.)|(?<=\.\.=)|(?<![\w.]))"  # The second part of a pair, as in pair.1, is no number.
    r"(?P<figure>0x[0-9a-fA-F_]+|\d(?:_?\d)*(?:\.\d(?:_?\d)*)?(?:[eE][+-]?\d+)?)"
)


def blank(match):
    """As many characters, so that places stay what they were."""
    return re.sub(r"[^\n]", " ", match.group())


def bare(text, suffix, ranges):
    """The text with everything that holds no mutable number blanked out."""
    if suffix == ".toml":
        return TOML_ASIDE.sub(blank, text)
    tests = text.find("#[cfg(test)]")  # Test modules stand at the end of their file.
    code = text if tests < 0 else text[:tests]
    code = ARRAY_LENGTH.sub(blank, RUST_ASIDE.sub(blank, code))
    return code if ranges else RANGE.sub(blank, code)


def larger(figure):
    """The figure 10 % larger, in its own notation; nothing if it is a floating zero."""
    plain = figure.replace("_", "")
    if plain.startswith("0x"):
        return hex(int(plain, 16) + 1)
    if plain.isdigit():
        return str(max(int(plain) + 1, int(plain) * 11 // 10))
    mantissa, mark, exponent = re.fullmatch(r"([\d.]+)([eE]?)(.*)", plain).groups()
    value = decimal.Decimal(mantissa) * decimal.Decimal("1.1")
    if value == 0:
        return None
    text = format(value, "f")
    return (text if "." in text or mark else text + ".0") + mark + exponent


class Mutant:
    """One number in one file."""

    def __init__(self, path, text, match):
        self.path, self.start, self.end = path, match.start("figure"), match.end("figure")
        self.old, self.new = match.group("figure"), larger(match.group("figure"))
        self.line = text.count("\n", 0, self.start) + 1
        self.code = text.splitlines()[self.line - 1].strip()

    def named(self):
        return f"{self.path}:{self.line}  {self.old} -> {self.new}"


def candidates(chosen):
    """Every mutable number, file by file."""
    files = sorted((COPY / SCIENCE / "src").rglob("*.rs"))
    if chosen.data:
        files += sorted((COPY / SCIENCE / "data").rglob("*.toml"))
    found = []
    for file in files:
        path = file.relative_to(COPY)
        if chosen.group and not set(chosen.group) & {path.stem, *path.parts}:
            continue
        text = file.read_text(encoding="utf-8")
        mutants = [Mutant(path, text, match) for match in NUMBER.finditer(bare(text, file.suffix, chosen.ranges))]
        found += [mutant for mutant in mutants if mutant.new]
    return found


def fresh_copy():
    """Brings the copy in line with the tree and leaves unchanged files, and so what is built, alone."""
    wanted = [path for crate in ("science", "quantity") for path in (ROOT / "crates" / crate).rglob("*") if path.is_file()]
    wanted += [ROOT / "Cargo.lock", ROOT / "docs/equations.md", ROOT / "docs/constants.md"]
    texts = {path.relative_to(ROOT): path.read_bytes() for path in wanted}
    manifest = (ROOT / "Cargo.toml").read_text(encoding="utf-8")
    texts[pathlib.PurePath("Cargo.toml")] = re.sub(r"(?m)^default-members.*$", "", manifest).encode()
    for path, text in texts.items():
        target = COPY / path
        if not target.exists() or target.read_bytes() != text:
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(text)
    for crate in (COPY / "crates").iterdir():
        for stale in crate.rglob("*"):
            if stale.is_file() and stale.relative_to(COPY) not in texts:
                stale.unlink()


def cargo(limit, *words):
    """Runs cargo on one core; its status and output, or no status when it ran out of time."""
    settings = {**os.environ, **SETTINGS}
    settings.pop("UPDATE_DOCS", None)
    command = ["cargo", "test", "--quiet", "--offline", "-j1", "-p", "science", "--lib", "--tests", *words]
    with subprocess.Popen(
        command, cwd=COPY, env=settings, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, start_new_session=True
    ) as process:
        try:
            output, _ = process.communicate(timeout=limit)
            return process.returncode, output
        except BaseException as stop:
            os.killpg(process.pid, signal.SIGKILL)
            if isinstance(stop, subprocess.TimeoutExpired):
                return None, ""
            raise


def build():
    return cargo(600, "--no-run")


def run(limit, outside=False):
    if outside:
        SETTINGS["OUTSIDE_ONLY"] = "1"
    skipped = [word for name in LEFT_OUT + (OURS if outside else []) for word in ("--skip", name)]
    return cargo(limit, "--", "--test-threads=1", *skipped)


def try_out(mutant, limit, outside):
    """What the tests say of a mutant: killed with the test that failed, survived, or stillborn."""
    file = COPY / mutant.path
    text = file.read_text(encoding="utf-8")
    try:
        file.write_text(text[: mutant.start] + mutant.new + text[mutant.end :], encoding="utf-8")
        status, _ = build()
        if status != 0:
            return "stillborn", ""
        status, output = run(limit, outside)
    finally:
        file.write_text(text, encoding="utf-8")
    if status is None:
        return "killed", "ran out of time"
    failed = list(dict.fromkeys(re.findall(r"^    ([\w:]+)$", output, re.MULTILINE)))
    by = failed[0] + (f" and {len(failed) - 1} more" if len(failed) > 1 else "") if failed else "a crash"
    return ("survived", "") if status == 0 else ("killed", by)


def options():
    words = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--count", type=int, default=40)
    words.add_argument("--group", action="append", default=[], help="heat, ferment, sugar ...; may be repeated")
    words.add_argument("--data", action="store_true", help="the numbers of crates/science/data as well")
    words.add_argument("--ranges", action="store_true", help="the stated ranges of validity as well")
    words.add_argument("--outside", action="store_true", help="let our own algebra and prototypes kill nothing")
    words.add_argument("--list", action="store_true", help="only list what would be changed")
    return words.parse_args()


def main():
    chosen = options()
    for stop in (signal.SIGINT, signal.SIGTERM):
        signal.signal(stop, lambda *_: sys.exit("interrupted; the copy is as it was"))
    COPY.mkdir(parents=True, exist_ok=True)
    alone = open(COPY / "lock", "w", encoding="utf-8")
    try:
        fcntl.flock(alone, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        sys.exit("another run is under way")
    fresh_copy()
    pool = candidates(chosen)
    random.Random(chosen.seed).shuffle(pool)
    print(f"{len(pool)} numbers; seed {chosen.seed}, {chosen.count} of them; left out: documentation examples, {', '.join(LEFT_OUT)}")
    if chosen.list:
        print("\n".join(mutant.named() + "    " + mutant.code for mutant in pool[: chosen.count]))
        return 0
    status, output = build()
    began = time.monotonic()
    if status == 0:
        status, output = run(600, chosen.outside)
    if status != 0:
        print("the tests fail without any change:\n" + output)
        return 2
    limit = 30 + 10 * (time.monotonic() - began)
    counts, survivors = {"killed": 0, "survived": 0, "stillborn": 0}, []
    for mutant in pool:
        if counts["killed"] + counts["survived"] == chosen.count:
            break
        verdict, by = try_out(mutant, limit, chosen.outside)
        counts[verdict] += 1
        survivors += [mutant] if verdict == "survived" else []
        print(f"{verdict:9} {mutant.named()}" + (f"  by {by}" if by else ""), flush=True)
    print(f"\n{counts['killed']} killed, {counts['survived']} survived, {counts['stillborn']} did not compile and count for nothing")
    for mutant in survivors:
        print(f"  {mutant.named()}    {mutant.code}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
