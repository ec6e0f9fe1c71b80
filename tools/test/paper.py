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
    shown = re.sub(r"\s+", " ", run("pdftotext", "-raw", str(file), "-").replace("\u00ad\n", "").replace("\u00ad", "").replace("-\n", "-").replace("‐\n", ""))
    assert facts.get("Title"), f"{file} has no title"
    for text in texts:
        assert text in shown.replace("\u00a0", " "), f"{file} does not say “{text}”: {shown[:400]}"
    return int(facts["Pages"])


# Millimetres, and how many labels a sheet holds.
SHEETS = {"70x36": ("a4", 24), "105x57": ("a4", 10), "105x74": ("a4", 8), "105x148": ("a4", 4), "210x148": ("a4", 2),
          "2.6x1in": ("letter", 30), "4x2in": ("letter", 10), "4x3.3in": ("letter", 6), "4x5in": ("letter", 4),
          "8.5x5.5in": ("letter", 2)}


def sheet_of(*words):
    told = subprocess.run([PROGRAM, "label", *words], check=True, capture_output=True, text=True).stderr
    return re.search(r"labels of (\S+)$", told, re.M).group(1)


def labels(folder):
    """Labels of every formula on every sheet; a larger one where there is no room."""
    letters()
    pages, file = 0, folder / "labels.pdf"
    for formula in sorted((BOOK / "formulas").glob("*.toml")):
        for law in ("eu", "us"):
            name = json.loads(run(PROGRAM, "label", str(formula), "--for", law, "--format", "json"))[0]["name"]
            for sheet in ("70x36", "105x74", "210x148", "2.6x1in", "4x5in"):
                said = sheet_of(str(formula), "--for", law, "--pdf", str(file), "--sheet", sheet, "--copies", "3")
                assert SHEETS[said][0] == SHEETS[sheet][0], f"{sheet} became {said}"
                pages += judged(file, SHEETS[said][0], [name, "Ingredients:", "Draft: check it with your authority."])
    formula = str(BOOK / "formulas/base-syrup.toml")
    said = sheet_of(formula, "--pdf", str(file), "--sheet", "105x74", "--copies", "9", "--from", "8")
    assert said == "105x74"
    count = judged(file, "a4", ["Draft: check it with your authority."])
    assert count == 2, f"nine labels from the eighth place on want two sheets, not {count}"
    shown = run("pdftotext", "-bbox", str(file), "-")
    first, second = shown.split("<page ")[1:]
    draft = [tuple(map(float, found)) for found in re.findall(r'xMin="([\d.]+)" yMin="([\d.]+)"[^>]*>Draft:<', first)]
    assert len(draft) == 1 and draft[0][0] > 297 and draft[0][1] > 630, f"the eighth place is at the lower right: {draft}"
    assert second.count(">Draft:<") == 8
    least(formula, folder, "eu", "x", 1.2)
    least(formula, folder, "us", "o", 25.4 / 16)
    hostile = folder / "hostile-label.toml"
    text = (BOOK / "formulas/base-syrup.toml").read_text()
    hostile.write_text(re.sub(r"^title = .*$", lambda _: f"title = '{HOSTILE}'", text, count=1, flags=re.M))
    sheet_of(str(hostile), "--pdf", str(file), "--sheet", "210x148")
    return pages + count + judged(file, "a4", [HOSTILE])


def letters():
    """What the form takes for the heights of letters is no more than what the fonts draw."""
    from PIL import ImageFont

    form = pathlib.Path("crates/paper/forms/labels.typ").read_text()
    for font in sorted(pathlib.Path("crates/paper/fonts").glob("*.otf")):
        drawn = ImageFont.truetype(str(font), 1000)
        for name, signs in {"x-height": "x", "o-height": "o", "figure-height": "0123456789"}.items():
            stated = float(re.search(rf"^#let {name} = ([\d.]+)$", form, re.M).group(1))
            for sign in signs:
                _, top, _, foot = drawn.getbbox(sign, anchor="ls")
                high = (foot - top if sign == "o" else -top) / 1000
                assert high >= stated, f"{font.name}: {sign} is {high} high, not {stated}"


def least(formula, folder, law, letter, wanted):
    """How high a letter of the list of ingredients stands on paper: a page drawn at 1200 dots an inch, not the form's own word."""
    from PIL import Image

    file, dots = folder / "least.pdf", 1200
    sheet = "105x57" if law == "eu" else "4x2in"
    sheet_of(formula, "--for", law, "--pdf", str(file), "--sheet", sheet, "--copies", "1")
    words = re.findall(r'xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]+)<', run("pdftotext", "-bbox", str(file), "-"))
    box = next(tuple(map(float, word[:4])) for word in words if word[4] == "Ingredients:")
    left, top, right, foot = (int(side * dots / 72) for side in box)
    run("pdftoppm", "-r", str(dots), "-x", str(left), "-y", str(top), "-W", str(right - left), "-H", str(foot - top),
        "-png", "-gray", "-singlefile", str(file), str(folder / "least"))
    image = Image.open(folder / "least.png").convert("L")
    # "Ingredients:": most of its ink lies between the base line and the height of the x; rows with little ink are stems and tails.
    ink = [sum(1 for dot in image.crop((0, row, image.width, row + 1)).get_flattened_data() if dot < 128) for row in range(image.height)]
    rows = [row for row, much in enumerate(ink) if much > 0.35 * max(ink)]
    high = (rows[-1] - rows[0] + 1) * 25.4 / dots
    assert high >= wanted * 0.97, f"letters of a label for {law} are {high:.2f} mm high by the {letter}, not {wanted:.2f}"


def published(folder):
    """Pages lead to what is printed beside them; what is not asked for any more goes."""
    out = folder / "published"
    run(PROGRAM, "publish", str(BOOK), "--out", str(out), "--with", "card,sheet,labels")
    pages = 0
    for page in sorted(out.glob("*.html")):
        for link in re.findall(r'href="(paper/[^"]+)"', page.read_text()):
            paper = "a5" if link.endswith("-card.pdf") else "a4"
            pages += judged(out / link, paper, [])
    assert len(list(out.glob("paper/*-card.pdf"))) == len(list((BOOK / "formulas").glob("*.toml"))) and pages > 10
    again = subprocess.run([PROGRAM, "publish", str(BOOK), "--out", str(out), "--with", "labels,card,sheet"], check=True,
                           capture_output=True, text=True).stderr
    assert "0 files written" in again, again
    run(PROGRAM, "publish", str(BOOK), "--out", str(out))
    assert not (out / "paper").exists() and "paper/" not in (out / "potato-muffins.html").read_text()
    return pages


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
    pages += labels(folder)
    pages += published(folder)
    print(f"{pages} pages of paper, sound")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as folder:
        sys.exit(main(pathlib.Path(folder)))
