// Timers of steps: several at once, by the clock, so that they go on when another is opened or the page is read again.

import { about } from './told.js';
import { say } from './words.js';

const SECOND = 1000;

export class Timers {
  // `changed` is called when one is begun or ended.
  constructor(settings, titles, changed) {
    Object.assign(this, { settings, titles, changed, rung: new Set(), tick: 0 });
    this.bar = document.createElement('section');
    this.bar.id = 'timers';
    this.bar.setAttribute('aria-label', say('timers'));
    this.call = document.createElement('p');
    this.call.setAttribute('role', 'alert');
    this.call.className = 'heard';
    this.list = document.createElement('ul');
    this.bar.append(this.call, this.list);
    document.body.append(this.bar);
    this.title = document.title;
    // What had rung before the page was read again does not ring anew.
    for (const { key, ends } of settings.timers) if (ends < Date.now() - 60 * SECOND) this.rung.add(key);
  }

  begin(key, minutes) {
    this.rung.delete(key);
    this.settings.timers = this.settings.timers.filter((one) => one.key !== key);
    this.settings.timers.push({ key, ends: Date.now() + minutes * 60 * SECOND });
    this.sound?.resume();
    this.sound ??= window.AudioContext ? new AudioContext() : null;
    this.show();
    this.changed();
  }

  end(key) {
    this.settings.timers = this.settings.timers.filter((one) => one.key !== key);
    this.show();
    this.changed();
  }

  later(key, minutes) {
    const one = this.settings.timers.find((timer) => timer.key === key);
    if (!one) return;
    one.ends = Math.max(one.ends, Date.now()) + minutes * 60 * SECOND;
    this.rung.delete(key);
    this.show();
    this.changed();
  }

  // Draws the bar, and again every second as long as a timer runs.
  show() {
    clearTimeout(this.tick);
    const timers = [...this.settings.timers].sort((a, b) => a.ends - b.ends);
    this.bar.hidden = timers.length === 0;
    const kept = new Map([...this.list.children].map((item) => [item.dataset.timer, item]));
    for (const timer of timers) {
      const item = kept.get(timer.key) ?? this.item(timer.key);
      kept.delete(timer.key);
      this.tell(item, timer);
      this.list.append(item);
    }
    for (const gone of kept.values()) gone.remove();
    const rang = timers.filter(({ ends }) => ends <= Date.now());
    document.title = rang.length > 0 ? `● ${this.titles(rang[0].key)}` : this.title;
    if (timers.length > 0) this.tick = setTimeout(() => this.show(), SECOND - (Date.now() % SECOND));
  }

  item(key) {
    const item = document.createElement('li');
    item.dataset.timer = key;
    const [left, name] = [document.createElement('b'), document.createElement('a')];
    name.href = '#';
    name.addEventListener('click', (event) => {
      event.preventDefault();
      const dialog = document.querySelector('dialog[open]');
      if (!dialog) document.querySelector(`[data-step="${key}"]`)?.scrollIntoView({ block: 'center' });
    });
    const title = this.titles(key);
    name.textContent = title;
    item.append(left, name, button('+5 min', `+5 min: ${title}`, () => this.later(key, 5)), button(say('stop'), `${say('stop')}: ${title}`, () => this.end(key)));
    return item;
  }

  tell(item, { key, ends }) {
    const seconds = Math.round((ends - Date.now()) / SECOND);
    item.querySelector('b').textContent = (seconds < 0 ? '+' : '') + clock(Math.abs(seconds));
    item.classList.toggle('rang', seconds <= 0);
    if (seconds > 0 || this.rung.has(key)) return;
    this.rung.add(key);
    this.call.textContent = say('time_is_up', { step: this.titles(key) });
    navigator.vibrate?.([300, 150, 300]);
    this.ring();
  }

  // Three soft strokes.
  ring() {
    if (!this.sound) return;
    for (const n of [0, 1, 2]) {
      const [tone, volume] = [this.sound.createOscillator(), this.sound.createGain()];
      const at = this.sound.currentTime + n * 0.5;
      tone.frequency.value = 660;
      volume.gain.setValueAtTime(0.3, at);
      volume.gain.exponentialRampToValueAtTime(0.001, at + 0.4);
      tone.connect(volume).connect(this.sound.destination);
      tone.start(at);
      tone.stop(at + 0.4);
    }
  }
}

function button(text, label, act) {
  const one = document.createElement('button');
  one.type = 'button';
  one.textContent = text;
  one.setAttribute('aria-label', label);
  one.addEventListener('click', act);
  return one;
}

// "7:05", "1:12:00", "2 d 3 h".
export function clock(seconds) {
  if (seconds >= 48 * 3600) return about(seconds / 60);
  const two = (n) => String(n).padStart(2, '0');
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor((seconds % 3600) / 60)];
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}
