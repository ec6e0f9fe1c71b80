"""A thousand panels made up at random: what the program says of their raw data, held against SciPy 1.17.1.

Run with target/venv/bin/python from the root; wellproved must be built (target/debug).
"""

import json
import random
import subprocess
import sys
import tempfile
from itertools import permutations, product
from pathlib import Path

import numpy as np
from scipy import stats

PROGRAM = Path("target/debug/wellproved").resolve()
FORMULA = """title = "Flat bread"
intro = "Plain."
[[component]]
name = "bread"
[[component.stage]]
name = "dough"
kind = "final-mix"
[component.stage.ingredients]
flour-bread = "500 g"
water = "65 %"
[[component.stage.step]]
action = "mix"
text = "Mix {flour-bread} and {water}."
"""
PANELS = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
rng = random.Random(20261125)
names = "abcdefgh"
compared = 0


def near(what, seen, wanted, within=1e-9):
    """Holds one figure against SciPy's."""
    global compared
    compared += 1
    if seen is None or not (abs(seen - wanted) <= within * max(1.0, abs(wanted)) or (np.isnan(seen) and np.isnan(wanted))):
        sys.exit(f"{what}: the program says {seen}, SciPy {wanted}")


def exact_friedman(rows):
    """The chance of rank sums at least as spread, every order of each taster's ranks counted out."""
    observed = sum(sum(column) ** 2 for column in zip(*rows))
    met = total = 0
    for orders in product(*(list(permutations(row)) for row in rows)):
        total += 1
        met += sum(sum(column) ** 2 for column in zip(*orders)) >= observed - 1e-9
    return met / total


def report(book, method, samples, more, rows):
    """Writes a tasting with its raw data and gives what the program says of them."""
    text = f'title = "Panel"\nmethod = "{method}"\nquestion = "Which?"\n{more}\n'
    text += "".join(f'[[sample]]\nname = "{name}"\nformula = "one"\n' for name in names[:samples])
    (book / "tastings/panel.toml").write_text(text)
    head = "tasting,closed,seat,place,code,sample,revision,asked,answer\n"
    (book / "raw.csv").write_text(head + "".join(f"panel,2026-11-25T10:00:00Z,{row}\n" for row in rows))
    command = [PROGRAM, "taste", "report", book, "panel", "--from", book / "raw.csv", "--format", "json"]
    ran = subprocess.run(command, capture_output=True, text=True)
    if ran.returncode:
        sys.exit(f"{method}: {ran.stderr}")
    return json.loads(ran.stdout)["finding"]


def choice(book):
    """A triangle, a duo-trio or a pair."""
    method = rng.choice(["triangle", "duo-trio", "paired", "preference"])
    tasters = rng.randint(3, 60)
    guess = 1 / 3 if method == "triangle" else 1 / 2
    share = rng.random()
    rows, right = [], 0
    for seat in range(1, tasters + 1):
        is_right = rng.random() < share
        right += is_right
        if method == "triangle":
            cups = [("a", is_right), ("b", not is_right), ("b", False)]
        else:
            cups = [("a", is_right), ("b", not is_right)]
        if method == "duo-trio":
            rows.append(f"{seat},0,R,a,1,,")
        rng.shuffle(cups)
        rows += [f"{seat},{place},{100 + place},{name},1,chosen,{int(chosen)}" for place, (name, chosen) in enumerate(cups, 1)]
    found = report(book, method, 2, 'expected = "a"' if method == "paired" else "", rows)
    count = max(right, tasters - right) if method == "preference" else right
    side = "two-sided" if method == "preference" else "greater"
    near(f"{method} {right}/{tasters}", found["p"], stats.binomtest(count, tasters, guess, alternative=side).pvalue)
    exact = stats.binomtest(count, tasters).proportion_ci(0.90, "exact")
    apart = lambda share: (share - guess) / (1 - guess)
    near(f"{method} lower", found["discriminators"]["exact-limits"][0], apart(exact.low))
    near(f"{method} upper", found["discriminators"]["exact-limits"][1], apart(exact.high))


