// Parts of a page exchanged for new ones of the same name, so that what is being typed in, looked at or opened stays.

/** What each part on the page was last made of, as text: what says the same again need not be read. */
const shown = new WeakMap();

/** Puts each part of an answer where the part of its name stands; `typing` is the control under the hand. */
export function exchange(text, typing = document.activeElement) {
  for (const said of text.split(PARTED)) {
    const alone = document.getElementById(said.match(/^<[^>]* id="([^"]+)"/)?.[1]);
    if (alone && shown.get(alone) === said) written(alone, typing);
    else {
      const template = document.createElement("template");
      template.innerHTML = said;
      const parts = [...template.content.children];
      for (const part of parts) {
        const old = part.id && document.getElementById(part.id);
        if (!old) continue;
        for (let around = old.parentElement; around; around = around.parentElement) shown.delete(around);
        become(old, part, typing);
        written(old, typing);
      }
      if (alone?.isConnected && parts.length === 1) shown.set(alone, said);
    }
  }
}

/** What parts an answer in parts. */
const PARTED = "\f";

/** Figures that nobody types show what is written. */
function written(part, typing) {
  for (const input of part.querySelectorAll("input[data-gesture], textarea[data-gesture]")) {
    if (input !== typing && input.value !== input.defaultValue) input.value = input.defaultValue;
  }
}

/** Takes away what was said of something that was refused. */
export function forgive() {
  document.querySelectorAll(".refused").forEach((one) => one.remove());
}

/** Makes an element what another one is, keeping its own children where they have the same name or the same place. */
function become(old, fresh, typing) {
  // What is still worked out follows; until then the last of it stays.
  if (old.isEqualNode(fresh) || fresh.dataset?.follows === "") return;
  if (old.nodeType !== fresh.nodeType || old.nodeName !== fresh.nodeName) return old.replaceWith(fresh);
  if (old.nodeType !== Node.ELEMENT_NODE) {
    if (old.nodeValue !== fresh.nodeValue) old.nodeValue = fresh.nodeValue;
    return;
  }
  shown.delete(old);
  attributes(old, fresh, old === typing);
  children(old, fresh, typing);
}

function attributes(old, fresh, isTyping) {
  // What a person has opened, ticked or is typing is theirs; Escape finds the figure that was written.
  const own = (name) => (name === "open" && old.nodeName === "DETAILS") || (name === "checked" && old.nodeName === "INPUT") || (name === "value" && isTyping);
  for (const { name } of [...old.attributes]) if (!fresh.hasAttribute(name) && !own(name)) old.removeAttribute(name);
  for (const { name, value } of [...fresh.attributes]) if (old.getAttribute(name) !== value && !own(name)) old.setAttribute(name, value);
}

function children(old, fresh, typing) {
  const named = new Map([...old.children].filter((child) => child.id).map((child) => [child.id, child]));
  let at = old.firstChild;
  for (const wanted of [...fresh.childNodes]) {
    const same = wanted.id ? named.get(wanted.id) : at && !at.id && at.nodeName === wanted.nodeName ? at : null;
    if (!same) {
      old.insertBefore(wanted, at);
      continue;
    }
    if (same === at) at = at.nextSibling;
    else if ("moveBefore" in old) old.moveBefore(same, at);
    else old.insertBefore(same, at);
    become(same, wanted, typing);
  }
  while (at) {
    const next = at.nextSibling;
    at.remove();
    at = next;
  }
}

/** Says why something was refused, beside the control that asked for it. */
export function refuse(text, control) {
  const page = new DOMParser().parseFromString(text, "text/html");
  const words = page.querySelector("#refusal") ?? page.body;
  forgive();
  const told = document.createElement("div");
  told.className = "refused";
  told.setAttribute("role", "alert");
  told.append(...words.childNodes);
  const row = control?.closest?.("tr, li, form, section") ?? document.querySelector("main");
  control?.setAttribute?.("aria-invalid", "true");
  if (row.nodeName === "TR") row.closest("div.scroll").after(told);
  else row.append(told);
}

/** Says in passing what happened. */
export function say(words) {
  const place = document.querySelector("#happened");
  const told = document.createElement("p");
  told.textContent = words;
  place.append(told);
  setTimeout(() => told.remove(), 8000);
}
