// What the pages of the workbench do in the browser: a figure is tried while it is typed and written when it is
// left, and parts of the page are exchanged for what the workbench answers. It decides nothing and works out nothing.
import { exchange, forgive, refuse, say } from "./parts.js";
import * as foot from "./foot.js";
import { send } from "./sending.js";
import { listen } from "./live.js";
import "./forms.js";

/** What is typed in place: figures, words, sentences. */
const TYPED = "input[data-gesture], textarea[data-gesture]";
const main = document.querySelector("main");
const formula = main?.dataset.formula;
const here = formula && `/formula/${encodeURIComponent(formula)}`;
const kitchen = document.querySelector("form[data-kitchen]");

/** The kitchen as it is set, for every question. */
const wanted = () => (kitchen ? new URLSearchParams([...new FormData(kitchen)].filter(([, value]) => value)) : new URLSearchParams());
const asked = (path) => `${here}${path}?${wanted()}`;

/** What a control says: its gesture and what it is about; a bare number takes the unit of its column. */
function said(control) {
  const { gesture, at, line, key, step, unit, amount } = control.dataset;
  const typed = (amount ?? control.value ?? "").trim();
  const bare = /^-?[\d.,\s/½¼¾⅓⅔]+$/u.test(typed);
  const body = { gesture, at, line, key, step, amount: unit && bare ? `${typed} ${unit}` : typed };
  if (gesture === "total") {
    const stage = control.closest("section.stage");
    body.stays = [...stage.querySelectorAll("[data-stays]:checked")].map((box) => box.dataset.stays).join(" ");
  }
  return new URLSearchParams(Object.entries(body).filter(([, value]) => value !== undefined));
}

/** The control of the same column in the next line, or the one before. */
function beyond(control, down) {
  const column = [...control.closest("table, main").querySelectorAll("input[data-gesture]")].filter((one) => one.dataset.unit === control.dataset.unit);
  return column[column.indexOf(control) + (down ? 1 : -1)];
}

const moving = (control, down) => new URLSearchParams({ gesture: down ? "down" : "up", at: control.dataset.at, line: control.dataset.line });

let latest = 0;
let trying = null;

/** Tries what is being typed: the figures follow, then the remarks; the file stays. Only the last question counts. */
async function attempt(control) {
  const mine = ++latest;
  trying?.abort();
  trying = new AbortController();
  const figures = (text) => {
    if (mine !== latest) return;
    control.removeAttribute("aria-invalid");
    forgive();
    exchange(text, control);
    performance.mark("figures");
    foot.tell();
  };
  const answer = await send(asked("/try"), said(control), trying.signal, figures);
  if (mine !== latest || !answer) return;
  if (answer.ok) exchange(answer.text, control);
  else control.setAttribute("aria-invalid", "true");
}

/** Does it: the file is written, and the page shows what stands there. */
async function perform(path, body, control) {
  ++latest;
  trying?.abort();
  const answer = await send(asked(path), body);
  if (!answer) return;
  if (!answer.ok) return refuse(answer.text, control);
  forgive();
  exchange(answer.text);
  foot.tell();
  followUp();
}

const later = (wait, run) => {
  let timer;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(run, wait);
  };
};

/** Asks for parts and shows them; where `control` asked and is refused, why stands beside it. */
async function fetched(path, control) {
  const answer = await fetch(asked(path), { headers: { "x-parts": "1" } }).catch(() => null);
  if (!answer) return false;
  if (answer.ok) exchange(await answer.text());
  else if (control) refuse(await answer.text(), control);
  return answer.ok;
}

/** What takes longer than a keystroke follows when the hand rests. */
const bands = later(150, () => fetched("/bands"));
const day = later(400, () => fetched("/day"));
const whole = document.querySelector("#whole-story");
const story = later(150, () => whole.open && fetched("/story"));
const followUp = () => {
  bands();
  story();
  day();
};
whole?.addEventListener("toggle", () => story());

