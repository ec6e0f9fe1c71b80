// How many have answered, asked again every other second; never what they said.
const count = document.querySelector("[data-count]");

async function again() {
  try {
    const answer = await fetch(count.dataset.count);
    if (!answer.ok) return;
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const fresh = page.querySelector("#count");
    if (fresh && fresh.textContent !== count.textContent) count.replaceChildren(...fresh.childNodes);
  } catch {
    // The workbench is away for a moment.
  }
}

if (count) setInterval(again, 2000);
