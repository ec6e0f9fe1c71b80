// Tells every figure of the page anew.

import { bareGrams, barePercent, celsius, count, fahrenheit, mass, number, rounded, roundedTime, time } from './figures.js';
import { batch, batches, batchesInWords, beside, called, eggs, grams, inPieces, makes, measured, moved } from './amounts.js';
import { foreseen, liquids } from './rooms.js';
import { countdown, hours } from './course.js';
import { say } from './words.js';

const published = new WeakMap();

// What an element said when it was published.
function own(element) {
  if (!published.has(element)) published.set(element, element.textContent);
  return published.get(element);
}

// So much is as in the program: a time as a person would tell it.
export const about = (minutes) => time(...roundedTime(minutes * 60, minutes * 60));
const rangeOf = ([from, to]) => time(...roundedTime(from * 60, to * 60));

export function degrees(data, settings, from, to = from) {
  if (settings.degrees === 'f') return fahrenheit(from, to);
  return settings.degrees === '' && data.own.american ? `${celsius(from, to)} (${fahrenheit(from, to)})` : celsius(from, to);
}

// All that follows from the settings: what every part of the page tells from.
export function workedOut(data, settings) {
  const way = data.ways.find((one) => one.key === settings.way) ?? data.ways[0];
  const size = batch(data.size, way, settings);
  const seen = foreseen(way.rooms, settings.room);
  return { data, settings, way, size, seen, liquids: liquids(way.rooms, settings.room), steps: countdown(way, size, seen) };
}

const weightOf = (now, element) => grams(now.way, now.settings, now.size.times, {
  published: Number(element.dataset.g ?? element.dataset.beside),
  of: Number(element.dataset.of),
  key: element.dataset.k ?? '',
});

// A rule for each kind of figure: which elements, and what they say now.
const RULES = {
  '[data-g]': (now, element) => {
    const weight = weightOf(now, element);
    if (element.hasAttribute('data-bare')) return bareGrams(weight);
    return measured(now.data, now.way.lines[element.dataset.k], weight, now.settings);
  },
  '[data-beside]': (now, element) => {
    const { data, settings, size, way } = now;
    const pieces = Number(element.dataset.count ?? 0) * size.times;
    return beside(data, way.lines[element.dataset.k], weightOf(now, element), pieces, settings, size.times);
  },
  '[data-n]': ({ data, settings, size, way }, element) => {
    const line = way.lines[element.dataset.k];
    const pieces = Number(element.dataset.n) * size.times;
    // Nobody serves a quarter of a guest.
    if (!element.dataset.k) return count(pieces < 5 || size.times === 1 ? pieces : Math.round(pieces));
    const isEgg = line?.e !== undefined && settings.eggs !== '';
    const weigh = isEgg ? data.eggs.weigh : null;
    const found = isEgg ? eggs(pieces * weigh[line.size][line.e], weigh[settings.eggs][line.e]) : pieces;
    if (found === null) {
      const weight = mass(pieces * weigh[line.size][line.e]);
      return element.hasAttribute('data-called') ? `${weight}\u00a0${line.called[0]}` : weight;
    }
    return element.hasAttribute('data-called') ? called(found, line.called) : count(found);
  },
  '[data-p]': ({ settings, way }, element) => {
    const percent = Number(element.dataset.p) + moved(way, settings.protein, element.dataset.k);
    return element.dataset.to ? number(percent, Number(element.dataset.to)) : barePercent(percent);
  },
  '[data-each]': ({ size }) => mass(size.each),
  '[data-pieces]': ({ data, size }) => inPieces(data, size.pieces),
  '[data-makes]': (now) => makes(now),
  '[data-done]': ({ data, size }) => mass(rounded(size.each * data.size.left + (data.size.after * size.each) / data.size.each)),
  '[data-batches]': ({ size, data }, element) => {
    const atOnce = Number(element.dataset.batches);
    return size.pieces === null ? own(element) : batchesInWords(batches(size.pieces, atOnce), atOnce);
  },
  '[data-c]': ({ data, settings, seen }, element) => {
    const [from, to] = element.dataset.c.split(' ').map(Number);
    const step = element.hasAttribute('data-stands') ? seen.get(element.closest('[data-step]')?.dataset.step) : undefined;
    if (step) return degrees(data, settings, step.place ?? settings.room);
    return settings.degrees === '' ? own(element) : degrees(data, settings, from, to ?? from);
  },
  '[data-lasts]': ({ seen }, element) => {
    const step = seen.get(element.closest('[data-step]')?.dataset.step);
    return step && !step.never ? rangeOf(step.tell) : own(element);
  },
  '[data-spoons]': ({ data, settings }, element) => {
    const { called: name, cup, tbsp, tsp } = data.spoons[settings.spoons];
    if (settings.spoons === data.own.household && settings.amounts === '') return own(element);
    const first = settings.amounts === 'spoons' ? say('spoons_first') : say('weights_first');
    const [cups, tablespoons, teaspoons] = [cup, tbsp, tsp].map((one) => number(one, 1));
    return say('spoons_and_cups_of', { first, whose: name, cup: cups, tablespoon: tablespoons, teaspoon: teaspoons });
  },
};

