"""Published books against independent readers: the feed by PyPI feedparser, structured data and Open Graph by extruct,
the site map by lxml, photographs by Pillow and exifread.

The demo book must pass, and a book of hostile texts and pictures too: markup, quotes, right-to-left marks and emoji come
out as text everywhere, and nothing that a camera noted is left in a picture.
"""
import base64
import datetime
import glob
import io
import json
import os
import re
import shutil
import subprocess
import sys
import urllib.parse

import exifread
import extruct
import feedparser
import lxml.etree
import lxml.html
from PIL import Image

PROGRAM = os.path.abspath("target/debug/wellproved")
BASE = "https://saltmarsh.example/book/"
ROOM = os.path.abspath("target/browser")
wrong = []


def amiss(where, words):
    wrong.append(f"{where}: {words}")


def publish(book, out, status=0):
    shutil.rmtree(out, ignore_errors=True)
    ran = subprocess.run([PROGRAM, "publish", book, "--out", out], capture_output=True, text=True)
    if ran.returncode != status:
        amiss(book, f"publish ended with {ran.returncode}: {ran.stdout}{ran.stderr}")
    return ran.stdout


def plain(text):
    return re.sub(r"\s+", " ", text.replace("\u2060", "")).strip()


def minutes(duration):
    """ISO 8601: days, hours, minutes, seconds."""
    whole = re.fullmatch(r"P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?", duration)
    if not whole:
        return amiss(duration, "is no ISO 8601 duration") or 0
    days, hours, mins, seconds = (int(part or 0) for part in whole.groups())
    return days * 1440 + hours * 60 + mins + seconds / 60


def pages(folder):
    return sorted(os.path.basename(path) for path in glob.glob(f"{folder}/*.html"))


def is_recipe(name):
    """Whether a page is a formula's: not a list, and not what a tasting found."""
    return name not in ("index.html", "tags.html", "ingredients.html") and not name.endswith(".evidence.html")


def check_page(folder, name):
    html = open(f"{folder}/{name}", encoding="utf-8").read()
    tree = lxml.html.fromstring(html.encode("utf-8"))
    address = BASE + ("" if name == "index.html" else name)
    canonical = tree.xpath("//link[@rel='canonical']/@href")
    if canonical != [address]:
        amiss(name, f"canonical is {canonical}")
    found = extruct.extract(html, base_url=address, syntaxes=["json-ld", "opengraph"])
    graph = dict(found["opengraph"][0]["properties"]) if found["opengraph"] else {}
    for key in ("og:title", "og:type", "og:url"):
        if not graph.get(key):
            amiss(name, f"{key} is missing")
    if graph.get("og:url") != address:
        amiss(name, f"og:url is {graph.get('og:url')}")
    recipes = found["json-ld"]
    if is_recipe(name) != bool(recipes):
        amiss(name, f"{len(recipes)} recipes")
    for element in tree.xpath("//script|//style|//head"):
        element.drop_tree()
    shown = plain(tree.text_content())
    times = set(tree.xpath("//time/@datetime"))
    for recipe in recipes:
        check_recipe(name, recipe, shown, times)
    return tree


def check_recipe(name, recipe, shown, times):
    told = [recipe["name"], recipe.get("recipeYield", ""), *recipe["recipeIngredient"]]
    told += recipe.get("description", "").split("\n\n")
    told += [tag for tag in recipe.get("keywords", "").split(", ")]
    told += [tool["name"] for tool in recipe.get("tool", [])]
    for section in recipe["recipeInstructions"]:
        told += [section["name"], *(step["text"] for step in section["itemListElement"])]
    told += [value for key, value in recipe.get("nutrition", {}).items() if key != "@type"]
    for text in told:
        if plain(text) not in shown:
            amiss(name, f"structured data say what the page does not show: {text!r}")
    spans = {key: recipe[key] for key in ("prepTime", "cookTime", "totalTime") if key in recipe}
    for key, span in spans.items():
        if span not in times:
            amiss(name, f"{key} {span} is not on the page")
    parts = sum(minutes(spans[key]) for key in ("prepTime", "cookTime") if key in spans)
    if "totalTime" in spans and minutes(spans["totalTime"]) < parts * 0.9:
        amiss(name, f"the whole {spans['totalTime']} is less than its parts")


def check_feed(folder, names):
    feed = feedparser.parse(open(f"{folder}/feed.xml", "rb").read())
    if feed.bozo or feed.version != "atom10":
        amiss("feed.xml", f"{feed.version} {feed.get('bozo_exception')}")
    for key in ("title", "id", "updated_parsed", "author"):
        if not feed.feed.get(key):
            amiss("feed.xml", f"has no {key}")
    if len({entry.id for entry in feed.entries}) != len(names):
        amiss("feed.xml", f"{len(feed.entries)} entries for {len(names)} formulas")
    for entry in feed.entries:
        page = urllib.parse.unquote(entry.link.removeprefix(BASE))
        heading = lxml.html.parse(f"{folder}/{page}").xpath("//h1")[0].text_content()
        if plain(entry.title_detail.value) != plain(heading) or entry.title_detail.type != "text/plain":
            amiss("feed.xml", f"{entry.title!r} is headed {heading!r}")
        if not entry.updated_parsed or not entry.published_parsed:
            amiss("feed.xml", f"{entry.id} has no moment")


