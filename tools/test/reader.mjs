// The reader's page in Chromium against the program at 200 random settings (seeded): every amount against `scale` and
// `exchange`, every foreseen time and the day by the clock against `forecast`;
// and the room moved by hand from 23 °C to 18 °C.
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const root = resolve(process.argv[2] ?? '.');
const SETTINGS = Number(process.argv[3] ?? 200);
// The book's own language, or the one it is to be published in.
const LANGUAGE = process.argv[4] ?? 'en-GB';
const place = resolve(root, 'target/browser/reader');
const book = resolve(place, 'book');
const program = resolve(root, 'target/debug/wellproved');
const script = (name) => import(pathToFileURL(resolve(root, 'crates/publish/src/reader/script', name)).href);
const amounts = await script('amounts.js');
const figures = await script('figures.js');
const { speak } = await script('words.js');
const spoken = ['run', '--quiet', '-p', 'publish', '--example', 'figures', LANGUAGE];
const { words } = JSON.parse(execFileSync('cargo', spoken, { cwd: root, maxBuffer: 1e8 }));
speak(words);

rmSync(place, { recursive: true, force: true });
mkdirSync(place, { recursive: true });
cpSync(resolve(root, 'examples/saltmarsh'), book, { recursive: true });
const settingsFile = resolve(book, 'book.toml');
writeFileSync(settingsFile, readFileSync(settingsFile, 'utf8').replace('language = "en-GB"', `language = "${LANGUAGE}"`));
const answers = new Map();
const run = (...words) => {
  const key = words.join(' ');
  if (!answers.has(key)) answers.set(key, execFileSync(program, words, { cwd: book, stdio: ['ignore', 'pipe', 'ignore'], maxBuffer: 1e8 }).toString());
  return answers.get(key);
};
run('publish', '.', '--out', resolve(place, 'site'));

// The same numbers in every run: mulberry32.
let seed = 20261125;
const random = () => {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
};
const pick = (all) => all[Math.floor(random() * all.length)];
const maybe = (share) => random() < share;

const names = ['potato-muffins', 'caraway-rye-tin', 'cardamom-knots', 'buckwheat-chickpea-griddle-bread', 'cider-apple-fritters', 'base-syrup'];
const data = Object.fromEntries(names.map((name) => {
  const page = readFileSync(resolve(place, 'site', `${name}.html`), 'utf8');
  return [name, JSON.parse(page.match(/<script type="application\/json" id="figures">(.*?)<\/script>/s)[1])];
}));

// The formula's file after the exchanges that a setting stands for; written into the book once.
function made(name, settings) {
  let file = `formulas/${name}.toml`;
  let made = name;
  const exchange = (tag, ...words) => {
    const next = `formulas/${made}-${tag}.toml`;
    if (!answers.has(next)) {
      try {
        answers.set(next, run('exchange', file, ...words, '--write', next));
      } catch {
        return false;
      }
    }
    made = `${made}-${tag}`;
    file = next;
    return true;
  };
  if (settings.way) {
    const kind = settings.way === 'straight' ? 'straight' : 'leaven';
    const choice = JSON.parse(run('exchange', file, '--format', 'json')).find((one) => one.name === kind);
    const into = kind === 'leaven' ? ['--into', settings.way] : [];
    if (!exchange(settings.way, kind, '--of', (choice.fits ?? choice.with)[0], ...into)) amiss(name, `no exchange for ${settings.way}`);
  }
  const raised = file;
  for (const [flour, protein] of Object.entries(settings.protein)) {
    const own = `mine-${flour}-${String(protein).replace('.', '-')}`;
    const called = data[name].ways.flatMap((way) => way.flours).find((one) => one.name === flour).called;
    writeFileSync(resolve(book, `ingredients/${own}.toml`),
      `[${own}]\ntitle = "${called}"\ncalled = "${called}"\nlike = "${flour}"\nper-100-g = { protein = ${protein} }\nsource = "the reader's bag"\n`);
    const text = readFileSync(resolve(book, file), 'utf8');
    const stages = text.split('[[component.stage]]').slice(1).filter((stage) => new RegExp(`^${flour}\\s*=`, 'm').test(stage));
    for (const stage of stages) {
      const at = stage.match(/^name = "(.*)"/m)[1];
      // The program refuses where the mix would fall short of the yield by more than it lets pass.
      if (!exchange(`${own}-in-${at}`, 'flour', '--of', flour, '--stage', at, '--into', own)) return null;
    }
  }
  return { file, raised };
}

