// A formula shaped by hand in the workbench: typed, undone, moved, mended, changed by another program meanwhile.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Walk, findings, launch, reopen, serve } from './serving.mjs';

const root = process.argv[2];
const walk = new Walk();
let bench = await serve(root, 'bench-book');
const file = join(bench.folder, 'formulas/potato-muffins.toml');
const before = readFileSync(file, 'utf8');
const text = () => readFileSync(file, 'utf8');
const browser = await launch();
const open = async (path = '/formula/potato-muffins') => {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
  await page.goto(bench.url + path);
  if (!path.endsWith('/text')) await page.waitForSelector('#glance-water-0');
  return page;
};
const figure = (page, key) => page.textContent(`#glance-${key} .figure`);
const becomes = (page, selector, value) => page.waitForFunction(([one, wanted]) => document.querySelector(one)?.value === wanted || document.querySelector(one)?.textContent.includes(wanted), [selector, value]);

let page = await open();
const water = await figure(page, 'water-0');

// Typed: the figures follow before anything is written.
await page.fill('#g-0-1-milk-whole', '260');
await becomes(page, '#p-0-1-milk-whole', '65');
const tried = await figure(page, 'water-0');
walk.check('the percentage follows the weight while it is typed', true);
walk.check('the true water follows while milk is typed', tried !== water, tried);
walk.check('nothing is written while it is typed', text() === before);

// Left: written, as typed, and nothing else.
await page.press('#g-0-1-milk-whole', 'Enter');
await becomes(page, '#strokes', 'whole milk: 260 g');
walk.check('what was typed is written, and nothing else', text() === before.replace('amount = "45 %", temperature = "4 °C" }', 'amount = "260 g", temperature = "4 °C" }'), text());

// A percentage: the weight follows; the remark stands at its line with a reason.
await page.fill('#p-0-1-salt', '5');
await page.waitForSelector('#remark-0-1-salt .remark');
walk.check('a remark stands at the very line', (await page.textContent('#remark-0-1-salt')).toLowerCase().includes('salt'));
const why = await page.getAttribute('#remark-0-1-salt a', 'href');
await page.press('#p-0-1-salt', 'Escape');
await page.waitForSelector('#remark-0-1-salt', { state: 'detached' });
walk.check('Escape takes back what is being typed', (await page.inputValue('#p-0-1-salt')) === '2.4', await page.inputValue('#p-0-1-salt'));
const reason = await open('/formula/potato-muffins');
await reason.goto(bench.url + why);
walk.check('the reason is one click away', (await reason.locator('h1').count()) === 1);
await reason.close();

// What cannot be read is marked and not written.
await page.fill('#g-0-1-milk-whole', 'plenty');
await page.waitForSelector('#g-0-1-milk-whole[aria-invalid=true]');
await page.press('#g-0-1-milk-whole', 'Enter');
await page.waitForSelector('.refused');
walk.check('what is no amount is refused in words', (await page.textContent('.refused')).includes('plenty'));
await page.press('#g-0-1-milk-whole', 'Escape');

// By keyboard alone: undo, and again.
await page.locator('#strokes button').first().focus();
await page.keyboard.press('Control+z');
await becomes(page, '#g-0-1-milk-whole', '180');
walk.check('Ctrl-Z gives the file back byte by byte', text() === before);
await page.keyboard.press('Control+y');
await becomes(page, '#g-0-1-milk-whole', '260');

// Also after the next start.
await page.context().close();
walk.check('it closes at once and without complaint', (await bench.close()) === 0);
bench = { folder: bench.folder, ...(await reopen(root, bench.folder)) };
page = await open();
await page.click('#strokes [data-way=back]');
await becomes(page, '#g-0-1-milk-whole', '180');
walk.check('a stroke is undone after the next start', text() === before);

