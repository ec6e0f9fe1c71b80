// The words of the page's language, which the page carries: the scripts have none of their own.

let words = {};
let plurals = null;

// Takes up the words of a page.
export function speak(carried) {
  words = carried;
  plurals = new Intl.PluralRules(carried.language);
}

// A message with its figures in place; where it has several plurals, the one for `count`.
export function say(name, figures = {}) {
  const message = words.messages[name];
  const text = typeof message === 'string' ? message : message[plurals.select(figures.count)] ?? message.other;
  return text.replace(/\{(\w+)\}/g, (_, figure) => figures[figure]);
}

// How the language writes numbers: what parts decimals and groups of three digits, and from how many digits on.
export const notation = () => words.notation;
