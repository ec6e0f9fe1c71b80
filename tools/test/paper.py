"""Prints the demo book on every paper with the real program, and has what comes out judged by qpdf and poppler."""

import json
import pathlib
import re
import subprocess
import sys
import tempfile

PROGRAM = "target/debug/wellproved"
BOOK = pathlib.Path("examples/saltmarsh")
# Points of 1/72 in. ISO 216: A4 595.28 x 841.89, A5 419.53 x 595.28; Letter 612 x 792; a card of 5 x 3 in 360 x 216.
PAPERS = {"a4": (595.28, 841.89), "a5": (419.53, 595.28), "letter": (612.0, 792.0), "index": (360.0, 216.0)}
HOSTILE = 'Bun "#panic()" </script> *$x$* =1+2'


def run(*words):
    return subprocess.run(words, check=True, capture_output=True, text=True).stdout


def judged(file, paper, texts):
    run("qpdf", "--check", str(file))
    facts = dict(re.findall(r"^([A-Za-z ]+): +(.*)$", run("pdfinfo", str(file)), re.M))
    width, height = map(float, re.match(r"([\d.]+) x ([\d.]+) pts", facts["Page size"]).groups())
    wide, high = PAPERS[paper]
    assert abs(width - wide) < 0.02 and abs(height - high) < 0.02, f"{file}: {width} x {height}"
    assert facts["Tagged"] == "yes", f"{file} is not tagged"
    assert "<pdfuaid:part>1<" in run("pdfinfo", "-meta", str(file)), f"{file} does not keep to PDF/UA-1"
    fonts = run("pdffonts", str(file)).splitlines()[2:]
    assert fonts and all(re.search(r" yes +yes +yes ", line) for line in fonts), f"{file}: a font is missing: {fonts}"
    shown = re.sub(r"\s+", " ", run("pdftotext", "-raw", str(file), "-").replace("\u00ad", "").replace("-\n", "-").replace("‐\n", ""))
    assert facts.get("Title"), f"{file} has no title"
    for text in texts:
        assert text in shown.replace("\u00a0", " "), f"{file} does not say “{text}”: {shown[:400]}"
    return int(facts["Pages"])


def main(folder):
    pages = 0
    for formula in sorted((BOOK / "formulas").glob("*.toml")):
        sheet = json.loads(run(PROGRAM, "sheet", str(formula), "--format", "json"))[0]
        words = sheet["title"].split("-")[0].split(" with ")[0]
        for paper in PAPERS:
            card, page = folder / f"{formula.stem}-{paper}.pdf", folder / f"{formula.stem}-sheet-{paper}.pdf"
            run(PROGRAM, "card", str(formula), str(card), "--paper", paper)
            run(PROGRAM, "sheet", str(formula), "--pdf", str(page), "--paper", paper)
            pages += judged(card, paper, [words, "Guidance only"])
            pages += judged(page, paper, [words, "Overall formula"])
    day = folder / "day.pdf"
    run(PROGRAM, "day", str(BOOK / "formulas/potato-muffins.toml"), "--serve", "2026-11-29 09:30", "--zone", "Europe/Vienna",
        "--now", "2026-11-27 12:00", "--pdf", str(day))
    pages += judged(day, "a4", ["Sunday 29 November", "0.7 g instant yeast"])
    hostile = folder / "hostile.toml"
    text = (BOOK / "formulas/base-syrup.toml").read_text()
    hostile.write_text(re.sub(r'^title = .*$', lambda _: f"title = '{HOSTILE}'", text, count=1, flags=re.M))
    run(PROGRAM, "card", str(hostile), str(folder / "hostile.pdf"), "--paper", "a5")
    pages += judged(folder / "hostile.pdf", "a5", [HOSTILE])
    print(f"{pages} pages of paper, sound")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as folder:
        sys.exit(main(pathlib.Path(folder)))
