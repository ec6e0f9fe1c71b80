// A trial logged at the bench: a tap notes a figure, a timer tells how long; what cannot be sent waits in the browser.
import { exchange, say } from "./parts.js";
import { drop, keep, number, send, waiting, words } from "./queue.js";

const main = document.querySelector("main[data-trial]");
const trial = main.dataset.trial;
const here = `/trial/${encodeURIComponent(trial)}`;

/** The output beside the field of a figure. */
const beside = (called) => [...main.querySelectorAll("form")].find((form) => (form.dataset.figure ?? form.className) === called)?.querySelector("output");

async function state() {
  const all = (await waiting()).filter((entry) => entry.trial === trial);
  const open = all.filter((entry) => !entry.refused);
  const place = document.querySelector("#waiting");
  const refusals = all.length - open.length;
  place.textContent = refusals ? `${refusals} ${refusals === 1 ? "entry was" : "entries were"} refused; why stands below.` : open.length ? `${open.length} ${open.length === 1 ? "entry waits" : "entries wait"} for the network; nothing is lost.` : "Everything is noted.";
  place.dataset.open = open.length;
  for (const entry of all.filter((entry) => entry.refused)) refused(entry);
}

/** An entry that cannot be taken is shown until it is put right or let go. */
function refused(entry) {
  if (document.getElementById(`refused-${entry.order}`)) return;
  const box = document.createElement("div");
  box.id = `refused-${entry.order}`;
  box.className = "refused";
  box.setAttribute("role", "alert");
  box.append(`${entry.told}: ${entry.refused} `);
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Let it go";
  button.onclick = async () => {
    await drop(entry);
    box.remove();
    state();
  };
  box.append(button);
  document.querySelector("#waiting").after(box);
}

async function took(entry, ok, text) {
  if (entry.trial !== trial) return;
  const output = beside(entry.called);
  if (ok) {
    if (output) output.textContent = `✓ ${entry.told}`;
    exchange(text);
  } else {
    if (output) output.textContent = `refused: ${words(text)}`;
    // What was typed comes back, so that it need not be typed anew.
    const field = [...main.querySelectorAll("form")].find((form) => form.dataset.figure === entry.called)?.elements.amount;
    if (field && !field.value && entry.form?.amount) field.value = entry.form.amount;
  }
  await state();
}

const sync = () => send(took).then(state);

async function noted(entry) {
  try {
    await keep({ trial, ...entry });
  } catch {
    return say("This browser cannot keep entries: write it down, and load the page again.");
  }
  const output = beside(entry.called);
  if (output) output.textContent = `… ${entry.told}`;
  await state();
  sync();
}

// Timers run by the clock, so that a phone that sleeps loses nothing.
const key = (step) => `timer ${trial} ${step}`;
const began = (step) => Number(localStorage.getItem(key(step))) || null;
const minutes = (step) => (began(step) ? (Date.now() - began(step)) / 60000 : null);

function written(minutes) {
  if (minutes < 2) return `${Math.round(minutes * 60)} s`;
  const whole = Math.round(minutes);
  return whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}

function shown(box) {
  const gone = minutes(box.dataset.step);
  const clock = box.querySelector(".clock");
  if (!clock) return;
  box.querySelector(".start").disabled = gone !== null;
  box.querySelector(".stop").disabled = gone === null;
  for (const button of box.querySelectorAll("button.now")) button.disabled = gone === null;
  const seconds = Math.floor((gone ?? 0) * 60);
  clock.textContent = gone === null ? "" : [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60].map((part) => String(part).padStart(2, "0")).join(":");
}

const boxes = [...main.querySelectorAll("[data-step]")];
for (const hidden of main.querySelectorAll(".timer, form.photograph, button.now")) hidden.hidden = false;
const tick = () => boxes.forEach(shown);
setInterval(tick, 1000);
tick();

/** How long after its step began a reading was taken: as typed, or as the timer says. */
function after(form) {
  const box = form.closest("[data-step]");
  const typed = box.querySelector("[data-after]").value.trim();
  if (typed) return typed;
  const gone = minutes(box.dataset.step);
  return gone === null ? null : String(Math.round(gone));
}

function figure(form, submitter, amount = form.elements.amount.value.trim()) {
  const said = { number: number(), figure: form.dataset.figure, unit: form.elements.unit.value };
  if (submitter?.name === "as") said.as = submitter.value;
  else said.amount = amount;
  if (!said.as && !said.amount) return form.elements.amount.focus();
  const unit = /^[\d.,]+$/.test(said.amount ?? "") && said.unit ? ` ${said.unit}` : "";
  let told = said.as ?? said.amount + unit;
  if (form.hasAttribute("data-reading")) {
    said.after = after(form);
    if (said.after === null) return say("Start the timer, or say how many minutes after it began this was read.");
    told += ` after ${said.after} min`;
  }
  noted({ called: form.dataset.figure, told, address: `${here}/note`, form: said });
  form.elements.amount.value = "";
}

async function photograph(form) {
  const file = form.elements.file.files[0];
  if (!file) return form.elements.file.focus();
  const asked = new URLSearchParams({ number: number(), shows: form.elements.shows.value, across: form.elements.across.value });
  // The bytes themselves are kept: a file of the camera may be gone by the time the network is back.
  const blob = new Blob([await file.arrayBuffer()], { type: file.type });
  await noted({ called: "photograph", told: `${form.elements.shows.value || "a photograph"}`, address: `${here}/photograph?${asked}`, blob });
  form.elements.file.value = "";
}

main.addEventListener("submit", (event) => {
  const form = event.target;
  // Every other form, such as that which undoes, is sent by the browser itself.
  if (!form.matches(".figure, .photograph, .words")) return;
  event.preventDefault();
  if (form.matches(".figure")) figure(form, event.submitter);
  else if (form.matches(".photograph")) photograph(form);
  else if (form.matches(".words") && form.elements.words.value.trim()) {
    const text = form.elements.words.value;
    noted({ called: "words", told: "a note", address: `${here}/note`, form: { number: number(), words: text } });
    form.elements.words.value = "";
  }
});

main.addEventListener("click", (event) => {
  const button = event.target.closest("button");
  const box = button?.closest("[data-step]");
  if (!box) return;
  const step = box.dataset.step;
  if (button.matches(".start")) localStorage.setItem(key(step), String(Date.now()));
  else if (button.matches(".stop")) {
    const told = written(minutes(step));
    localStorage.removeItem(key(step));
    const called = `${step}/${box.dataset.timed}`;
    noted({ called, told, address: `${here}/note`, form: { number: number(), figure: called, amount: told } });
  } else if (button.matches(".now")) figure(button.closest("form"), null, written(minutes(step)));
  tick();
});

addEventListener("online", sync);
addEventListener("visibilitychange", () => document.visibilityState === "visible" && sync());
setInterval(sync, 15000);
state().then(sync);