def check_sitemap(folder, names):
    tree = lxml.etree.parse(f"{folder}/sitemap.xml")
    space = {"s": "http://www.sitemaps.org/schemas/sitemap/0.9"}
    listed = tree.xpath("//s:url/s:loc/text()", namespaces=space)
    expected = {BASE + ("" if name == "index.html" else name) for name in names}
    if set(listed) != expected or len(listed) != len(expected):
        amiss("sitemap.xml", f"{set(listed) ^ expected}")
    for moment in tree.xpath("//s:lastmod/text()", namespaces=space):
        datetime.datetime.fromisoformat(moment)


def check_links(folder, names):
    for name in names:
        for href in lxml.html.parse(f"{folder}/{name}").xpath("//a/@href"):
            file, _, anchor = href.partition("#")
            target = f"{folder}/{file or name}"
            if not os.path.exists(target):
                amiss(name, f"leads to {href}, which is not there")
            elif anchor and not lxml.html.parse(target).xpath("//*[@id=$id]", id=anchor):
                amiss(name, f"leads to {href}, which is not on that page")


def check_site(folder):
    names = pages(folder)
    for name in names:
        check_page(folder, name)
    formulas = [name for name in names if is_recipe(name)]
    check_feed(folder, formulas)
    check_sitemap(folder, names)
    check_links(folder, names)
    return len(names)


EVIL = '</script><script>alert(1)</script><img src=x onerror=alert(1)> "&amp; \'\u202e\u2066🥐 ]]> <!-- {{x}} ${y}'


def write(path, text):
    os.makedirs(os.path.dirname(path), exist_ok=True)
    with open(path, "wb") as file:
        file.write(text if isinstance(text, bytes) else text.encode("utf-8"))


def formula(title, extra="", picture=""):
    quoted = json.dumps(title, ensure_ascii=False)
    return f"""title = {quoted}
intro = {json.dumps("A plain flat bread. " + extra, ensure_ascii=False)}
tags = [{json.dumps(extra or "plain", ensure_ascii=False)}]
notes = [{json.dumps(extra or "None.", ensure_ascii=False)}]
source = {json.dumps(extra or "None.", ensure_ascii=False)}
storage = "Best at once."
{picture}
[[component]]
name = "bread"
title = {quoted}

[[component.stage]]
name = "dough"
title = {quoted}
kind = "final-mix"

[component.stage.ingredients]
flour-bread = {{ amount = "500 g", title = {quoted}, note = {json.dumps(extra or "sifted", ensure_ascii=False)} }}

[[component.stage.step]]
action = "mix"
text = {json.dumps("Mix {flour-bread}. " + extra.replace("{", "(").replace("}", ")"), ensure_ascii=False)}
time = "5 min"
equipment = [{json.dumps(extra or "bowl", ensure_ascii=False)}]

[[component.stage.step]]
action = "boil"
text = "Steam until it is done."
time = "9 min"
"""


def hostile_texts():
    book = f"{ROOM}/hostile"
    shutil.rmtree(book, ignore_errors=True)
    write(f"{book}/book.toml", f"title = {json.dumps(EVIL, ensure_ascii=False)}\nauthor = {json.dumps(EVIL, ensure_ascii=False)}\naddress = \"{BASE}\"\n")
    write(f"{book}/formulas/evil.toml", formula(EVIL, EVIL))
    write(f"{book}/formulas/bröd-ø.toml", formula("Bröd", "ordinary"))
    out = f"{ROOM}/hostile-site"
    publish(book, out)
    names = pages(out)
    for name in names:
        tree = lxml.html.parse(f"{out}/{name}")
        # The index finds, a formula's page has its figures and its module; lists have no script.
        scripts = [script.get("type") for script in tree.xpath("//script") if script.get("type") != "application/ld+json"]
        own = {"index.html": ["module"], "tags.html": [], "ingredients.html": []}.get(name, ["application/json", "module"])
        if scripts != own or tree.xpath("//*[@onerror]") or tree.xpath("//img[@src='x']"):
            amiss(name, "markup in a text became markup")
    recipe = extruct.extract(open(f"{out}/evil.html", encoding="utf-8").read(), syntaxes=["json-ld"])["json-ld"][0]
    if recipe["name"] != EVIL or recipe["author"]["name"] != EVIL:
        amiss("evil.html", f"the name in JSON-LD is {recipe['name']!r}")
    feed = lxml.etree.parse(f"{out}/feed.xml")
    titles = feed.xpath("//*[local-name()='entry']/*[local-name()='title']/text()")
    if EVIL not in titles:
        amiss("feed.xml", f"titles are {titles}")
    check_feed(out, ["evil.html"] * 2)
    listed = lxml.etree.parse(f"{out}/sitemap.xml").xpath("//*[local-name()='loc']/text()")
    if f"{BASE}br%C3%B6d-%C3%B8.html" not in listed:
        amiss("sitemap.xml", f"lists {listed}")