def ranking(book):
    """Ranks, with ties or without, with an expected order or without."""
    samples, tasters, tied, expected = rng.randint(3, 6), rng.randint(2, 24), rng.random() < 0.4, rng.random() < 0.5
    pull = [rng.random() * 3 for _ in range(samples)]
    rows, table = [], []
    for seat in range(1, tasters + 1):
        scores = [pull[sample] + rng.gauss(0, 1) for sample in range(samples)]
        if tied:
            scores = [round(score) for score in scores]
        ranks = [1 + sum(other < score for other in scores) for score in scores]
        table.append(list(stats.rankdata(scores)))
        rows += [f"{seat},{place + 1},{100 + place},{names[place]},1,rank,{rank}" for place, rank in enumerate(ranks)]
    more = ("ties = true\n" if tied else "") + (f"expected = {json.dumps(list(names[:samples]))}\n" if expected else "")
    found = report(book, "ranking", samples, more, rows)
    columns = list(zip(*table))
    if all(len(set(row)) == 1 for row in table):
        return
    told = stats.friedmanchisquare(*columns)
    near("F", found["F"], told.statistic)
    near("W", found["W"], told.statistic / (tasters * (samples - 1)))
    if not found["exact"]:
        near("chi-squared", found["p"], told.pvalue)
    elif samples == 3 and tasters <= 5:
        near("exact", found["p"], exact_friedman(table))
    if expected and not tied:
        page = stats.page_trend_test(table, ranked=True, method="exact" if found["expected"]["exact"] else "asymptotic")
        near("L", found["expected"]["L"], page.statistic)
        near("Page's p", found["expected"]["p"], page.pvalue, 1e-7)
    for pair in found["pairs"]:
        more, less = (columns["abcdef".index(pair[side])] for side in ("more", "less"))
        before, of = sum(a < b for a, b in zip(more, less)), sum(a != b for a, b in zip(more, less))
        near("before", pair["before"], before)
        if of:
            limits = stats.binomtest(before, of).proportion_ci(0.95, "exact")
            near("first put before", pair["share-limits"][0], limits.low)
            near("first put before", pair["share-limits"][1], limits.high)


def liking(book):
    """Points of two samples and more."""
    samples, tasters = rng.randint(2, 5), rng.randint(3, 40)
    pull = [5 + rng.random() * 2 for _ in range(samples)]
    table = [[min(9, max(1, round(rng.gauss(pull[sample], 1.8)))) for sample in range(samples)] for _ in range(tasters)]
    rows = [
        f"{seat},{place + 1},{100 + place},{names[place]},1,points,{points}"
        for seat, row in enumerate(table, 1)
        for place, points in enumerate(row)
    ]
    found = report(book, "liking", samples, "", rows)[0]
    columns = [np.array(column) for column in zip(*table)]
    for mean, median, column in zip(found["means"], found["medians"], columns):
        near("mean", mean, column.mean())
        near("median", median, np.median(column))
    if samples > 2:
        near("F of points", found["F"], stats.friedmanchisquare(*columns).statistic)
    for pair in found["pairs"]:
        more, less = (columns["abcde".index(pair[side])] for side in ("more", "less"))
        differences = more - less
        if len(set(differences)) > 1:
            student = stats.ttest_rel(more, less)
            near("t", pair["t"], student.statistic)
            near("p of t", pair["p-t"], student.pvalue)
            limits = student.confidence_interval(0.95)
            near("limits", pair["limits"][0], limits.low)
            near("limits", pair["limits"][1], limits.high)
        told = differences[differences != 0]
        if 0 < len(told) <= 12:
            # Ties and all: every sign counted out.
            ranks = stats.rankdata(np.abs(told))
            signs = np.array(list(product([0, 1], repeat=len(told))))
            off = np.abs(signs @ ranks - ranks.sum() / 2)
            own = abs(ranks[told > 0].sum() - ranks.sum() / 2)
            near("signed ranks", pair["p-signed-ranks"], np.mean(off >= own - 1e-9))
        elif len(told) and len(set(np.abs(told))) == len(told):
            near("signed ranks", pair["p-signed-ranks"], stats.wilcoxon(told, method="exact").pvalue)


with tempfile.TemporaryDirectory() as folder:
    book = Path(folder)
    (book / "formulas").mkdir()
    (book / "tastings").mkdir()
    (book / "book.toml").write_text('title = "Panels"\nspoons = "metric"\n')
    (book / "formulas/one.toml").write_text(FORMULA)
    for _ in range(PANELS):
        rng.choice([choice, ranking, liking])(book)
print(f"{PANELS} panels: {compared} figures agree with SciPy {__import__('scipy').__version__}")
