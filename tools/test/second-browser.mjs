// The pages of the workbench and the readers' own in a second engine: no script error, nothing cut off at the side from
// 320 to 2560 px and at 200 %, and the hand's main gestures do there what they do in the first.
import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import puppeteer from 'puppeteer-core';
import { pages } from './workbench-pages-list.mjs';
import { Walk, serve } from './serving.mjs';

const root = resolve(process.argv[2] ?? '.');
const walk = new Walk();
const bench = await serve(root, 'second-browser-book');
const browser = await puppeteer.launch({ browser: 'firefox', executablePath: '/usr/bin/firefox-esr', headless: true, extraPrefsFirefox: { 'ui.prefersReducedMotion': 1 } });
const page = await browser.newPage();
const complaints = [];
page.on('pageerror', (error) => complaints.push(error.message));
page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));

/** 640 px at double density is a window of 1280 px at 200 %. */
const views = [[320, 1], [390, 1], [640, 2], [1280, 1], [2560, 1]];

async function looked(name, address) {
  complaints.length = 0;
  const answer = await page.goto(address, { waitUntil: 'load' });
  // A file on the disk has no status.
  if (answer?.status() >= 400) complaints.push(`answered ${answer.status()}`);
  const over = [];
  for (const [width, deviceScaleFactor] of views) {
    await page.setViewport({ width, height: 900, deviceScaleFactor });
    const off = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    if (off > 0) over.push(`${off} px cut off at ${width} px`);
  }
  walk.check(`${name}: fits`, over.length === 0, over);
  walk.check(`${name}: the browser does not complain`, complaints.length === 0, complaints);
}

// The sheet by hand: figures follow a key, a stroke is written and undone.
await page.setViewport({ width: 1280, height: 900 });
await page.goto(`${bench.url}/formula/potato-muffins`, { waitUntil: 'load' });
await page.waitForSelector('#glance-water-0 .figure');
const figure = (id) => page.$eval(id, (one) => one.textContent);
const water = await figure('#glance-water-0 .figure');
const shown = (before) => page.waitForFunction((before) => document.querySelector('#glance-water-0 .figure').textContent !== before, {}, before);
const milk = '#g-0-1-milk-whole';
const written = await page.$eval(milk, (one) => one.value);
await page.click(milk, { clickCount: 3 });
await page.type(milk, '200');
await walk.sees('the true water follows while milk is typed', shown(water));
await page.keyboard.press('Enter');
await page.waitForFunction(() => !document.querySelector('[data-way=back]').disabled);
const changed = await figure('#glance-water-0 .figure');
await page.click('[data-way=back]');
await shown(changed);
walk.check('undo gives the figure back', (await page.$eval(milk, (one) => one.value)) === written, await page.$eval(milk, (one) => one.value));
walk.check('the browser does not complain while it is worked with', complaints.length === 0, complaints);

// Each page on which nothing need be done first but by forms; the door itself stands open here.
const known = {};
for (const one of pages.filter((one) => !one.refused && !one.empty && !one.act && one.name !== 'door')) {
  if (one.prepare) await one.prepare(page, bench.url, known);
  await looked(one.name, `${bench.url}${typeof one.path === 'function' ? one.path(known) : one.path}`);
}

// The readers' pages, as they lie on a memory stick.
const site = resolve(root, 'target/browser/site');
for (const file of readdirSync(site).filter((file) => file.endsWith('.html'))) {
  await looked(file, pathToFileURL(resolve(site, file)).href);
}
await browser.close();
await bench.close();
walk.end();