// A random setting, and the words with which the program is asked for it.
function setting(name) {
  const { size, ways, spoons } = data[name];
  const way = pick(ways);
  const settings = { way: way.key, protein: {}, room: null, amounts: '', spoons: data[name].own.household, degrees: '', eggs: '', serve: '' };
  const address = [];
  let scale = ['--factor', '1'];
  const say = (key, value) => {
    if (key in settings) settings[key] = value;
    address.push(`${key}=${value}`);
  };
  if (way.key) address.push(`way=${way.key}`);
  if (size.tin && maybe(0.5)) {
    const [long, wide, high, tins] = [20 + Math.floor(random() * 15), 9 + Math.floor(random() * 5), 6 + Math.floor(random() * 6), 1 + Math.floor(random() * 4)];
    address.push('tin=box', `long=${long}`, `wide=${wide}`, `high=${high}`, `tins=${tins}`);
    scale = ['--tin', `${long} x ${wide} x ${high} cm`, '--tins', String(tins)];
  } else if (size.pieces && maybe(0.6)) {
    const pieces = 1 + Math.floor(random() * 60);
    address.push(`pieces=${pieces}`);
    scale = ['--pieces', String(pieces)];
    if (maybe(0.4)) {
      const each = Math.round(size.each * (0.6 + random()));
      address.push(`each=${each}`);
      scale.push('--each', `${each} g`);
    }
  } else if (maybe(0.6)) {
    const times = Math.round((0.2 + random() * 5) * 100) / 100;
    address.push(`times=${times}`);
    scale = ['--factor', String(times)];
  }
  if (way.rooms && maybe(0.8)) say('room', Math.round((12 + random() * 20) * 2) / 2);
  if (maybe(0.5)) say('serve', `${String(Math.floor(random() * 24)).padStart(2, '0')}:${pick(['00', '15', '30', '45'])}`);
  if (maybe(0.4)) say('amounts', 'spoons');
  if (maybe(0.5)) say('spoons', pick(Object.keys(spoons)));
  if (maybe(0.5)) say('degrees', pick(['c', 'f']));
  if (data[name].eggs && maybe(0.3)) say('eggs', pick(Object.keys(data[name].eggs.weigh)));
  for (const flour of way.flours) {
    if (!maybe(0.25)) continue;
    const protein = Math.round((flour.protein - 2 + random() * 4) * 10) / 10;
    settings.protein[flour.name] = protein;
    address.push(`protein.${flour.name}=${protein}`);
  }
  return { settings, scale, address: `#${address.join('&')}` };
}

let checked = 0;
let farthest = 0;
const wrong = [];
const amiss = (where, words) => wrong.push(`${where}: ${words}`);
const bare = (text) => text.replaceAll('\u2060', '');

// A text that a figure may have; one written to hundredths of a gram on its way may fall on either side of a rounding.
function same(where, shown, told, value, slack) {
  checked += 1;
  const near = [0, -1, 1, -0.5, 0.5, -0.25, 0.25, -0.75, 0.75].map((part) => value + part * slack);
  const fits = near.some((one) => bare(told(one)) === bare(shown));
  if (!fits) amiss(where, `“${shown}”, not “${told(value)}”`);
}

// What a sentence is filled with, by the message that it was made of.
function filling(name, sentence) {
  const plain = words.messages[name].replace('{says}', '').replace(/[.*+?^$()|[\]\\]/g, '\\$&');
  return sentence.match(new RegExp(`^${plain.replace(/\{(\w+)\}/g, '(?<$1>.*?)')}$`))?.groups;
}

const { group, point } = words.notation;
const minutes = (text) => [...text.replaceAll(group, '').replaceAll(point, '.').matchAll(/([\d.]+)\s(d|h|min|s)/g)]
  .reduce((sum, [, number, unit]) => sum + Number(number) * { d: 1440, h: 60, min: 1, s: 1 / 60 }[unit], 0);
const coarse = (value) => (value < 60 ? 1 : value < 180 ? 5 : value < 1440 ? 30 : 60);

// A time within 2 % of the program's, besides its rounding.
function near(where, shown, expected) {
  checked += 1;
  const [is, rounding] = [minutes(shown), coarse(expected) / 2 + (coarse(expected * 1.02) - coarse(expected)) / 2];
  const off = Math.max(0, Math.abs(is - expected) - rounding) / expected;
  farthest = Math.max(farthest, off);
  if (!(off <= 0.02)) amiss(where, `“${shown}” is ${is} min, not ${expected.toFixed(1)}`);
}

const read = (page) => page.evaluate(() => {
  const texts = (which, key) => Object.fromEntries([...document.querySelectorAll(`main ${which}`)].map((one) => [one.dataset[key] ?? one.closest(`[data-${key}]`)?.dataset[key], one.textContent]));
  return {
    lines: texts('ul.lines [data-line] > .amount', 'line'),
    table: texts('td [data-g]', 'k'),
    shares: texts('[data-p]', 'k'),
    makes: document.querySelector('[data-makes]')?.textContent,
    each: document.querySelector('dl.facts [data-each]')?.textContent,
    foreseen: Object.fromEntries([...document.querySelectorAll('main [data-step] .foreseen')].map((one) => [one.closest('[data-step]').dataset.step, one.textContent])),
    liquids: [...document.querySelectorAll('main .stage > .foreseen')].map((one) => one.textContent),
    clock: Object.fromEntries([...document.querySelectorAll('#clock [data-at]')].map((one) => [one.dataset.at, one.querySelector('b').textContent])),
  };
});

