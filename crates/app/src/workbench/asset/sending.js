// What is sent to the workbench, with the token that shows that a page of its own asks.
import { say } from "./parts.js";

const token = document.querySelector("meta[name=token]").content;

/** Sends a form's content and gives the answer's text; nothing where it was given up or the workbench is away. */
export async function send(address, body, signal) {
  try {
    const answer = await fetch(address, { method: "POST", body, signal, headers: { "x-token": token, "x-parts": "1" } });
    // What was undone may have taken the page's own file with it.
    if (answer.redirected) location.assign(answer.url);
    return { ok: answer.ok, status: answer.status, text: await answer.text() };
  } catch (error) {
    if (error.name !== "AbortError") say("The workbench does not answer: is it still open?");
    return null;
  }
}
