// The day's drawing under the hand: steps dragged by mouse and finger, moved by keys, let go, undone; what really
// happened told by a tap; the same by forms where scripts are off; every view of it held to the rules.
import { mkdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { judged } from './judging.mjs';
import { Walk, launch, serve, views } from './serving.mjs';

const root = resolve(process.argv[2] ?? '.');
const walk = new Walk();
const looks = resolve(root, 'target/browser/looks');
mkdirSync(looks, { recursive: true });
const bench = await serve(root, 'timeline-book');
const browser = await launch();
const ahead = `${bench.url}/day?formula=potato-muffins&serve=2026-11-29T11:00&now=2026-11-27+12:00&zone=Europe/Vienna`;
const morning = `${bench.url}/day?formula=potato-muffins&serve=2026-11-29T11:00&now=2026-11-29+08:10&zone=Europe/Vienna`;

async function opened(view, address, act, more = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, reducedMotion: 'reduce', bypassCSP: false, ...view, ...more });
  const page = await context.newPage();
  page.setDefaultTimeout(30000);
  page.on('pageerror', (error) => walk.check('no error in the page', false, error.message));
  page.on('console', (message) => message.type() === 'error' && !message.text().includes('422') && walk.check('nothing to complain of', false, message.text()));
  await page.goto(address);
  await act(page);
  await context.close();
}

/** The bar of a step among the components, by its name. */
const bar = (page, name) => page.locator(`.day-chart a[id][data-name^="${name}"]`).first();
const begin = async (of) => Number(await of.getAttribute('data-begin'));
const changed = (page, address) => page.waitForFunction((address) => location.href !== address && !document.querySelector('main').hasAttribute('aria-busy'), address);
const told = (page, words) => page.waitForFunction((words) => document.querySelector('#happened').textContent.includes(words), words);

/** How many points of the screen a minute is, and where a bar's middle lies. */
async function grip(page, of) {
  await of.scrollIntoViewIfNeeded();
  const box = await of.locator('rect').first().boundingBox();
  const scale = await page.evaluate(() => document.querySelector('.day-chart svg').getScreenCTM().a);
  return { x: box.x + Math.min(box.width / 2, 12), y: box.y + box.height / 2, minute: 2.1 * scale };
}

// By mouse.
await opened({}, ahead, async (page) => {
  const griddle = bar(page, 'griddle');
  const before = await begin(griddle);
  const served = await page.textContent('#served');
  const mix = await begin(bar(page, 'mix, Potato muffins: potato dough'));
  const { x, y, minute } = await grip(page, griddle);
  const address = page.url();
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (const share of [0.3, 0.6, 1]) await page.mouse.move(x + 20 * minute * share, y);
  walk.check('the hour stands above a bar that is dragged', /^\d\d:\d\d$/.test(await page.textContent('.day-chart text.when')));
  await page.screenshot({ path: resolve(looks, 'timeline-dragging.png') });
  await page.mouse.up();
  await changed(page, address);
  walk.check('a step that is dragged is fixed there', (await begin(griddle)) === before + 20, (await begin(griddle)) - before);
  walk.check('and the rest is planned around it', (await begin(bar(page, 'mix, Potato muffins: potato dough'))) === mix + 20 && (await page.textContent('#served')) !== served);
  walk.check('it is told what moved', /fixed at \d\d:\d\d\..*other steps move/.test(await page.textContent('#happened')), await page.textContent('#happened'));
  walk.check('the wish stands in the address', decodeURIComponent(page.url()).includes('at=potato-muffins/griddling/3=2026-11-29 '), page.url());
  walk.check('a held step shows that it is held', (await griddle.locator('.fixed').count()) === 1 && (await page.locator('ol.tasks li', { hasText: 'fixed at' }).count()) === 1);
  walk.check('what is in the way is told', (await page.textContent('.planned > section')).includes('These stand against each other'));
  for (const words of await judged(page)) walk.check('a fixed day', false, words);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.waitForFunction((address) => location.href === address && document.querySelector('.day-chart .fixed') === null, address);
  walk.check('undone, it is as it was', (await begin(griddle)) === before && (await page.textContent('#served')) === served);
  await page.getByRole('button', { name: 'Redo' }).click();
  await page.waitForSelector('.day-chart .fixed');
  await page.getByRole('link', { name: /^let go/ }).click();
  await page.waitForFunction(() => document.querySelector('.day-chart .fixed') === null);
  walk.check('let go, it moves again', (await begin(griddle)) === before);
  await page.keyboard.press('Control+z');
  await walk.sees('the keyboard undoes as well', page.waitForSelector('.day-chart .fixed'));
});

// A click on a bar still leads to its step.
await opened({}, ahead, async (page) => {
  await bar(page, 'griddle').click();
  walk.check('a click leads to the step', await page.evaluate(() => location.hash.startsWith('#tell-')));
});

