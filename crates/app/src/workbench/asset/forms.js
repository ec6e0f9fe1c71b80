// Forms of a book's files: sent without leaving the page, so that what is typed stays where something is refused; and a
// list of many rows that is sieved while one types. It decides nothing.
import { forgive, refuse } from "./parts.js";
import { send } from "./sending.js";

/** Shows a refusal at the field that it is about, with every fold around it open. */
function tell(text, form, button) {
  const named = new DOMParser().parseFromString(text, "text/html").querySelector("#refusal")?.dataset.field;
  const control = (named && form.elements.namedItem(named)) || null;
  form.querySelectorAll("[aria-invalid]").forEach((one) => one.removeAttribute("aria-invalid"));
  refuse(text, control ?? form);
  if (!control) form.removeAttribute("aria-invalid");
  for (let fold = control?.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
  const told = document.querySelector(".refused");
  (control?.closest("label") ?? button?.closest("p") ?? form.lastElementChild).after(told);
  told.tabIndex = -1;
  told.focus();
  told.scrollIntoView({ block: "center" });
}

document.addEventListener("submit", async (event) => {
  const form = event.target.closest("form[data-written]");
  if (!form) return;
  event.preventDefault();
  const answer = await send(form.getAttribute("action"), new URLSearchParams(new FormData(form)));
  if (!answer) return;
  forgive();
  if (!answer.ok) tell(answer.text, form, event.submitter);
});

for (const sieve of document.querySelectorAll("[data-sieve]")) {
  const rows = [...sieve.closest(".part").querySelectorAll(":scope > details.row")];
  sieve.closest("label").hidden = false;
  // What is looked for is no part of the form, and Enter there writes nothing.
  sieve.addEventListener("keydown", (event) => event.key === "Enter" && event.preventDefault());
  sieve.addEventListener("input", () => {
    const words = sieve.value.toLowerCase().split(/\s+/u).filter(Boolean);
    for (const row of rows) row.hidden = !words.every((word) => row.querySelector("summary").textContent.toLowerCase().includes(word));
  });
}
