// A taster's sheet: one screen a sample. Answers are kept on the telephone until they have arrived; sent again, each
// keeps its name, so that none is lost and none counts twice.
const main = document.querySelector("main[data-seat]");
const key = `taste ${main?.dataset.seat}`;
const memory = { queue: [], done: [] };

const recall = () => { try { Object.assign(memory, JSON.parse(localStorage.getItem(key) ?? "{}")); } catch { /* A browser that keeps nothing: the page itself does, as long as it is open. */ } };
const keep = () => { try { localStorage.setItem(key, JSON.stringify(memory)); } catch { /* as above */ } };

const screens = [...(main?.querySelectorAll("section[data-screen]") ?? [])];
const waiting = document.querySelector("#waiting");
const refused = document.querySelector("#refused");
let here = 0;
let clock = 0;

/** Letters that no other answer has. */
const fresh = () => [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, "0")).join("");

function show(at) {
  here = Math.max(0, Math.min(at, screens.length - 1));
  screens.forEach((screen, n) => { screen.hidden = n !== here; });
  const screen = screens[here];
  main.querySelector("[data-place]").textContent = screen.dataset.screen === "done" ? "" : ` · ${here + 1} of ${screens.length}`;
  clearInterval(clock);
  if (screen.dataset.wait) pause(screen);
  screen.querySelector("h1, h2")?.focus();
  scrollTo(0, 0);
  refused.textContent = "";
}

/** The way on opens when the pause is over. */
function pause(screen) {
  const button = screen.querySelector("[data-next]");
  const told = screen.querySelector("[data-clock]");
  const end = Date.now() + 1000 * Number(screen.dataset.wait);
  const tick = () => {
    const left = Math.ceil((end - Date.now()) / 1000);
    button.disabled = left > 0;
    told.textContent = left > 0 ? `${Math.floor(left / 60)}:${String(left % 60).padStart(2, "0")}` : "";
    if (left <= 0) clearInterval(clock);
  };
  clock = setInterval(tick, 250);
  tick();
}

function done(screen) {
  if (!memory.done.includes(screen.dataset.screen)) memory.done.push(screen.dataset.screen);
  keep();
}

/** The ranks of a form as its value; nothing where they are not all there or not all different. */
function ranks(form) {
  const given = [...form.querySelectorAll("select")].map((select) => [select.name.replace("rank-", ""), Number(select.value)]);
  if (given.some(([, rank]) => !rank)) return null;
  const groups = Map.groupBy ? [...Map.groupBy(given, ([, rank]) => rank)] : grouped(given);
  if (groups.length < given.length && !("ties" in form.dataset)) return null;
  return groups.sort(([a], [b]) => a - b).map(([, group]) => group.map(([code]) => code).join("=")).join(" ");
}

function grouped(given) {
  const groups = new Map();
  given.forEach((one) => groups.set(one[1], [...(groups.get(one[1]) ?? []), one]));
  return [...groups];
}

let chosen = null;

/** Keeps an answer on the telephone until it has arrived. */
function taken(form, value) {
  const body = form.dataset.answer ? { item: form.dataset.answer, value, client: fresh() } : {};
  memory.queue.push({ path: form.getAttribute("action"), body });
  // Before anything else is shown: nobody is to leave while something waits.
  keep();
  tell();
}

/** Sends what was chosen, once. */
function sendChosen() {
  if (!chosen) return;
  taken(chosen.form, chosen.value);
  done(chosen.form.closest("section"));
  done(screens[here]);
  chosen = null;
  show(here + 1);
  send();
}

function answer(form, button) {
  const screen = form.closest("section");
  const value = form.dataset.answer === "rank" ? ranks(form) : button?.value;
  if (form.dataset.answer && !value) {
    refused.textContent = "ties" in form.dataset ? "Give every sample a rank." : "Give every sample a rank of its own, even by a guess.";
    return;
  }
  form.querySelectorAll("button[name=value]").forEach((one) => one.setAttribute("aria-pressed", String(one === button)));
  if (form.dataset.answer === "chosen") {
    // A choice is shown once more before it is sent.
    chosen = { form, value };
    main.querySelector("[data-chosen]").textContent = value;
    show(here + 1);
    return;
  }
  taken(form, value);
  form.dataset.given = "";
  const open = [...screen.querySelectorAll("form")].some((one) => !("given" in one.dataset) && !one.querySelector("[aria-pressed=true]"));
  if (!open) { done(screen); show(here + 1); } else keep();
  send();
}

let sending = false;

/** Sends what waits, in its order; where the network is away it waits on. */
async function send() {
  if (sending) return;
  sending = true;
  while (memory.queue.length > 0) {
    const { path, body } = memory.queue[0];
    let arrived;
    try {
      arrived = await fetch(path, { method: "POST", headers: { "x-parts": "1" }, body: new URLSearchParams(body), keepalive: true });
    } catch {
      break;
    }
    if (arrived.status >= 500) break;
    memory.queue.shift();
    keep();
    if (!arrived.ok) {
      const page = new DOMParser().parseFromString(await arrived.text(), "text/html");
      refused.textContent = page.querySelector("#refusal")?.textContent ?? "That was not taken.";
    }
    tell();
  }
  sending = false;
  tell();
}

function tell() {
  const left = memory.queue.length;
  main.dataset.left = left;
  waiting.textContent = left === 0 ? "" : `${left} ${left === 1 ? "answer waits" : "answers wait"} for the network, kept on this telephone.`;
}

if (main) {
  recall();
  screens.forEach((screen) => screen.querySelector("h1, h2")?.setAttribute("tabindex", "-1"));
  main.addEventListener("submit", (event) => { event.preventDefault(); answer(event.target, event.submitter); });
  main.addEventListener("click", (event) => {
    if (event.target.closest("[data-send]")) return sendChosen();
    if (event.target.closest("[data-back]")) return show(here - 1);
    if (!event.target.closest("[data-next]")) return;
    done(screens[here]);
    show(here + 1);
  });
  addEventListener("online", send);
  setInterval(send, 3000);
  const open = screens.findIndex((screen) => !("done" in screen.dataset) && !memory.done.includes(screen.dataset.screen));
  // What was answered before anything else was kept is not tasted again.
  const answered = screens.findLastIndex((screen) => "done" in screen.dataset);
  show(open === -1 ? screens.length - 1 : Math.max(open, answered + 1));
  tell();
  send();
}