async function look(page, name, number) {
  let asked = setting(name);
  let files = made(name, asked.settings);
  while (files === null) {
    asked = setting(name);
    files = made(name, asked.settings);
  }
  const { settings, scale, address } = asked;
  const { file, raised } = files;
  const where = `${number} ${name}${address}`;
  await page.goto('about:blank');
  await page.goto(pathToFileURL(resolve(place, 'site', `${name}.html`)).href + address);
  const shown = await read(page);
  const [sheet] = JSON.parse(run('scale', file, ...scale, '--format', 'json'));
  weighed(where, name, settings, shown, sheet);
  if (settings.room !== null) {
    const [forecast] = JSON.parse(run('forecast', raised, '--room', `${settings.room} °C`, '--format', 'json'));
    timed(where, name, settings, shown, forecast, scale);
  }
}

function weighed(where, name, settings, shown, sheet) {
  const way = data[name].ways.find((one) => one.key === settings.way);
  const times = sheet.components[0].yield['raw-grams'] / way.weighs[0];
  // An exchange writes hundredths of a gram.
  const slack = (settings.way || Object.keys(settings.protein).length > 0) ? 0.03 * Math.max(1, times) : 1e-9;
  sheet.components.forEach((component, c) => {
    component.stages.forEach((stage, s) => stage.lines.forEach((line, l) => {
      const key = `${c}.${s}.${l}`;
      if (shown.lines[key] === undefined) return amiss(where, `shows no ${line.ingredient} under ${key}`);
      same(`${where} ${line.ingredient}`, shown.lines[key], (grams) => amounts.measured(data[name], way.lines[key], grams, settings), line.grams, slack);
    }));
    rows(component.overall, shown, c).forEach((row, r) => {
      const cell = shown.table[`t.${c}.${r}`];
      if (cell !== undefined) same(`${where} all ${row.ingredient}`, cell, figures.bareGrams, row.grams, slack * 2);
      const share = shown.shares[`p.${c}.${r}`];
      if (share !== undefined) same(`${where} share of ${row.ingredient}`, share, figures.barePercent, row.percent, slack / times);
    });
    if (component.figures) {
      const hydration = shown.shares[`f.${c}.all-water`];
      if (hydration !== undefined) same(`${where} hydration`, hydration, (one) => figures.number(one, 1), component.figures['true-hydration'].percent, 0.02);
    }
  });
  const { pieces, 'scaling-weight-grams': each } = sheet.components[0].yield;
  if (pieces !== null) same(`${where} makes`, shown.makes, (one) => amounts.inPieces(data[name], one), pieces, 1e-9);
  if (each !== null && shown.each) same(`${where} each`, shown.each, figures.mass, each, 1e-6);
}

// Where a flour of the reader's own stands beside that of a culture, the page tells both in one row.
function rows(overall, shown, c) {
  if (shown.shares[`p.${c}.${overall.length - 1}`] !== undefined || shown.shares[`p.${c}.0`] === undefined) return overall;
  const merged = new Map();
  for (const row of overall) {
    const { grams = 0, percent = 0 } = merged.get(row.ingredient) ?? {};
    merged.set(row.ingredient, { ...row, grams: grams + row.grams, percent: percent + row.percent });
  }
  return [...merged.values()];
}

// Without what the method says after it.
const untold = (text) => text.replace(/;.*$/, '.');

