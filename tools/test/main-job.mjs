// The main job from the first page to the printed one, twice: by keyboard alone, and by a thumb on a telephone. Somebody
// opens the demo's potato muffins, changes the milk, sees true water and rise follow, sees a remark come and asks why,
// exchanges the sponge's yeast for a ripe culture, plans for half past nine, publishes and prints.
import { readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { Walk, launch, serve } from './serving.mjs';
import { judged } from './judging.mjs';

const root = resolve(process.argv[2] ?? '.');
const walk = new Walk();
const browser = await launch();
const title = 'Griddled potato muffins';
const looks = (name) => join(root, `target/browser/looks/main-job-${name}.png`);
/** The morning after the next: there is a night for the culture, whenever this is walked. */
const morning = new Date(Date.now() + 2 * 24 * 3600 * 1000);
const two = (number) => String(number).padStart(2, '0');
const day = { year: morning.getFullYear(), month: two(morning.getMonth() + 1), day: two(morning.getDate()) };

/** What has the keyboard, and whether it shows; gathered while it is tabbed on. */
const stop = () => {
  const one = document.activeElement;
  const [box, look] = [one.getBoundingClientRect(), getComputedStyle(one)];
  window.stops = window.stops ?? [];
  const last = window.stops.at(-1);
  window.stops.push(one);
  const inView = box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
  return {
    name: `${one.nodeName.toLowerCase()} ${one.id || one.name || (one.getAttribute('aria-label') ?? one.textContent).trim().slice(0, 40)}`,
    outside: one === document.body,
    shows: look.outlineStyle !== 'none' && parseFloat(look.outlineWidth) >= 2 && inView,
    // Parts of a date are stops of their own within one field.
    stuck: last === one && one.type !== 'datetime-local' && one.type !== 'time',
    backwards: Boolean(last?.isConnected && last !== one && last.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_PRECEDING),
  };
};

class Keyboard {
  keys = 0;
  faint = [];
  constructor(page) { this.page = page; }

  async press(key) {
    this.keys += 1;
    await this.page.keyboard.press(key);
  }

  /** Tabs on until something has the keyboard; gives up after 400 stops. */
  async to(selector) {
    for (let n = 0; n < 400; n += 1) {
      await this.press('Tab');
      const here = await this.page.evaluate(stop);
      if (!here.outside && (!here.shows || here.stuck || here.backwards)) this.faint.push(here);
      if (await this.page.evaluate((wanted) => document.activeElement.matches(wanted), selector)) return;
    }
    throw new Error(`${selector} is not reached by Tab at ${this.page.url()}`);
  }

  /** Goes to a link or button of these words, and through it. */
  async through(selector, words) {
    await this.page.evaluate(([selector, words]) => document.querySelectorAll(selector).forEach((one) => one.toggleAttribute('data-wanted', !words || one.textContent.includes(words))), [selector, words]);
    await this.to(`${selector}[data-wanted]`);
    await this.press('Enter');
  }
}

const figure = (page, key) => page.textContent(`#glance-${key} .figure`);
/** All that is said of ripening and rising. */
const rises = (page) => page.$$eval('[id^=glance-rise]', (all) => all.map((one) => one.textContent).join(' · '));
const changes = (page, key, before) => page.waitForFunction(([key, before]) => document.querySelector(`#glance-${key} .figure`)?.textContent !== before, [key, before]);
const says = (page, selector, words) => page.waitForFunction(([selector, words]) => document.querySelector(selector)?.textContent.includes(words), [selector, words]);
const ready = (page) => page.waitForSelector('#glance-water-0');
const served = `#served`;

/** What both walks find once the exchange is written. */
async function exchanged(page, file, how) {
  const text = readFileSync(file, 'utf8');
  walk.check(`${how}: the culture stands in the sponge, in the author's own text`, /rye-culture = /u.test(text) && text.includes('milk-whole = { amount = "260 g", temperature = "4 °C" }'), text);
}

async function printed(page, how, house, folder) {
  const pages = join(dirname(folder), `published-${basename(folder)}`);
  walk.check(`${how}: the page is published and says the same`, readFileSync(join(pages, 'potato-muffins.html'), 'utf8').includes('260'));
  walk.check(`${how}: it prints`, (await page.pdf({ format: 'A4' })).length > 10_000);
  const card = await page.request.get(`${house}/publish/potato-muffins/card.pdf`);
  walk.check(`${how}: its card is set on paper`, card.ok() && (await card.body()).subarray(0, 5).toString() === '%PDF-', card.status());
}

async function byKeyboard() {
  const bench = await serve(root, 'main-job-keys/book');
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  const keyboard = new Keyboard(page);
  const file = join(bench.folder, 'formulas/potato-muffins.toml');
  await page.goto(bench.url);
  await keyboard.through('h2 a', title);
  await ready(page);
  await page.waitForSelector('#day svg');
  const [water, rise] = [await figure(page, 'water-0'), await rises(page)];
  await keyboard.to('#g-0-1-milk-whole');
  await keyboard.press('Control+a');
  await page.keyboard.type('260');
  await walk.sees('keyboard: true water follows the milk while it is typed', changes(page, 'water-0', water));
  await keyboard.press('Enter');
  await says(page, '#strokes', 'whole milk: 260 g');
  walk.check('keyboard: the rise follows too', (await rises(page)) !== rise, rise);
  await keyboard.to('#p-0-1-salt');
  await keyboard.press('Control+a');
  await page.keyboard.type('5');
  await page.waitForSelector('#remark-0-1-salt .remark');
  await keyboard.press('Enter');
  await says(page, '#strokes', 'salt');
  await page.screenshot({ path: looks('remark-1280') });
  await keyboard.through('#remark-0-1-salt a', 'why');
  await page.waitForURL(/\/why\//u);
  walk.check('keyboard: why the remark came is told with its grounds', (await page.textContent('main')).length > 200);
  await keyboard.through('main.why a', 'Back to the sheet');
  await ready(page);
  await page.waitForSelector('#remark-0-1-salt .remark');
  await keyboard.press('Control+z');
  await page.waitForSelector('#remark-0-1-salt', { state: 'detached' });
  walk.check('keyboard: Ctrl-Z takes it back, and the remark goes', (await page.inputValue('#p-0-1-salt')) === '2.4');
  await page.goto(page.url());
  await ready(page);
  await keyboard.through('nav.ways a', 'Exchange');
  await page.waitForURL(/\/exchange/u);
  await keyboard.through('nav.choices a', 'Leaven');
  await page.waitForURL(/exchange=leaven/u);
  await keyboard.to('select[name=into]');
  walk.check('keyboard: a culture is offered', (await page.inputValue('select[name=into]')) === 'rye-culture', await page.inputValue('select[name=into]'));
  await keyboard.through('form button', 'Show what changes');
  await page.waitForSelector('#made');
  await keyboard.through('.keeping button', 'Write it into this formula');
  await ready(page);
  await exchanged(page, file, 'keyboard');
  await keyboard.through('nav.ways a', 'Plan the day');
  await page.waitForURL(/\/day\?/u);
  await keyboard.to('input[name=serve]');
  await page.keyboard.type(`${day.month}${day.day}${day.year}`);
  await keyboard.press('ArrowRight');
  await page.keyboard.type('0930AM');
  await keyboard.press('Enter');
  await page.waitForURL(new RegExp(`serve=${day.year}-${day.month}-${day.day}`, 'u'));
  walk.check('keyboard: it is on the table at half past nine', (await page.textContent(served)).includes('09:30'), await page.textContent(served));
  await page.screenshot({ path: looks('day-1280') });
  await keyboard.through('header nav a', 'Publish');
  await page.waitForURL(/\/publish/u);
  await keyboard.through('form button', 'Publish the book');
  await page.waitForURL(/told=/u, { timeout: 300_000 });
  await keyboard.through('[role=status] a', 'Open the pages');
  await page.waitForURL(/\/published\//u);
  await keyboard.through('a', title);
  await page.waitForURL(/potato-muffins/u);
  await printed(page, 'keyboard', bench.url, bench.folder);
  walk.check('keyboard: it shows at every stop where one is, nothing holds it, and it goes from above downwards', keyboard.faint.length === 0, keyboard.faint);
  console.log(`      ${keyboard.keys} keys`);
  await context.close();
  await bench.close();
}

/** What a thumb would miss: everything that is tapped and is smaller than 44 px, but for links within a sentence. */
const small = () => {
  const inSentence = (one) => one.nodeName === 'A' && getComputedStyle(one).display === 'inline' && one.parentElement.textContent.trim().length > one.textContent.trim().length;
  const all = [...document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary')];
  const seen = all.filter((one) => one.checkVisibility() && !one.closest('.skip, svg') && !(one.closest('details:not([open])') && !one.matches('summary')));
  const box = (one) => (one.matches('[type=checkbox], [type=radio]') ? (one.closest('label') ?? one) : one).getBoundingClientRect();
  return seen.filter((one) => !inSentence(one) && (box(one).width < 43.5 || box(one).height < 43.5)).map((one) => `${one.nodeName} ${one.id || one.name || one.textContent.trim().slice(0, 30)} ${Math.round(box(one).width)}×${Math.round(box(one).height)}`);
};

async function byThumb(colorScheme) {
  const bench = await serve(root, 'main-job-thumb/book');
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true, colorScheme, reducedMotion: 'reduce', bypassCSP: true });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  const file = join(bench.folder, 'formulas/potato-muffins.toml');
  const how = `thumb, ${colorScheme}`;
  const seen = async (name) => {
    const found = await page.evaluate(small);
    walk.check(`${how}: a thumb meets everything on ${name}`, found.length === 0, found);
    const amiss = await judged(page);
    walk.check(`${how}: ${name} is accessible`, amiss.length === 0, amiss);
    await page.screenshot({ path: looks(`${name}-390-${colorScheme}`), fullPage: true });
  };
  const tap = (words, within = 'main') => page.locator(within).locator('a, button', { hasText: words }).first().tap();
  await page.goto(bench.url);
  await seen('book');
  await tap(title);
  await ready(page);
  await page.waitForSelector('#day svg');
  await seen('sheet');
  const water = await figure(page, 'water-0');
  await page.locator('#g-0-1-milk-whole').tap();
  await page.fill('#g-0-1-milk-whole', '260');
  await changes(page, 'water-0', water);
  await page.locator('h1').tap();
  await page.locator('#g-0-1-milk-whole').blur();
  await says(page, '#strokes', 'whole milk: 260 g');
  await page.locator('#p-0-1-salt').tap();
  await page.fill('#p-0-1-salt', '5');
  await page.waitForSelector('#remark-0-1-salt .remark');
  await page.locator('#p-0-1-salt').blur();
  await says(page, '#strokes', 'salt');
  await page.locator('#remark-0-1-salt a').first().tap();
  await page.waitForURL(/\/why\//u);
  await seen('why');
  await tap('Back to the sheet');
  await ready(page);
  await tap('Undo');
  await walk.sees(`${how}: a remark comes, says why, and goes with Undo`, page.waitForSelector('#remark-0-1-salt', { state: 'detached' }));
  await tap('Exchange', 'nav.ways');
  await page.waitForURL(/\/exchange/u);
  await tap('Leaven');
  await page.waitForURL(/exchange=leaven/u);
  await seen('exchange');
  await tap('Show what changes');
  await page.waitForSelector('#made');
  await seen('exchanged');
  await tap('Write it into this formula');
  await ready(page);
  await exchanged(page, file, how);
  await tap('Plan the day', 'nav.ways');
  await page.waitForURL(/\/day\?/u);
  await page.fill('input[name=serve]', `${day.year}-${day.month}-${day.day}T09:30`);
  await tap('Plan it');
  await page.waitForURL(new RegExp(`serve=${day.year}-${day.month}-${day.day}`, 'u'));
  walk.check(`${how}: it is on the table at half past nine`, (await page.textContent(served)).includes('09:30'), await page.textContent(served));
  await seen('day');
  await tap('Publish', 'header');
  await page.waitForURL(/\/publish/u);
  await tap('Publish the book');
  await page.waitForURL(/told=/u, { timeout: 300_000 });
  await seen('publish');
  await tap('Open the pages');
  await page.waitForURL(/\/published\//u);
  await page.locator('a', { hasText: title }).first().tap();
  await page.waitForURL(/potato-muffins/u);
  await printed(page, how, bench.url, bench.folder);
  await context.close();
  await bench.close();
}

await byKeyboard();
await byThumb('light');
await byThumb('dark');
await browser.close();
walk.end();
