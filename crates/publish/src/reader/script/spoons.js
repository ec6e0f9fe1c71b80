// Spoons and cups of a stated country, where one comes within a tenth.

import { count, NB } from './figures.js';
import { say } from './words.js';

const SPOONFULS = {
  cup: [0, 0.25, 1 / 3, 0.5, 2 / 3, 0.75, 1],
  tbsp: [0, 0.5, 1],
  tsp: [0, 0.125, 0.25, 0.5, 0.75, 1],
};

const NAMES = {
  cup: (many) => (many > 1 ? say('figure_cups') : say('figure_cup')),
  tbsp: () => say('figure_tablespoon'),
  tsp: () => say('figure_teaspoon'),
};

// The nearest measure to a volume in millilitre, or nothing.
export function spoons(millilitres, system) {
  const unit = millilitres >= system.cup * 0.23 ? 'cup' : millilitres >= system.tbsp * 0.95 ? 'tbsp' : 'tsp';
  const ratio = millilitres / system[unit];
  const whole = Math.floor(ratio);
  let nearest = whole;
  for (const part of SPOONFULS[unit]) {
    if (Math.abs(whole + part - ratio) < Math.abs(nearest - ratio)) nearest = whole + part;
  }
  if (nearest === 0 || !(Math.abs(nearest / ratio - 1) <= 0.1)) return null;
  return count(nearest) + NB + NAMES[unit](nearest);
}
