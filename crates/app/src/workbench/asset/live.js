// What others and other programs do meanwhile, told as it happens.

/** Hears what happens in the book until the page is left. */
export function listen(hear) {
  const events = new EventSource("/live");
  events.onmessage = ({ data }) => {
    const happened = JSON.parse(data);
    if (happened.farewell) events.close();
    else hear(happened);
  };
  addEventListener("pagehide", () => events.close());
}
