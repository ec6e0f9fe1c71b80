// The day's drawing under the hand: a step is dragged along the hours, or moved with the arrow keys, and is fixed where
// it is left; the plan around it is the workbench's. Forms and links that change the day change it in place. All that
// is known here is which moment lies where on the paper.
import { exchange, refuse, say } from "./parts.js";

const GRID = 5;
const LEAP = 30;
/** So many points along the paper are a minute, before the first hour that is drawn and after the last. */
const MINUTE = 2.1;
/** A finger that rests is not quite still. */
const STILL = 6;

const drawing = () => document.querySelector(".day-chart svg[data-zone]");
const bars = (job) => [...document.querySelectorAll(`.day-chart a[data-job="${job}"]`)];
const depth = () => history.state?.depth ?? 0;
const here = () => location.href.split("#")[0];
let furthest = depth();
/** The address of the day that is shown, without the place in it. */
let shown = here();

/** To a place in the page, which is no step to come back from. */
function leap(to) {
  const state = history.state;
  location.replace(to);
  history.replaceState(state, "");
}

/** Where moments lie on the paper: pairs of a place and a minute, in order. */
const knots = () => drawing().dataset.hours.split(" ").map((pair) => pair.split(",").map(Number));

/** From one side of the pairs to the other: straight between them, and on beyond them. */
function along(pairs, value, slope) {
  const [first, last] = [pairs[0], pairs[pairs.length - 1]];
  if (value <= first[0]) return first[1] + (value - first[0]) * slope;
  const at = pairs.findIndex(([x]) => x >= value);
  if (at < 0) return last[1] + (value - last[0]) * slope;
  const [[x0, y0], [x1, y1]] = [pairs[at - 1], pairs[at]];
  return y0 + ((value - x0) / (x1 - x0 || 1)) * (y1 - y0);
}

const minute = (x) => along(knots(), x, 1 / MINUTE);
const place = (when) => along(knots().map(([x, at]) => [at, x]), when, MINUTE);

function told(when, form) {
  return new Intl.DateTimeFormat("en-GB", { timeZone: drawing().dataset.zone, hourCycle: "h23", ...form }).format(new Date(when * 60000));
}

const date = (when) => told(when, { year: "numeric", month: "2-digit", day: "2-digit" }).split("/").reverse().join("-");
const hour = (when) => told(when, { hour: "2-digit", minute: "2-digit" });
const spoken = (when, from) => (date(when) === date(from) ? hour(when) : `${told(when, { weekday: "short" })} ${hour(when)}`);

/** The step that is being moved: its bar, its job, from when to when. */
let moved = null;

function move(bar, to) {
  const from = Number(bar.dataset.begin);
  moved = { bar, job: bar.dataset.job, from, to: from + Math.round((to - from) / GRID) * GRID };
  const along = place(moved.to) - place(from);
  for (const one of bars(moved.job)) {
    one.classList.add("held");
    one.style.transform = `translateX(${along}px)`;
  }
  bar.setAttribute("aria-valuenow", moved.to);
  bar.setAttribute("aria-valuetext", `${spoken(moved.to, from)} instead of ${spoken(from, moved.to)}`);
  label(bar, along);
}

/** The hour at which a moved bar would begin, above it. */
function label(bar, along) {
  const svg = drawing();
  let words = svg.querySelector("text.when");
  if (!words) {
    words = document.createElementNS(svg.namespaceURI, "text");
    words.setAttribute("class", "when");
    svg.append(words);
  }
  const box = bar.getBBox();
  words.setAttribute("x", box.x + along);
  words.setAttribute("y", box.y - 3);
  words.textContent = spoken(moved.to, moved.from);
}

function release() {
  if (!moved) return;
  for (const one of bars(moved.job)) {
    one.classList.remove("held");
    one.style.transform = "";
  }
  drawing()?.querySelector("text.when")?.remove();
  valued(moved.bar);
  moved = null;
}