// By keys alone.
await opened({}, ahead, async (page) => {
  const mix = bar(page, 'mix, Potato muffins: overnight sponge');
  await mix.focus();
  const before = await begin(mix);
  walk.check('a bar is a slider with a name and an hour', (await mix.getAttribute('role')) === 'slider' && /^\d\d:\d\d$/.test(await mix.getAttribute('aria-valuetext')));
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('PageDown');
  walk.check('the hour is told while it moves', /instead of/.test(await mix.getAttribute('aria-valuetext')), await mix.getAttribute('aria-valuetext'));
  await page.keyboard.press('Escape');
  walk.check('Escape lets it be', Number(await mix.getAttribute('aria-valuenow')) === before);
  const address = page.url();
  for (const key of ['ArrowLeft', 'ArrowLeft', 'PageDown', 'Enter']) await page.keyboard.press(key);
  await changed(page, address);
  walk.check('keys fix a step', (await begin(mix)) === before - 40, (await begin(mix)) - before);
  walk.check('and the focus stays on it', await page.evaluate(() => document.activeElement?.closest('a')?.dataset.name?.startsWith('mix, Potato muffins: overnight')));
});

// A finger on a phone.
await opened({ viewport: { width: 390, height: 844 } }, ahead, async (page) => {
  const whip = bar(page, 'whip');
  const before = await begin(whip);
  const { x, y, minute } = await grip(page, whip);
  const touch = await page.context().newCDPSession(page);
  const send = (type, x) => touch.send('Input.dispatchTouchEvent', { type, touchPoints: x === null ? [] : [{ x, y }] });
  const address = page.url();
  await send('touchStart', x);
  for (const share of [0.25, 0.5, 0.75, 1]) await send('touchMove', x - 30 * minute * share);
  await send('touchEnd', null);
  await changed(page, address);
  walk.check('a finger drags a step', (await begin(whip)) === before - 30, (await begin(whip)) - before);
}, { hasTouch: true, isMobile: true });

// What really happened, by a tap.
await opened({ viewport: { width: 390, height: 844 } }, morning, async (page) => {
  const small = await page.$$eval('ol.tasks button', (all) => all.filter((one) => one.offsetParent && one.offsetHeight < 44).map((one) => one.textContent));
  walk.check('buttons are large enough for a thumb', small.length === 0, small);
  const address = page.url();
  const task = page.locator('ol.tasks li', { hasText: 'mix · Potato muffins: potato dough' });
  await task.getByRole('button', { name: /^Done now/ }).click();
  await changed(page, address);
  walk.check('a tap tells that a step is done', decodeURIComponent(page.url()).includes('done=potato-muffins/dough/2=2026-11-29 08:10'), page.url());
  const bulk = page.locator('ol.tasks li', { hasText: 'bulk' });
  walk.check('what follows at once goes on', (await bulk.getByRole('button', { name: /^Begun now/ }).count()) === 0 && (await bulk.locator('b').textContent()).startsWith('08:10'));
  walk.check('what goes on is not moved', (await bar(page, 'bulk').getAttribute('data-moves')) === null);
  await page.getByRole('link', { name: /^take back/ }).click();
  await walk.sees('and is taken back', page.waitForFunction(() => !document.querySelector('#so-far')));
});

// An impossible wish is named, with what to give up.
await opened({}, ahead, async (page) => {
  const address = page.url();
  const task = page.locator('ol.tasks li', { hasText: 'ferment · Potato muffins' });
  await task.locator('summary').click();
  await task.getByLabel('It begins').selectOption('not-after');
  await task.getByLabel('When').fill('2026-11-27T08:00');
  await task.getByRole('button', { name: 'Fix it' }).click();
  await changed(page, address);
  const words = await page.textContent('.planned > section');
  walk.check('what cannot be is told', /“ferment” of the overnight sponge begins at .*though fixed not after Fri 08:00/.test(words), words.slice(0, 400));
  await task.locator('summary').click().catch(() => {});
});

// Without scripts.
await opened({}, ahead, async (page) => {
  const task = page.locator('ol.tasks li', { hasText: 'griddle at' });
  walk.check('what only a script can do is not offered', !(await page.locator('#moving').isVisible()) && !(await page.getByRole('button', { name: 'Undo' }).isVisible()));
  await task.locator('summary').click();
  await task.getByLabel('It begins').selectOption('not-before');
  await task.getByLabel('When').fill('2026-11-29T10:45');
  await task.getByRole('button', { name: 'Fix it' }).click();
  await page.waitForSelector('#fixed');
  walk.check('a form fixes as well', (await page.textContent('main')).includes('fixed not before 10:45'));
  await page.getByRole('link', { name: /^let go/ }).click();
  await page.waitForFunction(() => !document.querySelector('#fixed')).catch(() => {});
  walk.check('and lets go', !(await page.textContent('main')).includes('fixed not before'));
}, { javaScriptEnabled: false });

// Looked at.
const held = `${ahead}&at=${encodeURIComponent('potato-muffins/griddling/3=2026-11-29 10:30')}&not-before=${encodeURIComponent('potato-muffins/dough/2=2026-11-29 07:15')}`;
for (const view of views) {
  await opened({ viewport: view, colorScheme: view.colorScheme }, held, async (page) => {
    await page.waitForSelector('.day-chart a[role=slider]');
    for (const words of await judged(page)) walk.check(view.name, false, words);
    await page.screenshot({ path: resolve(looks, `timeline-${view.name.replace(/\W+/g, '-')}.png`), fullPage: true });
  }, { bypassCSP: true });
}
await browser.close();
await bench.close();
walk.end();