def photograph(width=2400, height=1600):
    """A picture with a place, an owner and a turn in its notes: red above, blue below as the camera held it."""
    image = Image.new("RGB", (width, height), "red")
    image.paste("blue", (0, height // 2, width, height))
    exif = Image.Exif()
    exif[0x0112] = 6
    exif[0x010F] = "Camera of the estuary"
    exif[0x8298] = "An owner"
    exif.get_ifd(0x8825).update({1: "N", 2: (51.0, 30.0, 0.0), 3: "E", 4: (0.0, 7.0, 0.0)})
    file = io.BytesIO()
    image.save(file, "JPEG", exif=exif, quality=90, comment=b"an owner's words")
    return file.getvalue()


def check_picture(where, data):
    image = Image.open(io.BytesIO(data))
    image.load()
    tags = exifread.process_file(io.BytesIO(data))
    if tags or image.getexif() or image.info.get("comment") or b"owner" in data or b"Camera" in data or b"Exif" in data:
        amiss(where, f"the camera's notes are left: {tags}")
    # Turned by a quarter to the right: what was above is at the right.
    left, right = image.convert("RGB").getpixel((5, image.height // 2)), image.convert("RGB").getpixel((image.width - 5, image.height // 2))
    if image.width >= image.height or left[2] < 200 or right[0] < 200:
        amiss(where, f"is not upright: {image.size} {left} {right}")
    return image.size


def photographs():
    book = f"{ROOM}/pictures"
    shutil.rmtree(book, ignore_errors=True)
    picture = '\n[photograph]\nfile = "photographs/bread.jpg"\nalt = "Flat breads \\"hot\\" <in> a cloth"\n'
    write(f"{book}/formulas/bread.toml", formula("Flat bread", picture=picture))
    write(f"{book}/photographs/bread.jpg", photograph())
    settings = f'title = "Breads"\naddress = "{BASE}"\nphotographs = '
    write(f"{book}/book.toml", settings + '"embedded"\n')
    out = f"{ROOM}/pictures-within"
    publish(book, out)
    (img,) = lxml.html.parse(f"{out}/bread.html").xpath("//img")
    data = base64.b64decode(img.get("src").removeprefix("data:image/jpeg;base64,"))
    if check_picture("embedded", data) != (int(img.get("width")), int(img.get("height"))) or img.get("alt") != 'Flat breads "hot" <in> a cloth':
        amiss("embedded", f"{img.attrib}")
    write(f"{book}/book.toml", settings + '"beside"\n')
    out = f"{ROOM}/pictures-beside"
    publish(book, out)
    (img,) = lxml.html.parse(f"{out}/bread.html").xpath("//img")
    sizes = [entry.split() for entry in img.get("srcset").split(", ")]
    for file, width in sizes:
        if check_picture(file, open(f"{out}/{file}", "rb").read())[0] != int(width.removesuffix("w")):
            amiss(file, f"is not {width} wide")
    if [int(width[:-1]) for _, width in sizes] != [480, 960, 1600] or not img.get("sizes"):
        amiss("beside", f"sizes are {sizes}")
    found = extruct.extract(open(f"{out}/bread.html", encoding="utf-8").read(), syntaxes=["json-ld", "opengraph"])
    if found["json-ld"][0]["image"] != [BASE + sizes[-1][0]] or dict(found["opengraph"][0]["properties"])["og:image"] != BASE + sizes[-1][0]:
        amiss("beside", "the picture is not told abroad")
    hostile_pictures(book)


def hostile_pictures(book):
    whole = photograph()
    buffer = io.BytesIO()
    Image.new("1", (20000, 20000)).save(buffer, "PNG")
    kinds = {
        "cut short": whole[: len(whole) // 2],
        "a head alone": whole[:200],
        "nothing": b"",
        "a wide lie": buffer.getvalue(),
        "a page": b"<html><script>alert(1)</script>",
        "noise": whole[:600] + os.urandom(5000),
    }
    for kind, data in kinds.items():
        write(f"{book}/photographs/bread.jpg", data)
        out = f"{ROOM}/pictures-hostile"
        told = publish(book, out, status=1)
        if "photograph-not-usable" not in told:
            amiss(kind, f"no diagnostic: {told}")
        if "<img" in open(f"{out}/bread.html", encoding="utf-8").read():
            amiss(kind, "is shown")


publish("examples/saltmarsh", f"{ROOM}/demo-site")
looked = check_site(f"{ROOM}/demo-site")
hostile_texts()
photographs()
print("\n".join(wrong))
print(f"{looked} pages held against their structured data, feed and site map, {len(wrong)} findings")
sys.exit(1 if wrong else 0)