/** Fixes the moved step where it is. */
async function keep() {
  const { bar, job, from, to } = moved;
  const form = document.getElementById(`fix-${job}`);
  if (!form || to === from) return release();
  form.elements.begins.value = "at";
  form.elements.when.value = `${date(to)}T${hour(to)}`;
  const name = bar.dataset.name;
  if (!(await anew(form.action, new FormData(form), bar))) return release();
  const begins = Number(bars(job)[0]?.dataset.begin);
  say(begins === to ? `${name}: fixed at ${spoken(to, from)}. ${others(job)}` : `${name}: not possible at ${spoken(to, from)}, it begins at ${spoken(begins, from)}. ${others(job)}`);
}

let before = new Map();
const begins = () => new Map([...document.querySelectorAll(".day-chart a[id]")].map((bar) => [bar.dataset.job, bar.dataset.begin]));

/** What else has moved, marked and told. */
function others(own) {
  const now = begins();
  const elsewhere = [...now].filter(([job, begin]) => job !== own && before.has(job) && before.get(job) !== begin).map(([job]) => job);
  elsewhere.flatMap(bars).forEach((bar) => bar.classList.add("moved"));
  const count = elsewhere.length;
  const rest = count === 0 ? "Nothing else moves" : count === 1 ? "One other step moves" : `${count} other steps move`;
  return `${rest}; ${document.querySelector("#served")?.textContent ?? ""}.`;
}

/** Asks for the day anew and shows it in the place of the one before; the address goes along. */
async function anew(address, form, control) {
  const asked = form ? `${address}?${new URLSearchParams(form)}` : address;
  document.querySelector("main").setAttribute("aria-busy", "true");
  say("Planning anew …");
  const answer = await fetch(asked).catch(() => null);
  document.querySelector("main").removeAttribute("aria-busy");
  if (!answer) {
    say("The workbench does not answer: is it still open?");
    return false;
  }
  const text = await answer.text();
  if (!answer.ok) {
    refuse(text, control);
    return false;
  }
  furthest = depth() + 1;
  history.pushState({ depth: furthest }, "", answer.url);
  show(text);
  return true;
}

function show(text) {
  shown = here();
  before = begins();
  const job = document.activeElement?.closest?.(".day-chart a[id]")?.dataset.job;
  release();
  exchange(new DOMParser().parseFromString(text, "text/html").querySelector("main").outerHTML, null);
  document.querySelectorAll("form[data-anew]").forEach((form) => form.reset());
  prepare();
  if (job) document.getElementById(`bar-${job}`)?.focus();
}

/** A bar as a slider along the hours; a link cannot be one, so that it leads by hand. */
function valued(bar) {
  bar.dataset.leads = bar.getAttribute("href") ?? bar.dataset.leads;
  bar.setAttribute("tabindex", "0");
  bar.removeAttribute("href");
  const [first, last] = [knots()[0][1], knots().at(-1)[1]];
  const begin = Number(bar.dataset.begin);
  const all = { role: "slider", "aria-label": bar.dataset.name, "aria-describedby": "moving", "aria-valuemin": Math.min(first, begin), "aria-valuemax": Math.max(last, begin), "aria-valuenow": begin, "aria-valuetext": hour(begin) };
  for (const [name, value] of Object.entries(all)) bar.setAttribute(name, value);
}

/** What only a script can do is offered only where there is one. */
function prepare() {
  document.querySelectorAll('.day button[data-way="back"]').forEach((button) => (button.hidden = depth() === 0));
  document.querySelectorAll('.day button[data-way="forth"]').forEach((button) => (button.hidden = depth() >= furthest));
  if (!drawing()) return;
  document.querySelector("#moving")?.removeAttribute("hidden");
  document.querySelectorAll(".day-chart a[id][data-moves]").forEach(valued);
}

let drag = null;
let after = -Infinity;
const across = (event) => {
  const grid = drawing().getScreenCTM();
  return (event.clientX - grid.e) / grid.a;
};