function timed(where, name, settings, shown, forecast, scale) {
  const stages = data[name].ways.find((one) => one.key === settings.way).stages;
  const rises = forecast.rises.flatMap((rise) => rise.steps);
  const seen = forecast.countdown.filter((step) => step['foreseen-hours'] !== null);
  const reached = rises.filter((step) => step.reached !== null);
  if (seen.length !== reached.length) amiss(where, 'the countdown and the rises differ in what is foreseen');
  // The countdown tells every step in the page's own order.
  const keys = stages.flatMap((stage) => stage.steps.map((_, n) => `${stage.key}.${n}`));
  const keyOf = (step) => keys[forecast.countdown.indexOf(step)];
  seen.forEach((step, n) => {
    const told = shown.foreseen[keyOf(step)];
    if (told === undefined) return amiss(where, `foresees nothing of ${step.stage}: ${step.action}`);
    const { from, to } = reached[n].reached;
    const ripe = filling('foreseen_ripe', untold(told));
    if (ripe) {
      near(`${where} ${step.stage} from`, ripe.from, from.value * 60);
      return near(`${where} ${step.stage} until`, ripe.to, to.value * 60);
    }
    const after = filling('foreseen_after', untold(told));
    if (!after) return amiss(where, `“${told}” tells no time`);
    near(`${where} ${step.stage} from`, after.after, from.value * 60);
    near(`${where} ${step.stage} earliest`, after.from, from.band[0] * 60);
    near(`${where} ${step.stage} latest`, after.to, from.band[1] * 60);
  });
  const liquids = forecast.rises.filter((rise) => rise.mixed?.liquid);
  liquids.forEach((rise, n) => {
    const at = rise.mixed.liquid.at.value;
    const degrees = filling('liquid_at', shown.liquids[n] ?? '')?.degrees.replaceAll(point, '.').match(/(−?[\d.]+)\u00a0°([CF])/);
    checked += 1;
    if (at <= 1.05 || at >= 59.95) return;
    const celsius = degrees && (degrees[2] === 'C' ? Number(degrees[1]) : (Number(degrees[1]) - 32) / 1.8);
    if (!degrees || Math.abs(celsius - at) > 0.61) amiss(where, `“${shown.liquids[n]}”, not ${at.toFixed(2)} °C`);
  });
  // Batches at the heat grow with the pieces; the program counts back for the formula as written.
  if (scale[0] === '--factor' && scale[1] === '1') byTheClock(where, settings, shown, forecast, keys);
}

// The room is moved by hand from 23 °C to 18 °C: the new times are there before anything else can happen, other than
// those of 23 °C where something ferments in the room, and the program's.
async function moved(page, name) {
  if (!data[name].ways[0].rooms) return;
  const where = `${name}, from 23 °C to 18 °C`;
  await page.goto('about:blank');
  await page.goto(`${pathToFileURL(resolve(place, 'site', `${name}.html`)).href}#room=23`);
  const before = await read(page);
  await page.evaluate(() => {
    const room = document.querySelector('[name="room"]');
    room.value = '18';
    room.dispatchEvent(new Event('input', { bubbles: true }));
    // What is told within the hand's own stroke is told at once.
    document.body.dataset.atOnce = JSON.stringify([...document.querySelectorAll('main .foreseen')].map((one) => one.textContent));
  });
  const shown = await read(page);
  const settings = { way: '', room: 18, serve: '' };
  const [forecast] = JSON.parse(run('forecast', `formulas/${name}.toml`, '--room', '18 °C', '--format', 'json'));
  checked += 2;
  if (JSON.stringify(before.foreseen) === JSON.stringify(shown.foreseen)) amiss(where, 'no time is another');
  const atOnce = JSON.parse(await page.evaluate(() => document.body.dataset.atOnce));
  const told = [...Object.values(shown.foreseen), ...shown.liquids];
  if (JSON.stringify(atOnce.sort()) !== JSON.stringify(told.sort())) amiss(where, 'the new times are not there at once');
  timed(where, name, settings, shown, forecast, ['--factor', '1']);
}

function byTheClock(where, settings, shown, forecast, keys) {
  const seen = forecast.countdown.reduce((sum, step) => sum + (step['foreseen-hours'] ? step['lasts-hours'] * 60 : 0), 0);
  forecast.countdown.forEach((step, n) => {
    const before = step['begins-hours-before-serving'] * 60;
    const text = shown.clock[keys[n]];
    checked += 1;
    let off;
    if (settings.serve) {
      const [hour, minute] = settings.serve.split(':').map(Number);
      const [is, asked] = [text.split(':').map(Number), hour * 60 + minute - before];
      off = asked - (is[0] * 60 + is[1]);
      off -= Math.round((off - 2.5) / 1440) * 1440;
      off = Math.abs(off - 2.5) - 2.5;
    } else {
      off = Math.abs(minutes(text) - before) - 2.5;
    }
    if (off > 0.02 * seen + 0.51) amiss(where, `${step.stage}: ${step.action} at “${text}”, ${before.toFixed(0)} min before serving`);
  });
}

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-background-networking', '--disable-component-update', '--disable-sync'] });
const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
page.on('pageerror', (error) => amiss('page', error.message));
page.on('console', (message) => amiss('console', message.text()));
for (let number = 1; number <= SETTINGS; number += 1) await look(page, pick(names), number);
for (const name of names) await moved(page, name);
await browser.close();
for (const line of wrong.slice(0, 60)) console.error(line);
console.log(`${SETTINGS} settings, ${checked} figures of the page held against the program, ${wrong.length} findings; times at most ${(farthest * 100).toFixed(2)} % off`);
process.exit(wrong.length > 0 ? 1 : 0);
