// From the plan of a trial to the claim on the page, as a newcomer to the demo book goes: batches drawn and kept as
// drafts, labels printed, what was tasted read, and the page that readers will see.
import { readFileSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Walk, findings, launch, serve } from './serving.mjs';

const root = process.argv[2];
const walk = new Walk();
const browser = await launch();
const bench = await serve(root, 'planning-book');
const page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
const looks = (name) => resolve(root, `target/browser/looks/${name}`);

await page.goto(`${bench.url}/trials`);
await page.click('text=Plan a trial of several batches');
await page.fill('[name=factors]', 'yeast = 0.5 %, 1 %\nwater = 65 %, 70 %');
await page.fill('[name=seed]', '7');
await page.selectOption('[name=formula]', 'cardamom-knots');
await page.fill('[name=begin]', '2026-12-01');
await page.click('text=Draw the plan');
const codes = await page.locator('td.bowl').allTextContents();
walk.check('every combination is drawn once, under a code of its own', codes.length === 4 && new Set(codes).size === 4 && codes.every((code) => /^\d{3}$/.test(code)), codes);
walk.check('the plan says how many must taste', (await page.textContent('main')).includes('takes 23 tasters'));
const plan = new URL(page.url());
const sheet = await (await browser.newContext()).newPage();
await sheet.goto(`${bench.url}${await page.getAttribute('text=The sheet to print', 'href')}`);
const labels = await sheet.locator('.bowls li').allTextContents();
walk.check('the sheet has a label for each bowl, and its day’s batches', labels.sort().join() === [...codes].sort().join(), labels);
await sheet.emulateMedia({ media: 'print' });
await sheet.screenshot({ path: looks('plan-sheet-print.png'), fullPage: true });
await page.click('text=Keep it');
await page.waitForURL(`${bench.url}/trials`);
const drafts = readdirSync(join(bench.folder, 'trials')).filter((file) => file.startsWith('2026-12-01-bowl-'));
walk.check('each batch is a draft of a trial', codes.every((code, at) => drafts.includes(`2026-12-01-bowl-0${at + 1}-${code}.toml`)), drafts);
walk.check('it says its levels', /yeast (0\.5|1) %/.test(readFileSync(join(bench.folder, 'trials', drafts[0]), 'utf8')));
await page.click(`text=Bowl ${codes[0]}`);
walk.check('and is logged at the bench', (await page.getAttribute('main', 'data-trial')) === `2026-12-01-bowl-01-${codes[0]}`);
await page.goto(plan.href);
await page.click('text=Keep it');
walk.check('nothing is written over', (await page.textContent('#refusal')).includes('is there already'));

await page.goto(`${bench.url}/tastings/softer-muffins`);
await page.click('text=What was found');
walk.check('the demo’s evidence comes from the raw data beside it', (await page.textContent('main')).includes('p = 0.026'));
await page.goto(`${bench.url}/formula/potato-muffins/page`);
const claims = await page.locator('section.evidence').textContent();
walk.check('the page as readers will see it claims what was found, and what was not', claims.includes('“sponge of 16 hours” was softer than “sponge of 12 hours”') && claims.includes('were not told apart'), claims);
await page.locator('section.evidence').screenshot({ path: looks('claims-phone.png') });
await page.locator('section.evidence a').first().click();
walk.check('each claim leads to its evidence', (await page.textContent('h1')).includes('How long the sponge stands'));
await page.emulateMedia({ media: 'print' });
await page.screenshot({ path: looks('evidence-print.png'), fullPage: true });

for (const [name, path] of Object.entries({ plan: plan.pathname + plan.search, trials: '/trials', tasting: '/tastings/softer-muffins', evidence: '/tastings/softer-muffins/evidence' })) {
  const found = await findings(browser, bench.url + path, { looks: looks(`planning-${name}`) });
  walk.check(`${name} holds at every width and look`, found.length === 0, found);
}
await bench.close();
await browser.close();
walk.end();
