// Every page of the workbench, as owners, tasters and those before the door have it: what a screen reader is told is
// held against the file of its name in tools/test/snapshots, and each page is judged at every width from 320 to 2560 px,
// at 200 %, light and dark, and read with scripts off. A route without a page here fails.
//
// `RENEW=1 node target/browser/workbench-pages.mjs .` writes the snapshots anew, after the pages were changed on purpose;
// read what differs as somebody would who hears it. A name behind the folder looks at the pages of that name alone.
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { judged } from './judging.mjs';
import { Walk, launch, serve } from './serving.mjs';
import { pages, notPages } from './workbench-pages-list.mjs';

const root = resolve(process.argv[2] ?? '.');
const only = process.argv[3];
const renew = Boolean(process.env.RENEW);
const kept = resolve(root, 'tools/test/snapshots');
const place = resolve(root, 'target/browser/pages-seen');
rmSync(place, { recursive: true, force: true });
mkdirSync(place, { recursive: true });
const walk = new Walk();
const browser = await launch();

/** Days, hours and places of this run, which are another every time. */
const MASKS = [
  [/\b\d{1,2} (January|February|March|April|May|June|July|August|September|October|November|December)( \d{4})?(, \d{2}:\d{2})?/gu, 'DATE'],
  [/\b(Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day\b/gu, 'DAY'],
  [/\d{4}-\d{2}-\d{2}( \d{2}:\d{2} UTC)?/gu, 'DATE'],
  [/http:\/\/127\.0\.0\.1:\d+/gu, 'HOUSE'],
  [/(\/taste\/)[a-z0-9]+/gu, '$1WORD'],
  [/(\/people\/|key=|: )[0-9a-f]{12,64}\b/gu, '$1KEY'],
  [/\/\S*target\/browser/gu, 'PLACE'],
];
/** Of a page that draws lots, also its codes. */
const CODES = [/(?<![\d.:-]|(?<!placeholder: \d+),)[1-9]\d{2}(?![\d.,:]|\s(g|%|px|W|kJ))/gu, 'CODE'];

/** What a screen reader is told of a page. */
async function told(page, { codes, fleeting = [] }) {
  await page.evaluate((all) => all.forEach((one) => document.querySelectorAll(one).forEach((part) => part.replaceChildren())), fleeting);
  const text = await page.locator('body').ariaSnapshot();
  return `${[...MASKS, ...(codes ? [CODES] : [])].reduce((masked, [what, by]) => masked.replace(what, by), text)}\n`;
}

function held(name, text) {
  const file = resolve(kept, `${name}.yml`);
  if (renew) return writeFileSync(file, text);
  const before = existsSync(file) ? readFileSync(file, 'utf8') : '';
  const [old, now] = [before.split('\n'), text.split('\n')];
  const at = now.findIndex((line, n) => line !== old[n]);
  walk.check(`${name}: is told as it was`, before === text, `line ${at + 1}: ${old[at] ?? '(nothing)'} → ${now[at] ?? '(nothing)'}`);
}

/** Controls that stick out of what holds them, or lie over each other, though nothing scrolls there. */
const crowded = () => {
  const seen = (one) => one.checkVisibility({ visibilityProperty: true }) && one.getClientRects().length > 0 && !one.closest('.apart, .skip, .writing, svg, details:not([open]) > :not(summary)');
  const scrolls = (one) => one.parentElement && (['auto', 'scroll', 'hidden'].includes(getComputedStyle(one.parentElement).overflowX) || scrolls(one.parentElement));
  const all = [...document.querySelectorAll('main button, main input:not([type=hidden]), main select, main textarea, main summary')].filter((one) => seen(one) && !scrolls(one));
  const boxes = all.map((one) => [one, one.getBoundingClientRect()]);
  const name = (one) => one.id || one.name || one.textContent.slice(0, 30);
  const out = boxes.filter(([one, box]) => box.right > document.documentElement.clientWidth + 1 || (one.closest('label, td, li') && box.right > one.closest('label, td, li').getBoundingClientRect().right + 2));
  const over = boxes.flatMap(([one, a], n) => boxes.slice(n + 1).filter(([, b]) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1).map(([other]) => `${name(one)} over ${name(other)}`));
  return [...out.map(([one]) => `${name(one)} sticks out`), ...over];
};

/** How each page is looked at: 640 px at double density is a window of 1280 px at 200 %. */
const widths = [320, 390, 768, 1280, 2560];

async function looked(context, page, one) {
  for (const width of one.alone ? [390, 1280] : widths) {
    await page.setViewportSize({ width, height: width < 700 ? 844 : 1000 });
    const found = await page.evaluate(crowded);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    if (over > 0) found.push(`${over} px are cut off at the side`);
    walk.check(`${one.name}: ${width} px`, found.length === 0, found);
    if (width !== 390 && width !== 1280) continue;
    for (const colorScheme of ['light', 'dark']) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      const amiss = await judged(page);
      walk.check(`${one.name}: axe, ${width} px, ${colorScheme}`, amiss.length === 0, amiss);
      await page.screenshot({ path: resolve(place, `${one.name}-${width}-${colorScheme}.png`), fullPage: true });
    }
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
  }
}

