"""The generated schemas against an independent validator: PyPI jsonschema, JSON Schema draft 2020-12.

Every file of the demo book and of the starter must pass, and a file with a wrong key must not.
"""
import glob
import json
import sys
import tomllib

from jsonschema import Draft202012Validator

KINDS = {
    "formula": ["examples/*/formulas/*.toml", "crates/app/src/commands/starter/formula.toml"],
    "book": ["examples/*/book.toml", "crates/app/src/commands/starter/book.toml"],
    "kitchen": ["examples/*/kitchens/*.toml", "crates/app/src/commands/starter/kitchen.toml"],
    "prices": ["examples/*/prices.toml"],
    "trial": ["examples/*/trials/*.toml"],
    "tasting": ["examples/*/tastings/*.toml"],
    "ingredients": ["examples/*/ingredients/*.toml", "crates/app/src/commands/starter/ingredients.toml", "crates/formula/data/ingredients/*.toml"],
}

checked, wrong = 0, []
for kind, patterns in KINDS.items():
    schema = json.load(open(f"docs/{kind}.schema.json", encoding="utf-8"))
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    for path in sorted(path for pattern in patterns for path in glob.glob(pattern)):
        document = tomllib.load(open(path, "rb"))
        # JSON has no dates: a day is the text that ISO 8601 writes.
        document = json.loads(json.dumps(document, default=str))
        checked += 1
        wrong += [f"{path}: {'/'.join(map(str, error.path))}: {error.message}" for error in validator.iter_errors(document)]
        spoilt = {**document, "no-such-key": 1}
        if validator.is_valid(spoilt):
            wrong.append(f"{path}: a key that does not exist is let through")
print("\n".join(wrong))
print(f"{checked} files held against their schemas, {len(wrong)} findings")
sys.exit(1 if wrong else 0)
