// What is sent to the workbench, with the token that shows that a page of its own asks.
import { say } from "./parts.js";

const token = document.querySelector("meta[name=token]").content;

/**
 * Sends a form's content and gives the answer's text; nothing where it was given up or the workbench is away. Of an answer
 * in two turns `early` is given the first as soon as it is there.
 */
export async function send(address, body, signal, early) {
  try {
    const answer = await fetch(address, { method: "POST", body, signal, headers: { "x-token": token, "x-parts": "1" } });
    // What was undone may have taken the page's own file with it.
    if (answer.redirected) location.assign(answer.url);
    return { ok: answer.ok, status: answer.status, text: early && answer.ok ? await second(answer, early) : await answer.text() };
  } catch (error) {
    if (error.name !== "AbortError") say("The workbench does not answer: is it still open?");
    return null;
  }
}

/** What stands between the two turns of an answer. */
const TURN = "\f\f";

/** Reads an answer in two turns: the first is given away, the second returned. */
async function second(answer, early) {
  const [reader, decoder] = [answer.body.getReader(), new TextDecoder()];
  let [text, waits] = ["", true];
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text;
    text += decoder.decode(value, { stream: true });
    const turn = waits ? text.indexOf(TURN) : -1;
    if (turn < 0) continue;
    waits = false;
    early(text.slice(0, turn));
    text = text.slice(turn + TURN.length);
  }
}