document.addEventListener("pointerdown", (event) => {
  const bar = event.target.closest?.(".day-chart a[data-moves]");
  if (!bar || !drawing() || event.button !== 0) return;
  drag = { bar, pointer: event.pointerId, from: event.clientX, grip: across(event) - place(Number(bar.dataset.begin)), goes: false };
});
document.addEventListener("pointermove", (event) => {
  if (event.pointerId !== drag?.pointer) return;
  if (!drag.goes && Math.abs(event.clientX - drag.from) < STILL) return;
  if (!drag.goes) {
    drag.goes = true;
    drag.bar.setPointerCapture(event.pointerId);
  }
  const figure = drag.bar.closest("figure");
  const { left, right } = figure.getBoundingClientRect();
  if (event.clientX > right - 24) figure.scrollLeft += 12;
  else if (event.clientX < left + 24) figure.scrollLeft -= 12;
  move(drag.bar, minute(across(event) - drag.grip));
});
document.addEventListener("pointerup", (event) => {
  if (event.pointerId !== drag?.pointer) return;
  const { goes, bar } = drag;
  drag = null;
  if (!goes) return;
  // A click that comes of it is the end of the drag, and leads nowhere.
  after = event.timeStamp;
  keep();
});
document.addEventListener("pointercancel", () => {
  drag = null;
  release();
});
// A drawing that can be scrolled sideways stays where it is while a step is dragged in it.
document.addEventListener("touchmove", (event) => drag?.goes && event.preventDefault(), { passive: false });
document.addEventListener("dragstart", (event) => {
  if (event.target.closest?.(".day-chart")) event.preventDefault();
});

const STEPS = { ArrowLeft: -GRID, ArrowDown: -GRID, ArrowRight: GRID, ArrowUp: GRID, PageDown: -LEAP, PageUp: LEAP };

document.addEventListener("keydown", (event) => {
  const bar = event.target.closest?.(".day-chart a[id][data-moves]");
  if (bar && drawing() && STEPS[event.key] && !event.ctrlKey && !event.metaKey && !event.altKey) {
    event.preventDefault();
    move(bar, (moved?.bar === bar ? moved.to : Number(bar.dataset.begin)) + STEPS[event.key]);
  } else if (event.key === "Enter" && (moved || bar?.dataset.leads)) {
    event.preventDefault();
    if (moved) keep();
    else leap(bar.dataset.leads);
  } else if (moved && event.key === "Escape") release();
  else if ((event.ctrlKey || event.metaKey) && !event.target.closest?.("input, textarea, select")) {
    const way = { z: event.shiftKey ? "forth" : "back", y: "forth" }[event.key.toLowerCase()];
    if (way) {
      event.preventDefault();
      step(way);
    }
  }
});
document.addEventListener("focusout", (event) => {
  if (moved && !drag && event.target === moved.bar) release();
});

function step(way) {
  if (way === "back" && depth() > 0) history.back();
  if (way === "forth" && depth() < furthest) history.forward();
}

document.addEventListener("click", (event) => {
  const button = event.target.closest?.(".day button[data-way]");
  const link = event.target.closest?.("a[data-anew]");
  const bar = event.target.closest?.(".day-chart a");
  if (bar && event.timeStamp - after < 100) event.preventDefault();
  else if (bar?.dataset.leads) leap(bar.dataset.leads);
  if (button) step(button.dataset.way);
  else if (link && !event.ctrlKey && !event.metaKey && !event.shiftKey) {
    event.preventDefault();
    anew(link.href, null, link).then((is) => is && say(others()));
  }
});
document.addEventListener("submit", (event) => {
  const form = event.target.closest("form[data-anew]");
  if (!form) return;
  event.preventDefault();
  anew(form.action, new FormData(form, event.submitter), event.submitter ?? form).then((is) => is && say(others()));
});
addEventListener("popstate", async () => {
  // A leap within the page is no other day, and what is being typed stays.
  if (here() === shown) return;
  const answer = await fetch(location.href).catch(() => null);
  if (!answer) return;
  show(await answer.text());
  say(`As it was. ${others()}`);
});
prepare();