async function opened(state, options, one, act) {
  const context = await browser.newContext({ ...options, storageState: one.outside ? undefined : state, bypassCSP: true });
  const page = await context.newPage();
  const complaints = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  // A page of a refusal is meant to be one.
  page.on('console', (message) => message.type() === 'error' && !one.refused && complaints.push(message.text()));
  const answer = await page.goto(`${one.house}${one.path}`);
  walk.check(`${one.name}: is there`, Boolean(one.refused) === answer.status() >= 400, answer.status());
  await act(page, context);
  walk.check(`${one.name}: the browser does not complain`, complaints.length === 0, complaints);
  await context.close();
}

async function whole(state, one) {
  await opened(state, { viewport: { width: 1280, height: 1000 }, reducedMotion: 'reduce' }, one, async (page, context) => {
    if (one.act) await one.act(page);
    if (one.ready) await page.waitForSelector(one.ready);
    await looked(context, page, one);
    held(one.name, await told(page, one));
  });
  await opened(state, { viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 }, one, async (page) => {
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    const found = await page.evaluate(crowded);
    walk.check(`${one.name}: at 200 %`, over <= 0 && found.length === 0, [over, ...found]);
  });
  await opened(state, { viewport: { width: 390, height: 844 }, javaScriptEnabled: false }, one, async (page) => {
    const text = (await page.locator('main').first().innerText()).trim();
    walk.check(`${one.name}: can be read with scripts off`, text.length > 20 && !/Working it out/u.test(text), text.slice(0, 80));
  });
}

// Every door that answers with a page has one here.
const doors = [...readFileSync(resolve(root, 'crates/app/tests/doors/roles.rs'), 'utf8').matchAll(/\("GET", "([^"]+)",/gu)].map((one) => one[1]);
const missing = doors.filter((door) => !notPages.includes(door) && !pages.some((one) => one.door === door));
walk.check('every door that answers with a page is looked at', missing.length === 0, missing);

const shared = await serve(root, 'pages-book', { args: ['--share=127.0.0.1'] });
const empty = await serve(root, 'pages-empty', { from: null });
const owner = await browser.newContext({ viewport: { width: 1280, height: 900 } });
const first = await owner.newPage();
await first.goto(shared.url);
const house = new URL(shared.url).origin;
await first.waitForURL(`${house}/`);
const known = {};
for (const one of pages) {
  if (only && !one.name.startsWith(only) && !one.prepare) continue;
  if (one.prepare) await one.prepare(first, house, known);
  if (only && !one.name.startsWith(only)) continue;
  const path = typeof one.path === 'function' ? one.path(known) : one.path;
  try {
    await whole(await owner.storageState(), { ...one, path, house: one.empty ? empty.url : house });
  } catch (error) {
    walk.check(`${one.name}: is walked to its end`, false, error.message.split('\n')[0]);
  }
}
await browser.close();
await shared.close();
await empty.close();
walk.end();
