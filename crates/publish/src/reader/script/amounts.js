// The linear part: how large the batch is, what the protein of a flour changes, what that is in the measures chosen.

import { count, largeMass, mass, NB, number, ounces } from './figures.js';
import { spoons } from './spoons.js';
import { say } from './words.js';

// What a tin holds in millilitre, or nothing where a side is not said.
export function tinHolds(settings) {
  const { tin, long, wide, round, high, holds } = settings;
  const volume = tin === 'box' ? long * wide * high
    : tin === 'round' ? (Math.PI / 4) * round * round * high
    : tin === 'volume' ? holds : 0;
  return volume > 0 && Number.isFinite(volume) ? volume : 0;
}

// How large the batch is: times all, so many pieces, of such a weight.
export function batch(size, way, settings) {
  const own = { times: 1, pieces: size?.pieces ?? null, each: size?.each ?? null };
  if (!size) return own;
  const volume = settings.tin && size.tin ? tinHolds(settings) : 0;
  if (volume > 0) {
    const tins = settings.tins || 1;
    const raw = way.weighs[0] + moved(way, settings.protein, 'raw');
    const times = (volume * tins) / (size.tin[0] * size.tin[1]);
    if (size.pieces !== null && size.tin[1] === size.pieces) return { times, pieces: tins, each: (raw * times) / tins };
    return { times, pieces: size.pieces === null ? null : size.pieces * times, each: size.each };
  }
  if (size.pieces !== null && (settings.pieces || settings.each)) {
    const each = settings.each || size.each;
    const resized = size.each ? each / size.each : 1;
    const pieces = settings.pieces || size.pieces;
    return { times: (pieces / size.pieces) * resized, pieces, each };
  }
  const times = settings.times || 1;
  return { times, pieces: size.pieces === null ? null : size.pieces * times, each: size.each };
}

// By how much a figure under a key differs from what is published, before the batch is scaled.
export function moved(way, proteins, key) {
  let by = 0;
  for (const flour of way.flours) {
    const more = (proteins[flour.name] ?? flour.protein) - flour.protein;
    if (more !== 0) by += (flour.by[key] ?? 0) * more;
  }
  return by;
}

// A weight in gram: what is published, its share of what moved, times the batch.
export function grams(way, settings, times, { published, of, key }) {
  const share = of ? published / of : 1;
  return times * (published + share * moved(way, settings.protein, key));
}

// How many eggs a weight is, to the half where that is near; nothing where it is not.
export function eggs(weight, one) {
  const halves = Math.round((weight / one) * 2) / 2;
  return halves > 0 && Math.abs(halves * one - weight) < 0.1 * weight ? halves : null;
}

// One egg, white or yolk, and more of them.
const EGG_PARTS = [
  () => [say('egg_whole'), say('egg_wholes')],
  () => [say('egg_white'), say('egg_whites')],
  () => [say('egg_yolk'), say('egg_yolks')],
];

// "3 eggs, size M"; what is beaten and weighed where they do not come out whole.
export function eggsInWords(data, line, weight, settings) {
  const size = settings.eggs || line.size;
  const found = eggs(weight, data.eggs.weigh[size][line.e]);
  if (found === null) return null;
  return say('eggs_of_size', { eggs: `${count(found)} ${EGG_PARTS[line.e]()[found > 1 ? 1 : 0]}`, size });
}

export function wholeEggs(data, line, weight, settings) {
  const one = data.eggs.weigh[settings.eggs || line.size][line.e];
  const whole = Math.ceil(weight / one - 1e-9);
  const left = whole * one - weight;
  return left > 0.5 ? say('beat_eggs', { whole, weight: mass(weight), left: mass(left) }) : null;
}

// The measure by spoons or cups, or nothing where none is sensible.
export function spooned(line, weight, system) {
  if (!line?.d || (line.w && weight < 15)) return null;
  const volume = weight / line.d;
  return volume > system.cup * 12 ? null : spoons(volume, system);
}

// A weight as the reader measures: spoons where sensible, else by weight, in ounces where ounces are used.
export function measured(data, line, weight, settings) {
  // Eggs are counted beside their weight.
  if (settings.amounts !== 'spoons' || line?.e !== undefined) return mass(weight);
  const system = data.spoons[settings.spoons];
  return spooned(line, weight, system) ?? (system.american && weight >= 5 ? ounces(weight) : mass(weight));
}

// What stands in brackets beside an amount of the list: the other way to measure it.
export function beside(data, line, weight, pieces, settings, times) {
  const words = [];
  if (line?.e !== undefined) {
    const isOther = settings.eggs !== '' || times !== 1;
    words.push(eggsInWords(data, line, weight, settings), isOther ? wholeEggs(data, line, weight, settings) : null);
  } else if (pieces) {
    words.push(`${count(pieces)} ${pieces <= 1 ? say('piece') : say('pieces')}`);
  } else if (settings.amounts !== 'spoons') {
    words.push(spooned(line, weight, data.spoons[settings.spoons]));
  }
  const said = measured(data, line, weight, settings);
  if (said !== mass(weight)) words.unshift(mass(weight));
  const kept = words.filter((one) => one);
  return kept.length > 0 ? ` (${kept.join('; ')})` : '';
}

// What the head says: "12 muffins", or about how much.
export function makes({ data, way, settings, size: { times, pieces } }) {
  if (pieces !== null) return inPieces(data, pieces);
  const done = way.weighs[1] + moved(way, settings.protein, 'done');
  return `${say('about')} ${largeMass(Math.round((done * times) / 10) * 10)}`;
}

export function inPieces(data, pieces) {
  const [one, more] = data.size.piece;
  return count(pieces) + NB + (pieces === 1 ? one : more);
}

// So many of something that is called one thing or, if more, another.
export const called = (pieces, [one, more]) => count(pieces) + NB + (pieces > 1 ? more : one);

export const batches = (pieces, atOnce) => (pieces === null ? 1 : Math.max(1, Math.ceil(pieces / atOnce - 1e-9)));

export const batchesInWords = (many, atOnce) => (many > 1 ? ` · ${say('batches', { many: number(many, 0), at_once: count(atOnce) })}` : '');
