// One step at a time in letters that can be read from across the room; the screen stays on meanwhile.

import { about } from './told.js';
import { say } from './words.js';

// Keeps the screen on where the browser can, again after the page was out of sight.
export class Awake {
  constructor(button) {
    Object.assign(this, { button, lock: null, wanted: false });
    if (!('wakeLock' in navigator)) return;
    button.hidden = false;
    button.addEventListener('click', () => this.want(!this.wanted));
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible' && this.wanted) this.ask();
    });
  }

  want(wanted) {
    this.wanted = wanted;
    this.button.setAttribute('aria-pressed', String(wanted));
    if (wanted) this.ask();
    else this.lock?.release().catch(() => {});
  }

  async ask() {
    try {
      this.lock = await navigator.wakeLock?.request('screen');
    } catch {
      this.wanted = false;
      this.button.setAttribute('aria-pressed', 'false');
    }
  }
}

export class Across {
  constructor(awake, timers, minutesOf) {
    Object.assign(this, { awake, timers, minutesOf, at: 0 });
    this.dialog = document.createElement('dialog');
    this.dialog.id = 'view';
    this.dialog.setAttribute('aria-labelledby', 'view-stage');
    this.dialog.innerHTML = '<header><h2 id="view-stage"></h2><button type="button" class="close"></button></header>'
      + '<div class="step" tabindex="0" role="region"></div>'
      + '<footer><button type="button" class="before"></button><p class="count"></p>'
      + '<button type="button" class="start"></button><button type="button" class="next"></button></footer>';
    this.dialog.querySelector('.close').textContent = say('back_to_the_page');
    this.dialog.querySelector('.before').textContent = say('previous');
    this.dialog.querySelector('.next').textContent = say('next');
    this.dialog.querySelector('.step').setAttribute('aria-label', say('step'));
    const on = (which, act) => this.dialog.querySelector(which).addEventListener('click', act);
    on('.close', () => this.dialog.close());
    on('.before', () => this.go(-1));
    on('.next', () => this.go(1));
    on('.start', () => this.timers.begin(this.key(), this.minutesOf(this.key())));
    this.dialog.addEventListener('keydown', (event) => {
      const by = { ArrowRight: 1, PageDown: 1, ArrowLeft: -1, PageUp: -1 }[event.key];
      if (by) {
        event.preventDefault();
        this.go(by);
      }
    });
    this.dialog.addEventListener('close', () => {
      document.body.append(this.timers.bar);
      if (!this.wasAwake) this.awake.want(false);
      this.items()[this.at]?.scrollIntoView({ block: 'center' });
    });
    document.body.append(this.dialog);
  }

  items() {
    return [...document.querySelectorAll('main [data-step]')];
  }

  key() {
    return this.items()[this.at].dataset.step;
  }

  // Opens at the first step that is not done yet.
  open() {
    const items = this.items();
    const next = items.findIndex((item) => !item.classList.contains('done'));
    this.at = Math.max(0, next);
    this.wasAwake = this.awake.wanted;
    if ('wakeLock' in navigator) this.awake.want(true);
    this.dialog.append(this.timers.bar);
    this.dialog.showModal();
    this.show();
  }

  go(by) {
    this.at = Math.min(this.items().length - 1, Math.max(0, this.at + by));
    this.show();
  }

  show() {
    if (!this.dialog.open) return;
    const items = this.items();
    const item = items[Math.min(this.at, items.length - 1)];
    const stage = item.closest('.stage');
    this.dialog.querySelector('h2').textContent = stage.querySelector('h3').textContent;
    const step = this.dialog.querySelector('.step');
    step.replaceChildren(...[...item.querySelectorAll(':scope > p:not(.do)')].map((one) => plain(one)));
    step.append(...weighed(item, stage));
    step.scrollTop = 0;
    this.dialog.querySelector('.count').textContent = say('found', { found: this.at + 1, all: items.length });
    const minutes = this.minutesOf(item.dataset.step);
    const start = this.dialog.querySelector('.start');
    start.hidden = !minutes;
    start.textContent = minutes ? say('timer_of', { time: about(minutes) }) : '';
    this.dialog.querySelector('.before').disabled = this.at === 0;
    this.dialog.querySelector('.next').disabled = this.at === items.length - 1;
  }
}

// A copy that no figure's rule finds again.
function plain(paragraph) {
  const copy = document.createElement('p');
  copy.className = paragraph.className;
  copy.textContent = paragraph.textContent;
  return copy;
}

// With the first step of a stage stands what goes into it.
function weighed(item, stage) {
  const lines = stage.querySelector('ul.lines');
  if (!lines || item !== stage.querySelector('[data-step]')) return [];
  const list = document.createElement('ul');
  for (const line of lines.children) {
    const entry = document.createElement('li');
    const [amount, title] = line.querySelectorAll(':scope > span');
    const strong = document.createElement('b');
    strong.textContent = amount.textContent;
    entry.append(strong, ` ${title.textContent}`);
    list.append(entry);
  }
  return [list];
}