// Sets what has changed; the first time it also notes what was published.
export function tell(now, root) {
  for (const [which, says] of Object.entries(RULES)) {
    for (const element of root.querySelectorAll(which)) {
      own(element);
      const text = says(now, element);
      if (element.textContent !== text) element.textContent = text;
    }
  }
  tellHours(now, root);
  tellForeseen(now, root);
}

function tellHours({ way, size, seen, steps }, root) {
  const all = hours(way, size);
  if (seen.size > 0) {
    const long = -Math.min(0, ...steps.map((step) => step.begins));
    all.total = [long, long];
  }
  for (const element of root.querySelectorAll('[data-hours]')) {
    const ends = roundedTime(all[element.dataset.hours][0] * 60, all[element.dataset.hours][1] * 60);
    const text = time(...ends);
    if (own(element) === text && element.textContent === text) continue;
    element.textContent = text;
    element.dateTime = `PT${Math.round(ends[1] / 60)}M`;
  }
}

// The sentence below a step, and above a stage whose liquid has to be warmed.
function tellForeseen(now, root) {
  for (const old of root.querySelectorAll('.foreseen')) old.remove();
  for (const [key, step] of now.seen) {
    const item = root.querySelector(`[data-step="${key}"]`);
    if (item) item.append(sentence(inWords(now, step)));
  }
  for (const one of now.liquids) {
    const stage = root.querySelector(`[data-step^="${one.stage}."]`)?.closest('.stage');
    stage?.querySelector('h3').after(sentence(liquidInWords(now, one)));
  }
}

function sentence(words) {
  const paragraph = document.createElement('p');
  paragraph.className = 'foreseen';
  paragraph.textContent = words;
  return paragraph;
}

function inWords({ data, settings }, step) {
  const at = degrees(data, settings, step.place ?? settings.room);
  const place = step.place === null ? say('foreseen_at', { degrees: at }) : say('foreseen_kept_at', { degrees: at });
  if (step.never) return say('foreseen_never', { place });
  const says = step.stated ? say('method_says', { time: time(step.stated[0] * 60, step.stated[1] * 60) }) : '';
  if (step.ripens) return say('foreseen_ripe', { place, from: about(step.from), to: about(step.to), says });
  const [from, to] = step.tell.map(about);
  return say('foreseen_after', { place, after: about(step.from), from, to, says });
}

function liquidInWords({ data, settings }, { called: name, celsius: at }) {
  const room = degrees(data, settings, settings.room);
  if (at === null || at <= 1 || at >= 60) {
    return say('liquid_alone_cannot', { room, liquid: name });
  }
  const half = Math.round(at * 2) / 2;
  const hot = at > 50 ? ` ${say('liquid_too_hot')}` : '';
  return say('liquid_at', { room, liquid: name, degrees: degrees(data, settings, half), hot });
}

