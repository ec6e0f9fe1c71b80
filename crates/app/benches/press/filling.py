"""A general-purpose template engine, PyPI Jinja2, that fills pages of the same content with figures worked out beforehand.

Takes what the published pages show apart into lists of texts first; only filling and writing is timed. Prints the
seconds on one core, on all cores, and how large the pages are beside the published ones.
"""
import multiprocessing
import os
import re
import sys
import time

import lxml.html
from jinja2 import Environment

TEMPLATE = """<!DOCTYPE html><html lang="{{ lang }}"><head>{% for meta in metas %}<meta{% for key, value in meta %} {{ key }}="{{ value }}"{% endfor %}>{% endfor %}
<title>{{ title }}</title>{% for style in styles %}<style>{{ style|safe }}</style>{% endfor %}<script type="application/ld+json">{{ data|safe }}</script></head><body>
<header class="top"><nav aria-label="Book"><a href="index.html">{{ book }}</a></nav></header><main><article>
{% for block in blocks %}{% if block.kind == "h1" %}<h1>{{ block.text }}</h1>{% elif block.kind == "h2" %}<h2 id="{{ block.id }}">{{ block.text }}</h2>
{% elif block.kind == "h3" %}<h3>{{ block.text }}</h3>{% elif block.kind == "p" %}<p class="{{ block.cls }}">{{ block.text }}</p>
{% elif block.kind == "ul" %}<ul class="{{ block.cls }}">{% for item in block.rows %}<li>{% for part in item %}<span class="amount">{{ part }}</span>{% endfor %}</li>{% endfor %}</ul>
{% elif block.kind == "ol" %}<ol class="steps">{% for item in block.rows %}<li class="waiting">{% for part in item %}<p class="facts">{{ part }}</p>{% endfor %}</li>{% endfor %}</ol>
{% elif block.kind == "dl" %}<dl class="{{ block.cls }}">{% for term, words in block.rows %}<div><dt>{{ term }}</dt><dd>{{ words }}</dd></div>{% endfor %}</dl>
{% elif block.kind == "table" %}<div class="scroll" tabindex="0" role="region" aria-label="{{ block.text }}"><table><caption>{{ block.text }}</caption>{% for row in block.rows %}<tr><th scope="row">{{ row[0] }}</th>{% for cell in row[1:] %}<td class="number">{{ cell }}</td>{% endfor %}</tr>{% endfor %}</table></div>
{% elif block.kind == "svg" %}<svg viewBox="{{ block.text }}" role="img" aria-label="{{ block.cls }}">{% for row in block.rows %}<rect{% for key, value in row %} {{ key }}="{{ value }}"{% endfor %}></rect>{% endfor %}</svg>{% endif %}{% endfor %}
</article></main>{{ end|safe }}</body></html>"""


def text(node):
    return re.sub(r"\s+", " ", node.text_content()).strip()


def parts(node):
    children = [text(child) for child in node if isinstance(child.tag, str)]
    own = " ".join(filter(None, [(node.text or "").strip(), *((child.tail or "").strip() for child in node)]))
    return [part for part in [*children, own] if part]


def taken_apart(path):
    with open(path, encoding="utf-8") as file:
        whole = file.read()
    tree = lxml.html.fromstring(whole)
    blocks, seen = [], set()
    for node in tree.xpath("//main//*"):
        if node.tag not in ("h1", "h2", "h3", "p", "ul", "ol", "dl", "table", "svg") or any(up in seen for up in node.iterancestors() if up.tag != "ul"):
            continue
        block = {"kind": node.tag, "text": text(node), "cls": node.get("class", ""), "id": node.get("id", ""), "rows": []}
        if node.tag in ("ul", "ol"):
            block["rows"] = [parts(item) for item in node.xpath("./li")]
            seen.update([node] if node.tag == "ol" else [])
        elif node.tag == "dl":
            block["rows"] = [(text(div[0]), text(div[1])) for div in node]
            seen.add(node)
        elif node.tag == "table":
            block["rows"] = [[text(cell) for cell in row] for row in node.xpath(".//tr")]
            block["text"] = text(node.xpath("./caption")[0])
        elif node.tag == "svg":
            block.update(rows=[list(rect.items()) for rect in node], text=node.get("viewbox", ""), cls=node.get("aria-label", ""))
        blocks.append(block)
    return {
        "name": os.path.basename(path), "lang": "en-GB", "title": text(tree.xpath("//title")[0]), "book": "Bench",
        "metas": [list(meta.items()) for meta in tree.xpath("//meta")], "styles": [style.text for style in tree.xpath("//style")],
        "data": tree.xpath("//script[@type='application/ld+json']")[0].text, "blocks": blocks,
        # What readers' scripts need is handed over as one text, which is the least work there can be.
        "end": whole[whole.rindex("</main>") + len("</main>"):whole.rindex("</body>")],
    }


def fill(pages, out):
    template = Environment(autoescape=True).from_string(TEMPLATE)
    for page in pages:
        with open(os.path.join(out, page["name"]), "w", encoding="utf-8") as file:
            file.write(template.render(page))


def main(folder, out):
    lists = ("index.html", "tags.html", "ingredients.html")
    names = sorted(name for name in os.listdir(folder) if name.endswith(".html") and name not in lists)
    pages = [taken_apart(os.path.join(folder, name)) for name in names]
    begun = time.perf_counter()
    fill(pages, out)
    one = time.perf_counter() - begun
    cores = os.cpu_count() or 1
    shares = [pages[n::cores] for n in range(cores)]
    begun = time.perf_counter()
    workers = [multiprocessing.Process(target=fill, args=(share, out)) for share in shares]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    every = time.perf_counter() - begun
    size = lambda place: sum(os.path.getsize(os.path.join(place, name)) for name in names)
    print(one, every, size(out) / size(folder))


main(sys.argv[1], sys.argv[2])
