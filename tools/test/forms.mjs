// Forms of a book's files, in the browser: what is refused stays as it was typed, with the reason at its field and the
// hand there; what two wrote at once is kept and found; long lists fold; on paper nothing is cut and no box is printed.
import { resolve } from 'node:path';
import { Walk, launch, serve } from './serving.mjs';

const root = process.argv[2] ?? '.';
const [walk, browser, book] = [new Walk(), await launch(), await serve(root, 'forms')];
const page = await (await browser.newContext({ viewport: { width: 390, height: 844 }, reducedMotion: 'reduce' })).newPage();
const write = (one = page) => one.getByRole('button', { name: 'Write it' }).click();

await page.goto(`${book.url}/settings/prices`);
const height = await page.evaluate(() => document.documentElement.scrollHeight);
walk.check('thirty prices fit on a few screens of a telephone', height < 6000, height);
await page.getByLabel('Only rows with').fill('quin');
walk.check('a word sieves them', (await page.locator('details.row:visible').count()) === 1);
await page.locator('details.row:visible summary').click();
const costs = page.locator('details.row:visible input[name$=".costs"]');
await costs.fill('dear');
await page.locator('[name="hour"]').fill('21 EUR');
await write();
await walk.sees('a price that is none is refused', page.waitForSelector('.refused'));
walk.check('in the words of the form', (await page.textContent('.refused')).includes('Price (quince), costs: “dear” is not money'), await page.textContent('.refused'));
walk.check('at its field, with the hand there', await page.evaluate(() => document.activeElement.matches('.refused') && document.activeElement.previousElementSibling.matches('label:has([name$=".costs"])')));
walk.check('everything typed stays', (await costs.inputValue()) === 'dear' && (await page.inputValue('[name="hour"]')) === '21 EUR');
await costs.fill('3,40 €');
await write();
await walk.sees('then it is written, and told', page.getByText('Written: prices changed: hour 21 EUR; quince 3.40 EUR.').waitFor());

const other = await (await browser.newContext()).newPage();
await other.goto(`${book.url}/kitchens/estuary`);
await page.goto(`${book.url}/kitchens/estuary`);
await page.fill('[name="room"]', '20 °C');
await write();
await page.getByText('Written: ').waitFor();
await other.fill('[name="room"]', '17 °C');
await write(other);
await other.getByRole('link', { name: 'What you wanted, and its difference' }).click();
await walk.sees('what came too late is found with its difference', other.getByText('room = "17 °C"').first().waitFor());
await other.getByRole('button', { name: 'Take it up' }).click();
await walk.sees('and taken up', other.getByText('what was kept aside, taken up').first().waitFor());

const paper = await (await browser.newContext({ viewport: { width: 688, height: 980 } })).newPage();
await paper.emulateMedia({ media: 'print' });
const morning = '/day?formula=potato-muffins&serve=2026-11-29T09:30&now=2026-11-27+12:00&zone=Europe/Vienna';
for (const path of [morning, '/formula/potato-muffins', '/formula/potato-muffins/text', '/settings/prices', '/settings/book', '/kitchens/estuary', '/ingredients/milk-whole']) {
  await paper.goto(book.url + path);
  if (path.endsWith('muffins')) await paper.waitForSelector('#day svg');
  const seen = await paper.evaluate(() => {
    const shown = [...document.querySelectorAll('main *')].filter((one) => one.checkVisibility({ visibilityProperty: true }) && !one.closest('svg') && !one.matches('.apart, .apart *'));
    const boxes = shown.filter((one) => one.matches('button, input, textarea, select') && (one.matches('button') || getComputedStyle(one).borderTopStyle !== 'none'));
    const cut = shown.filter((one) => one.getBoundingClientRect().right > innerWidth + 1 || (one.matches('input, textarea') && one.scrollWidth > one.clientWidth + 1));
    return [...boxes, ...cut].map((one) => `${one.nodeName}.${one.className}: ${one.name ?? one.textContent.slice(0, 40)}`);
  });
  walk.check(`${path.split('?')[0]} on paper`, seen.length === 0, seen.slice(0, 6));
  await paper.pdf({ path: resolve(root, 'target/browser/looks', `paper${path.split('?')[0].replaceAll('/', '-')}.pdf`), format: 'A4' });
}
await book.close();
walk.end();
