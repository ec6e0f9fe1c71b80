// The page: reads its address and its figures, tells everything, and listens.

import { afresh, read, write } from './settings.js';
import { about, tell, workedOut } from './told.js';
import { Timers } from './timers.js';
import { boxes } from './ticks.js';
import { Across, Awake } from './across.js';
import { Controls } from './controls.js';
import { say, speak } from './words.js';

const data = JSON.parse(document.getElementById('figures').textContent);
speak(data.words);
let settings = read(data, location.hash);
let now = workedOut(data, settings);

const stepOf = (key) => {
  const [c, s, n] = key.split('.');
  const stage = now.way.stages.find((one) => one.key === `${c}.${s}`);
  return { stage, step: stage?.steps[Number(n)] };
};
const titleOf = (key) => {
  const { stage, step } = stepOf(key);
  return step ? `${stage.title}: ${step.does}` : say('timer');
};
// A timer rings at the earliest end: then is the time to look.
const minutesOf = (key) => {
  const seen = now.seen.get(key);
  if (seen && !seen.never) return seen.tell[0];
  return stepOf(key).step?.time?.[0] ?? 0;
};

// The parts of the page as published, and as another way of raising it has them.
const parts = [...document.querySelectorAll('[data-part]')].map((place) => ({ place, published: [...place.childNodes] }));
let shown = '';
function showWay(way) {
  if (way === shown) return;
  for (const { place, published } of parts) {
    const other = document.querySelector(`template[data-way="${way}"][data-of="${place.dataset.part}"]`);
    place.replaceChildren(...(other ? other.content.cloneNode(true).childNodes : published));
  }
  shown = way;
}

function timeButtons(root) {
  for (const item of root.querySelectorAll('[data-step]')) {
    const key = item.dataset.step;
    const minutes = minutesOf(key);
    if (!minutes) continue;
    let button = item.querySelector('.do button');
    if (!button) {
      const place = document.createElement('p');
      place.className = 'do';
      button = document.createElement('button');
      button.type = 'button';
      button.addEventListener('click', () => timers.begin(key, minutesOf(key)));
      place.append(button);
      item.append(place);
    }
    button.textContent = say('timer_of', { time: about(minutes) });
    button.setAttribute('aria-label', `${button.textContent}, ${titleOf(key)}`);
  }
}

const keep = () => history.replaceState(null, '', write(data, settings) || location.pathname + location.search);

function show() {
  now = workedOut(data, settings);
  showWay(settings.way);
  const main = document.querySelector('main');
  tell(now, main);
  boxes(main, () => settings, keep);
  timeButtons(main);
  controls.show(now);
  across.show();
}

const changed = () => {
  keep();
  show();
};

document.documentElement.classList.add('live');
const timers = new Timers(settings, titleOf, keep);
const controls = new Controls(data, () => settings, changed);
const across = new Across(new Awake(document.getElementById('awake')), timers, minutesOf);
document.getElementById('across').addEventListener('click', () => across.open());
document.getElementById('afresh').addEventListener('click', () => {
  const { timers: running } = settings;
  settings = Object.assign(afresh(data), { timers: running });
  timers.settings = settings;
  changed();
  controls.whole.querySelector('summary').focus();
});
addEventListener('hashchange', () => {
  settings = read(data, location.hash);
  timers.settings = settings;
  timers.show();
  show();
});
show();
timers.show();
