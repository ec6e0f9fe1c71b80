// Figures as the program prints them: rounded, grouped, with the space and symbol of the SI brochure.

import { notation, say } from './words.js';

export const NB = '\u00a0';

// A number to so many decimals; a half goes to the even neighbour, as the program rounds.
export function fixed(value, decimals) {
  const text = value.toFixed(decimals);
  const exact = Math.abs(value).toFixed(Math.min(100, decimals + 60));
  const rest = exact.slice(exact.indexOf('.') + 1 + decimals);
  if (!/^50*$/.test(rest)) return text;
  const down = exact.slice(0, exact.indexOf('.') + (decimals > 0 ? 1 + decimals : 0));
  const isEven = Number(down[down.length - 1]) % 2 === 0;
  const step = 1 / 10 ** decimals;
  const away = (Number(down) + (isEven ? 0 : step)).toFixed(decimals);
  return (value < 0 ? '-' : '') + away;
}

export function number(value, decimals) {
  let text = fixed(value, decimals);
  if (text.includes('.')) text = text.replace(/0+$/, '').replace(/\.$/, '');
  if (text === '-0') text = '0';
  const sign = text.startsWith('-') ? '\u2212' : '';
  const [whole, part] = text.replace('-', '').split('.');
  const { point, group, from } = notation();
  const grouped = whole.length >= from ? whole.replace(/\B(?=(\d{3})+$)/g, group) : whole;
  return sign + grouped + (part === undefined ? '' : point + part);
}

const decimalsFor = (value) => {
  const size = Math.abs(value);
  return size < 0.1 ? 3 : size < 1 ? 2 : size < 10 ? 1 : 0;
};

export const bareGrams = (grams) => number(grams, decimalsFor(grams));
export const mass = (grams) => bareGrams(grams) + NB + 'g';
export const largeMass = (grams) => (Math.abs(grams) < 10000 ? mass(grams) : number(grams / 1000, 2) + NB + 'kg');
export const barePercent = (percent) => number(percent, Math.abs(percent) < 1 ? 2 : 1);

const OUNCE = 28.349523125;

// Ounces, or pounds and ounces from a pound on.
export function ounces(grams) {
  const all = grams / OUNCE;
  if (all < 15.95) return number(all, all < 1 ? 2 : 1) + NB + 'oz';
  const tenths = Math.round(all * 10);
  const [pounds, rest] = [Math.floor(tenths / 160), (tenths % 160) / 10];
  return number(pounds, 0) + NB + 'lb' + (rest === 0 ? '' : ` ${number(rest, 1)}${NB}oz`);
}

const FRACTIONS = [[0.125, '⅛'], [0.25, '¼'], [1 / 3, '⅓'], [0.5, '½'], [2 / 3, '⅔'], [0.75, '¾'], [0.875, '⅞']];

export function count(pieces) {
  const whole = Math.floor(pieces);
  const found = FRACTIONS.find(([part]) => Math.abs(pieces - whole - part) < 1e-6);
  if (!found) return number(pieces, 2);
  return (whole > 0 ? number(whole, 0) : '') + found[1];
}

const range = (from, to, told, symbol) => {
  const [a, b] = [told(from), told(to)];
  return (a === b ? a : `${a}–\u2060${b}`) + NB + symbol;
};

// Away from nought at a half, as the program rounds whole degrees and steps.
export const rounded = (value) => Math.sign(value) * Math.round(Math.abs(value));

export const celsius = (from, to) => range(from, to, (t) => number(t, 1), '°C');

export function fahrenheit(from, to) {
  const told = (t) => {
    const degrees = t * 1.8 + 32;
    return number(degrees > 250 ? rounded(degrees / 5) * 5 : rounded(degrees), 0);
  };
  return range(from, to, told, '°F');
}

// A time in seconds, in whole units: "45 s", "1 h 30 min".
function span(value) {
  let seconds = rounded(value);
  if (seconds < 60) return number(value, 0) + NB + 's';
  const parts = [];
  for (const [size, symbol] of [[86400, 'd'], [3600, 'h'], [60, 'min'], [1, 's']]) {
    if (size === 86400 && seconds < 48 * 3600) continue;
    if (seconds >= size) {
      parts.push(number(Math.floor(seconds / size), 0) + NB + symbol);
      seconds %= size;
    }
  }
  return parts.join(' ');
}

// A range of times in seconds: "12–18 h", "35 min", "1 h 10 min to 1 h 45 min".
export function time(from, to) {
  if (from === to) return span(from);
  for (const [size, symbol] of [[86400, 'd'], [3600, 'h'], [60, 'min'], [1, 's']]) {
    const isEven = (seconds) => ((seconds / size) * 2) % 1 === 0;
    const suits = size === 86400 ? to >= 3 * size : size < 3600 ? to < 180 * size : true;
    if ((from >= size || from === 0) && to >= size && isEven(from) && isEven(to) && suits) {
      return range(from, to, (t) => number(t / size, 1), symbol);
    }
  }
  return `${span(from)} ${say('figure_to')} ${span(to)}`;
}

// As it is worth telling: to the minute below an hour, to five below three, to half an hour below a day.
export function roundedTime(from, to) {
  const hours = to / 3600;
  const step = 60 * (hours < 1 ? 1 : hours < 3 ? 5 : hours < 24 ? 30 : 60);
  return [from, to].map((seconds) => rounded(seconds / step) * step);
}