// The room by one gesture.
const ripe = await figure(page, 'rise-0-0');
await page.fill('form[data-kitchen] [name=room]', '18');
await page.press('form[data-kitchen] [name=room]', 'Enter');
await page.waitForFunction((old) => document.querySelector('#glance-rise-0-0 .figure')?.textContent !== old, ripe);
walk.check('a colder room gives later times at once', page.url().includes('room=18'));
await page.fill('form[data-kitchen] [name=room]', '');
await page.press('form[data-kitchen] [name=room]', 'Enter');

// Lines: held, moved, added, taken out; each by its own button.
await page.click('#hold-0-1-salt');
await becomes(page, '#strokes', 'holds its weight');
walk.check('a line holds its weight', text().includes('salt = "9.6 g"'));
await page.click('#down-0-1-salt');
await becomes(page, '#strokes', 'moved down');
await page.fill('#add-0-1', 'caraway');
await page.fill('#much-0-1', '4 g');
await page.press('#much-0-1', 'Enter');
await page.waitForSelector('#line-0-1-caraway');
await page.click('#out-0-1-caraway');
await page.waitForSelector('#line-0-1-caraway', { state: 'detached' });
for (const wanted of ['taken out', 'added', 'moved down', 'holds its weight']) {
  await becomes(page, '#strokes', wanted);
  await page.click('#strokes [data-way=back]');
}
await becomes(page, '#strokes', 'Nothing changed');
walk.check('four strokes undone give the file back byte by byte', text() === before);

// Another program writes meanwhile: it is shown, and can be undone.
writeFileSync(file, before.replace('milk-whole = { amount = "45 %"', 'milk-whole = { amount = "50 %"'));
await becomes(page, '#g-0-1-milk-whole', '200');
walk.check('what another program writes is shown', true);
await page.fill('#g-0-1-milk-whole', '210');
await page.press('#g-0-1-milk-whole', 'Enter');
await becomes(page, '#strokes', '210 g');
await page.click('#strokes [data-way=back]');
await becomes(page, '#strokes', 'changed by another program');
await page.click('#strokes [data-way=back]');
await becomes(page, '#g-0-1-milk-whole', '180');
walk.check('what another program wrote can be undone too', text() === before);

// Two people: both see it; neither overwrites the other's text unseen.
const other = await open();
await other.fill('#g-0-1-milk-whole', '190');
await other.press('#g-0-1-milk-whole', 'Enter');
await becomes(page, '#g-0-1-milk-whole', '190');
walk.check('what one does the other sees', true);
const [mine, theirs] = [await open('/formula/potato-muffins/text'), await open('/formula/potato-muffins/text')];
const now = await mine.inputValue('#text');
walk.check('the text view shows the file', now === text());
await mine.fill('#text', now.replace('best on the day', 'best at once'));
await mine.click('form[data-text] button');
await becomes(mine, '#saved', 'saved');
await theirs.fill('#text', now.replace('best on the day', 'best tomorrow'));
await theirs.click('form[data-text] button');
await theirs.waitForSelector('.refused');
walk.check('a text that was changed meanwhile is not overwritten', text().includes('best at once') && !text().includes('best tomorrow'));
await theirs.fill('#text', `${now}\nodd = `);
await theirs.waitForSelector('#remarks .remark.error');
walk.check('the text view proof-reads while it is typed', true);

for (const path of ['/', '/formula/potato-muffins', '/formula/potato-muffins/text', '/formula/cider-apple-fritters', why]) {
  const found = await findings(browser, bench.url + path, { looks: join(root, 'target/browser/looks', path.replace(/\W+/g, '-')) });
  walk.check(`${path} is accessible at every width, light and dark`, found.length === 0, found);
}

// With scripts off the sheet can be read.
const plain = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
await plain.goto(`${bench.url}/formula/potato-muffins`);
walk.check('with scripts off the sheet can be read', (await plain.inputValue('#g-0-1-milk-whole')) === '190');

await browser.close();
await bench.close();
walk.end();
