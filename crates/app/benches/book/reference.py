"""A plain reference of the baker's arithmetic: the standard TOML reader, dictionaries, nothing else.

Does for every formula of a book what `check` does at the least: reads it, turns amounts into gram,
and works out each ingredient's total as a share of all flour. Prints the seconds it took.
"""
import os
import re
import sys
import time
import tomllib

UNITS = {"g": 1, "kg": 1000, "mg": 0.001, "oz": 28.349523125, "lb": 453.59237}
VOLUMES = {"ml": 1, "l": 1000, "tsp": 5, "tbsp": 15, "cup": 250}
PARTS = {"all": 1.0, "half": 0.5, "a third": 1 / 3}


def table(folders):
    rows = {}
    for folder in folders:
        for name in sorted(os.listdir(folder)) if os.path.isdir(folder) else []:
            with open(os.path.join(folder, name), "rb") as file:
                for key, row in tomllib.load(file).items():
                    rows[key] = row
                    for other in row.get("also", []):
                        rows.setdefault(other.replace(" ", "-"), row)
    for row in rows.values():
        if "like" in row:
            for key, value in rows[row["like"]].items():
                row.setdefault(key, value)
    return rows


def number(text):
    total = 0.0
    for word in text.split():
        top, _, bottom = word.partition("/")
        total += float(top.replace(",", ".")) / (float(bottom) if bottom else 1.0)
    return total


AMOUNT = re.compile(r"\s*([\d.,/ ]*\d)(?:-[\d.,]+)?\s*(.*)")


def grams(value, row, flour, made):
    text = str(value)
    if text in PARTS:
        return made * PARTS[text]
    figure, unit = AMOUNT.match(text).groups()
    figure = number(figure)
    if unit in UNITS:
        return figure * UNITS[unit]
    if unit in VOLUMES:
        return figure * VOLUMES[unit] * row.get("density", {}).get("grams-per-ml", 1.0)
    if unit == "%":
        return figure / 100 * flour
    return figure * float(str(row.get("piece", {}).get("weighs", "51.6 g")).split()[0])


def work_out(formula, rows):
    results = {}
    for component in formula["component"]:
        made, overall, flour_total = {}, {}, 0.0
        for stage in component["stage"]:
            lines = {key: value if isinstance(value, dict) else {"amount": value} for key, value in stage.get("ingredients", {}).items()}
            flour = 0.0
            for key, line in lines.items():
                row = rows.get(line.get("ingredient", key), {})
                if row.get("counts-as-flour") and "%" not in str(line.get("amount")):
                    flour += grams(line["amount"], row, 0.0, 0.0)
            mixed = 0.0
            for key, line in lines.items():
                name = line.get("ingredient", key)
                row = rows.get(name, {})
                mass = grams(line.get("amount", "all"), row, flour, made.get(key, 0.0))
                mixed += mass
                if key in made:
                    continue
                overall[name] = overall.get(name, 0.0) + mass
                if row.get("counts-as-flour"):
                    flour_total += mass
            loss = 1.0
            for key in ("boil-off", "loss"):
                loss *= 1 - number(stage.get(key, "0 %").split()[0]) / 100
            made[stage["name"]] = mixed * loss
            for step in stage.get("step", []):
                step["references"] = re.findall(r"\{([^}]*)\}", step["text"])
        results[component["name"]] = {name: mass / flour_total if flour_total else mass for name, mass in overall.items()}
    return results


def main(book, data):
    rows = table([data, os.path.join(book, "ingredients")])
    folder = os.path.join(book, "formulas")
    begun = time.perf_counter()
    count = 0
    for name in sorted(os.listdir(folder)):
        with open(os.path.join(folder, name), "rb") as file:
            work_out(tomllib.load(file), rows)
        count += 1
    print(time.perf_counter() - begun, count)


main(sys.argv[1], sys.argv[2])
