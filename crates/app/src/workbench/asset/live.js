// What others and other programs do meanwhile, told as it happens.

/** Hears what happens in the book until the page is left, and shows who else is there. */
export function listen(hear) {
  const at = document.querySelector("main")?.dataset.formula ?? "";
  const events = new EventSource(`/live?at=${encodeURIComponent(at)}`);
  events.onmessage = ({ data }) => {
    const happened = JSON.parse(data);
    if (happened.farewell) events.close();
    else if (happened.here) show(happened.here);
    else hear(happened);
  };
  addEventListener("pagehide", () => events.close());
}

function show(others) {
  const place = document.querySelector("#also-here");
  if (!place) return;
  place.hidden = others.length === 0;
  place.textContent = others.length ? `Also here: ${others.join(", ")}` : "";
}