if (formula) {
  document.addEventListener("focusin", (event) => event.target.closest?.(TYPED) && foot.watch());
  document.addEventListener("input", (event) => {
    const control = event.target.closest?.(TYPED);
    if (control) attempt(control);
  });
  document.addEventListener("change", (event) => {
    const control = event.target.closest?.(TYPED);
    if (control) perform("/do", said(control), control);
    if (event.target.closest?.("form[data-kitchen]")) {
      history.replaceState(null, "", `${here}?${wanted()}`);
      for (const one of kitchen.elements) one.removeAttribute("aria-invalid");
      fetched("/parts", event.target).then((is) => {
        if (!is) return;
        forgive();
        followUp();
      });
    }
  });
  kitchen?.addEventListener("submit", (event) => event.preventDefault());
  document.addEventListener("click", (event) => {
    const button = event.target.closest?.("button");
    if (button?.dataset.way) {
      event.preventDefault();
      perform(`/${button.dataset.way}`, new URLSearchParams(), button);
    } else if (button?.dataset.gesture) perform("/do", said(button), button);
  });
  document.addEventListener("submit", (event) => {
    const adding = event.target.closest("form[data-adding]");
    if (!adding) return;
    event.preventDefault();
    const body = new URLSearchParams([...new FormData(adding)]);
    body.set("gesture", "add");
    body.set("at", adding.dataset.at);
    perform("/do", body, adding);
  });
  document.addEventListener("keydown", (event) => {
    const control = event.target.closest?.(TYPED);
    if (control?.nodeName === "INPUT" && (event.key === "ArrowUp" || event.key === "ArrowDown")) {
      event.preventDefault();
      const down = event.key === "ArrowDown";
      if (!event.altKey) beyond(control, down)?.focus();
      else if (control.dataset.line) perform("/do", moving(control, down), control).then(() => document.getElementById(control.id)?.focus());
      return;
    }
    if (event.key === "Enter" && control) {
      event.preventDefault();
      control.blur();
    }
    if (event.key === "Escape" && control) {
      control.value = control.defaultValue;
      control.removeAttribute("aria-invalid");
      fetched("/parts");
    }
    if (!(event.ctrlKey || event.metaKey) || event.altKey || control) return;
    const way = event.key.toLowerCase() === "z" ? (event.shiftKey ? "forth" : "back") : event.key.toLowerCase() === "y" ? "forth" : null;
    if (way) {
      event.preventDefault();
      perform(`/${way}`, new URLSearchParams());
    }
  });
  fetched("/parts").then(followUp);
}

const text = document.querySelector("form[data-text]");
/** Whether the text says something that is not saved. */
const isTyped = () => text.text.value !== text.text.defaultValue;
if (text) {
  const path = location.pathname;
  const remarks = later(200, async () => {
    const answer = await send(`${path}/try`, new URLSearchParams(new FormData(text)));
    if (answer?.ok) exchange(answer.text);
  });
  text.addEventListener("input", () => {
    document.querySelector("#saved").textContent = "not saved yet";
    remarks();
  });
  const save = async () => {
    const answer = await send(path, new URLSearchParams(new FormData(text)));
    if (!answer) return;
    if (!answer.ok) return refuse(answer.text, text);
    exchange(answer.text);
    text.from.value = document.querySelector("#saved").dataset.from ?? text.from.value;
    text.text.defaultValue = text.text.value;
  };
  // What is typed and not saved is not given up for an undo, nor for another page.
  addEventListener("beforeunload", (event) => isTyped() && event.preventDefault());
  document.addEventListener("submit", (event) => {
    if (!event.target.matches("form.strokes") || !isTyped()) return;
    event.preventDefault();
    say("Your text is not saved yet: save it first, then undo.");
  });
  text.addEventListener("submit", (event) => {
    event.preventDefault();
    save();
  });
  document.addEventListener("keydown", (event) => {
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "s") {
      event.preventDefault();
      save();
    }
  });
  document.addEventListener("click", (event) => {
    const line = event.target.closest?.("[data-line]")?.dataset.line;
    const area = document.querySelector("#text");
    if (!line || !area) return;
    const lines = area.value.split("\n");
    const start = lines.slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
    area.focus();
    area.setSelectionRange(start, start + (lines[line - 1]?.length ?? 0));
  });
}

if (document.body.hasAttribute("data-live")) {
  listen(({ changed, what, by }) => {
    if (changed && changed === main?.dataset.file) {
      const then = text && isTyped() ? "Save yours first: both are kept, and the history shows where they part" : "Load the page again to see it";
      if (text) say(`${changed}: ${what}${by ? `, by ${by}` : ""}. ${then}.`);
      else if (!document.activeElement?.matches(TYPED)) fetched("/parts").then(followUp);
    }
    if (what && (by || what.includes("another program"))) say(`${changed}: ${what}${by ? `, by ${by}` : ""}`);
  });
}
