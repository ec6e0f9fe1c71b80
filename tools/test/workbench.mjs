// The workbench in Chromium: each page opened, its main thing done, judged by axe at phone and desk width in both
// lights, and kept as a picture. Prints what is amiss; ends with 1 if anything is.
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { judged as judgedAlone } from './judging.mjs';
import { launch, serve } from './serving.mjs';

const root = resolve(process.argv[2] ?? '.');
const only = process.argv[3];
const place = resolve(root, 'target/browser/workbench');
rmSync(place, { recursive: true, force: true });
mkdirSync(resolve(place, 'pictures'), { recursive: true });

const findings = [];
const amiss = (where, words) => findings.push(`${where}: ${words}`);
const must = (where, holds, words) => { if (!holds) amiss(where, words); };
const views = [
  { viewport: { width: 390, height: 844 }, colorScheme: 'light' },
  { viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
  { viewport: { width: 1280, height: 900 }, colorScheme: 'light' },
  { viewport: { width: 1280, height: 900 }, colorScheme: 'dark' },
];

/** The real program on a copy of a book, until `act` is done. */
async function served(name, from, act) {
  const { url, close } = await serve(root, `workbench/${name}`, { from });
  try { await act(url); } finally { await close(); }
}

async function opened(browser, view, address, act) {
  const context = await browser.newContext({ ...view, reducedMotion: 'reduce' });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  const where = () => new URL(page.url()).pathname;
  page.on('pageerror', (error) => amiss(where(), error.message));
  page.on('console', (message) => { if (message.type() === 'error') amiss(where(), `console: ${message.text()}`); });
  try {
    await page.goto(address);
    await act(page);
  } finally { await context.close(); }
}

async function judged(page, name) {
  const { width } = page.viewportSize();
  const light = await page.evaluate(() => (matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light'));
  const where = `${name}, ${width} px, ${light}`;
  for (const words of await judgedAlone(page)) amiss(where, words);
  await page.screenshot({ path: resolve(place, 'pictures', `${name}-${width}-${light}.png`), fullPage: true });
}

/** A page in every view. */
async function looked(browser, address, name, act = async () => {}) {
  for (const view of views) {
    await opened(browser, view, address, async (page) => { await act(page); await judged(page, name); });
  }
}

const demo = 'examples/saltmarsh';

async function book(browser) {
  await served('book', demo, async (address) => {
    await looked(browser, address, 'book');
    await opened(browser, views[0], address, async (page) => {
      await page.getByLabel('Find by title, tag or ingredient').fill('cardamom');
      await page.keyboard.press('Enter');
      await page.waitForURL(/words=cardamom/);
      must('book', await page.locator('ul.index > li').count() === 1, 'finds more or less than the knots');
      await page.getByLabel('What it is called').fill('Seeded rye buns');
      await page.getByRole('button', { name: 'Begin' }).click();
      await page.waitForURL(/\/formula\/seeded-rye-buns/);
      must('book', await page.locator('h1').textContent() === 'Seeded rye buns', 'the new formula is not opened');
    });
  });
}

async function tour(browser) {
  await served('tour', null, async (address) => {
    await looked(browser, address, 'empty');
    await opened(browser, views[2], address, async (page) => {
      await page.getByRole('button', { name: 'Lay the demo book here' }).click();
      await page.waitForURL(/\/tour/);
      must('tour', await page.locator('ol.steps > li').count() === 5, 'has not five steps');
    });
    await looked(browser, `${address}/tour`, 'tour');
  });
}

async function exchange(browser) {
  await served('exchange', demo, async (address) => {
    const page = `${address}/formula/potato-muffins/exchange`;
    await looked(browser, page, 'exchange');
    await looked(browser, page, 'exchanged', async (here) => {
      await here.getByRole('link', { name: 'Leaven', exact: true }).click();
      await here.getByLabel('Into').selectOption('rye-culture');
      await here.getByRole('button', { name: 'Show what changes' }).click();
      await here.getByRole('heading', { name: 'Before and after' }).waitFor();
    });
    await looked(browser, `${page}?target=yeast&stage=sponge&ripe-after=10&ask=yes`, 'target');
    await opened(browser, views[0], `${page}?exchange=leaven&into=rye-culture&ask=yes`, async (here) => {
      await here.getByRole('button', { name: 'Write it into this formula' }).click();
      await here.getByRole('button', { name: 'Undo' }).click();
      await here.getByText('Nothing changed yet').waitFor();
    });
  });
}

async function day(browser) {
  await served('day', demo, async (address) => {
    await looked(browser, `${address}/day`, 'day-empty');
    const morning = `${address}/day?formula=potato-muffins&serve=2026-11-29T09:30&now=2026-11-29+06:40&zone=Europe/Vienna`;
    const begun = encodeURIComponent('potato-muffins/dough/mix=2026-11-29 06:25');
    const going = `${morning}&done=${begun}`;
    await looked(browser, going, 'day', (page) => page.getByRole('heading', { name: 'What is in the way' }).waitFor());
    await opened(browser, views[2], going, async (page) => {
      await page.locator('.day-chart a').filter({ hasText: 'bulk' }).first().click();
      const form = page.locator('form:target');
      await form.getByLabel('It is').selectOption('risen');
      await form.getByLabel('So much').fill('30');
      await form.getByLabel('At (now').fill('06:40');
      await form.getByRole('button').click();
      await page.getByText('Seen: the potato dough risen by 30 %').waitFor();
      must('day', await page.getByRole('link', { name: /take back/ }).count() === 2, 'what was told cannot be taken back');
    });
    const list = going.replace('/day?', '/day/prep?');
    await looked(browser, list, 'day-prep');
    await looked(browser, going.replace('/day?', '/day/shopping?'), 'day-shopping');
    await opened(browser, views[0], going.replace('/day?', '/day/prep?'), async (page) => {
      must('day', (await page.pdf({ format: 'A4' })).length > 1000, 'cannot be printed');
    });
    const ahead = `${address}/day?formula=potato-muffins&serve=2026-11-29T09:30&now=2026-11-27+12:00&zone=Europe/Vienna&ways=yes`;
    await looked(browser, ahead, 'day-ways', (page) => page.getByText('Risen long and cold').waitFor());
  });
}

/** Writes a formula's text as its text view does. */
async function write(page, address, text, from) {
  const token = await page.locator('meta[name=token]').getAttribute('content');
  return page.request.post(`${address}/formula/cardamom-knots/text`, { form: { token, text, from }, maxRedirects: 0, headers: { origin: address } });
}

async function history(browser) {
  await served('history', demo, async (address) => {
    const past = `${address}/formula/cardamom-knots/history`;
    await opened(browser, views[0], past, async (page) => {
      await page.getByLabel('Why it was changed').fill('as it was first');
      await page.getByRole('button', { name: 'Save it' }).click();
      await page.getByText('Saved as revision 1.').waitFor();
      await page.goto(`${address}/formula/cardamom-knots/text`);
      const from = await page.locator('input[name=from]').inputValue();
      const text = await page.locator('#text').inputValue();
      await write(page, address, text.replace('title = "Cardamom knots with almond butter"', 'title = "Knots"'), from);
      await write(page, address, `${text}# what somebody else wanted\n`, from);
    });
    await looked(browser, past, 'history');
    await looked(browser, `${past}?at=aside-1`, 'history-difference');
    await looked(browser, `${address}/formula/cardamom-knots/compare?with=revision-1&with=formula-potato-muffins`, 'compare');
    await opened(browser, views[2], past, async (page) => {
      await page.getByRole('link', { name: /Kept aside/ }).click();
      await page.getByRole('button', { name: 'Take it up again' }).click();
      await page.getByRole('button', { name: 'Undo' }).waitFor();
      must('history', (await page.locator('h1').textContent()).startsWith('Cardamom'), 'does not take up what was kept aside');
    });
  });
}

async function kitchens(browser) {
  await served('kitchens', demo, async (address) => {
    await looked(browser, `${address}/kitchens`, 'kitchens');
    await looked(browser, `${address}/kitchens/estuary`, 'kitchen');
    await opened(browser, views[0], `${address}/kitchens/estuary`, async (page) => {
      await page.getByRole('textbox', { name: 'Room', exact: true }).fill('19 °C');
      await page.getByRole('button', { name: 'Write it' }).click();
      await page.getByText('Last: kitchen changed').waitFor();
      must('kitchens', readFileSync(resolve(place, 'kitchens/kitchens/estuary.toml'), 'utf8').includes('room = "19 °C"'), 'does not write the room');
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.waitForFunction(() => document.querySelector('[name="room"]').value === '22 °C');
    });
  });
}

async function ingredients(browser) {
  await served('ingredients', demo, async (address) => {
    await looked(browser, `${address}/ingredients?words=flour`, 'ingredients');
    await looked(browser, `${address}/ingredients/mill-strong-white`, 'ingredient');
    await opened(browser, views[2], `${address}/ingredients`, async (page) => {
      await page.getByLabel('What readers see').fill('Spelt from the bag');
      await page.getByLabel('Like', { exact: true }).fill('flour-strong-white');
      await page.getByLabel('Where its figures come from').fill('the bag, lot of November');
      await page.getByRole('button', { name: 'Add it' }).click();
      await page.waitForURL(/spelt-from-the-bag/);
      await page.locator('[name="per-100-g"]').fill('protein = 13.4');
      await page.getByRole('button', { name: 'Write it' }).click();
      await page.getByText('Last: spelt-from-the-bag changed').waitFor();
    });
  });
}

async function publish(browser) {
  await served('publish/book', demo, async (address) => {
    await opened(browser, views[2], `${address}/publish`, async (page) => {
      await page.getByLabel('A note for the record').fill('the winter edition');
      await page.getByRole('button', { name: 'Publish the book' }).click();
      await page.getByRole('status').filter({ hasText: 'Published: ' }).waitFor();
      await page.getByRole('link', { name: 'Open the pages', exact: true }).click();
      await page.getByRole('link', { name: /Griddled potato muffins/ }).first().click();
      await page.locator('h1').waitFor();
      must('publish', (await page.locator('h1').textContent()).includes('Griddled potato muffins'), 'the published page is not shown');
      await page.evaluate(() => { location.hash = 'room=18'; });
      must('publish', await page.evaluate(() => { try { return !localStorage; } catch { return true; } }), 'the published page is not kept apart');
    });
    await looked(browser, `${address}/publish`, 'publish');
    await looked(browser, `${address}/publish/potato-muffins/cost`, 'cost');
  });
}

const pages = { book, tour, exchange, day, history, kitchens, ingredients, publish };
const browser = await launch();
for (const [name, walk] of Object.entries(pages)) {
  if (only && only !== name) continue;
  const before = findings.length;
  try { await walk(browser); } catch (error) { amiss(name, error.message); }
  process.stdout.write(`${name}: ${findings.length === before ? 'holds' : 'amiss'}\n`);
}
await browser.close();
for (const one of findings) process.stderr.write(`${one}\n`);
process.exit(findings.length > 0 ? 1 : 0);
