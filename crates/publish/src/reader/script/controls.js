// The controls: what the reader asks for, and the day by the clock.

import { celsius, fahrenheit, number, time } from './figures.js';
import { inPieces, tinHolds } from './amounts.js';
import { leastProtein, mostProtein } from './settings.js';
import { about, degrees } from './told.js';
import { say } from './words.js';

const figure = (text) => {
  const value = Number(String(text).replace(',', '.'));
  return Number.isFinite(value) && value > 0 ? value : 0;
};

// A number as a field takes it, whatever the page's language.
const tenths = (value) => String(Math.round(value * 10) / 10);

export class Controls {
  // `changed` is called with the names of what the reader has set.
  constructor(data, settings, changed) {
    Object.assign(this, { data, settings, changed });
    this.whole = document.getElementById('kitchen');
    this.form = this.whole.querySelector('form');
    this.fields = this.form.elements;
    this.form.addEventListener('input', (event) => this.set(event.target));
    this.form.addEventListener('submit', (event) => event.preventDefault());
    this.fields['no-room']?.addEventListener('click', () => {
      this.settings().room = null;
      this.fields.room.focus();
      this.changed();
    });
    this.flours();
    this.whole.hidden = false;
  }

  // A field for the protein of each flour that has one in any way of raising it.
  flours() {
    const all = new Map(this.data.ways.flatMap((way) => way.flours).map((flour) => [flour.name, flour]));
    const place = this.whole.querySelector('#flours');
    place.hidden = all.size === 0;
    for (const flour of all.values()) {
      const [label, name, field] = ['label', 'span', 'input'].map((tag) => document.createElement(tag));
      name.textContent = `${flour.called}, %`;
      Object.assign(field, { type: 'number', name: `protein.${flour.name}`, step: '0.1', inputMode: 'decimal' });
      Object.assign(field, { min: tenths(leastProtein(flour)), max: tenths(mostProtein(flour)) });
      field.placeholder = number(flour.protein, 1);
      label.append(name, field);
      place.append(label);
    }
  }

  set(field) {
    const settings = this.settings();
    const { name, value } = field;
    if (name.startsWith('protein.')) this.setProtein(name.slice('protein.'.length), field);
    else if (name === 'room') settings.room = Number(value);
    else if (name === 'way') {
      settings.way = value;
      // A line of one way is not that of another.
      settings.done.clear();
    } else if (name === 'serve' || name === 'begin') {
      settings.serve = name === 'serve' ? value : '';
      settings.begin = name === 'begin' ? value : '';
    } else if (field.type === 'number') this.setSize(field);
    else settings[name] = value;
    if (name === 'tin') Object.assign(settings, { pieces: 0, each: 0, times: 0 });
    this.changed();
  }

  setProtein(flour, field) {
    const value = figure(field.value);
    const fits = value >= Number(field.min) && value <= Number(field.max);
    field.setAttribute('aria-invalid', String(field.value !== '' && !fits));
    if (fits) this.settings().protein[flour] = value;
    else delete this.settings().protein[flour];
  }

  // Pieces and times are two ways to say the same; the last one said holds.
  setSize(field) {
    const settings = this.settings();
    const value = figure(field.value);
    const fits = value >= Number(field.min) && value <= Number(field.max);
    field.setAttribute('aria-invalid', String(field.value !== '' && !fits));
    if (!fits && field.value !== '') return;
    if (field.name === 'times') Object.assign(settings, { pieces: 0, each: 0, tin: '' });
    if (field.name === 'pieces' || field.name === 'each') Object.assign(settings, { times: 0, tin: '' });
    settings[field.name] = value;
  }

  // Shows what holds now, but never writes over what is being typed.
  show(now) {
    const { settings, size } = now;
    const put = (name, value) => {
      const field = this.fields[name];
      if (field && field !== document.activeElement) field.value = value;
    };
    const whole = (value) => (value ? String(Math.round(value * 100) / 100) : '');
    put('pieces', whole(size.pieces));
    put('each', whole(size.each));
    put('times', whole(size.times));
    for (const name of ['long', 'wide', 'round', 'high', 'holds', 'tins']) put(name, whole(settings[name]));
    for (const name of ['tin', 'amounts', 'spoons', 'degrees', 'eggs', 'serve', 'begin']) put(name, settings[name]);
    for (const field of this.form.querySelectorAll('[name^="protein."]')) {
      put(field.name, whole(settings.protein[field.name.slice('protein.'.length)]));
    }
    if (this.fields.way) this.fields.way.value = settings.way;
    for (const told of this.form.querySelectorAll('[data-told]')) told.hidden = told.dataset.told !== settings.way;
    this.showTin(settings);
    this.showRoom(settings);
    this.showClock(now);
    this.showChanged(now);
  }

  showTin(settings) {
    const place = this.form.querySelector('.tin');
    if (!place) return;
    place.hidden = settings.tin === '';
    for (const label of place.children) label.hidden = !label.dataset.for.split(' ').includes(settings.tin);
  }

  showRoom(settings) {
    const field = this.fields.room;
    if (!field) return;
    const at = settings.room ?? this.data.room.usual;
    field.value = at;
    const words = settings.room === null ? say('as_the_method_says') : degrees(this.data, settings, at);
    field.setAttribute('aria-valuetext', words);
    this.fields.shown.textContent = words;
    this.fields['no-room'].hidden = settings.room === null;
  }

  // Every step by the clock; where neither end is set, counted back from serving.
  showClock({ settings, steps }) {
    const list = document.getElementById('clock');
    const first = Math.min(0, ...steps.map((step) => step.begins));
    const minutes = (text) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
    const served = settings.serve ? minutes(settings.serve) : settings.begin ? minutes(settings.begin) - first : null;
    const sorted = [...steps].sort((a, b) => a.begins - b.begins);
    let day = null;
    const items = sorted.flatMap((step) => {
      const at = served === null ? null : Math.round(served + step.begins);
      const today = at === null ? 0 : Math.floor(at / 1440) - Math.floor(Math.round(served) / 1440);
      const heading = at !== null && today !== day ? [entry('day', dayTitle(today))] : [];
      day = today;
      return [...heading, row(step, at === null ? before(-step.begins) : clockTime(at))];
    });
    const serving = served === null ? [] : [served].map((at) => entry('served', say('served_then', { time: clockTime(Math.round(at)) })));
    list.replaceChildren(...items, ...serving);
  }

  showChanged({ data, settings, size, way }) {
    const words = [];
    if (Math.abs(size.times - 1) > 1e-9) words.push(size.pieces === null ? say('so_many_times', { times: number(size.times, 2) }) : inPieces(data, size.pieces));
    if (settings.tin && tinHolds(settings)) words.push(say('a_tin_of', { litres: number(tinHolds(settings) / 1000, 2) }));
    if (settings.room !== null) words.push(say('a_room_of', { degrees: settings.degrees === 'f' ? fahrenheit(settings.room, settings.room) : celsius(settings.room, settings.room) }));
    if (settings.way) words.push(way.title);
    for (const [name, protein] of Object.entries(settings.protein)) {
      const flour = way.flours.find((one) => one.name === name);
      if (flour) words.push(say('of_protein', { flour: flour.called, percent: number(protein, 1) }));
    }
    if (settings.eggs) words.push(say('eggs_like', { size: settings.eggs }));
    if (settings.amounts) words.push(say('whose_cups_and_spoons', { whose: data.spoons[settings.spoons].called }));
    const notes = [words.length > 0 ? say('told_for', { what: words.join(', ') }) : ''];
    if (settings.room !== null && way.rooms) {
      notes.push(say('times_are_foreseen'));
      if (Math.abs(size.times - 1) > 0.01) notes.push(say('times_of_the_batch'));
    }
    const text = notes.join(' ').trim();
    const place = document.getElementById('changed');
    if (place.textContent !== text) place.textContent = text;
    document.getElementById('afresh').hidden = location.hash === '' && words.length === 0;
  }
}

function dayTitle(day) {
  return day === 0 ? say('day_of_serving') : say('days_before', { count: -day, days: -day });
}

// So long before serving, to five minutes.
function before(minutes) {
  const seconds = Math.round(minutes / 5) * 300;
  return seconds > 0 ? say('so_long_before', { time: time(seconds, seconds) }) : say('serving');
}

// Nobody works by the minute: to the five minutes before.
const clockTime = (minutes) => {
  const five = Math.floor(minutes / 5) * 5;
  const within = ((five % 1440) + 1440) % 1440;
  return `${String(Math.floor(within / 60)).padStart(2, '0')}:${String(within % 60).padStart(2, '0')}`;
};

function entry(kind, text) {
  const item = document.createElement('li');
  item.className = kind;
  item.textContent = text;
  return item;
}

function row({ stage, step, minutes, key }, when) {
  const item = document.createElement('li');
  item.dataset.at = key;
  const [clock, what] = ['b', 'span'].map((tag) => document.createElement(tag));
  clock.textContent = when;
  const hands = step.hands ? '' : `, ${say('waiting')}`;
  const long = minutes > 0 ? `, ${about(minutes)}${hands}` : '';
  const ready = key.endsWith('.0') && stage.ready.length > 0 ? ` (${say('have_ready', { what: stage.ready.join(', ') })})` : '';
  what.textContent = `${stage.title}: ${step.does}${long}${ready}`;
  item.append(clock, what);
  return item;
}

