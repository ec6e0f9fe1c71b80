// The reader's page in use: its controls, timers and the view from across the room judged by axe at every width and in
// both lights, used by keyboard alone, printed, and fed with hostile words and addresses.
import { cpSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { judged as judgedAlone } from './judging.mjs';

const root = resolve(process.argv[2] ?? '.');
const place = resolve(root, 'target/browser/looks');
rmSync(place, { recursive: true, force: true });
mkdirSync(place, { recursive: true });
const publish = (book, out) => execFileSync(resolve(root, 'target/debug/wellproved'), ['publish', book, '--out', out], { stdio: 'ignore' });
publish(resolve(root, 'examples/saltmarsh'), resolve(place, 'site'));
const address = (folder, name, hash = '') => pathToFileURL(resolve(place, folder, `${name}.html`)).href + hash;

const findings = [];
const amiss = (where, words) => findings.push(`${where}: ${words}`);
const must = (where, holds, words) => { if (!holds) amiss(where, words); };

async function judged(page, where) {
  for (const words of await judgedAlone(page)) amiss(where, words);
}

async function opened(browser, view, go, act) {
  const context = await browser.newContext(view);
  const page = await context.newPage();
  page.setDefaultTimeout(20000);
  page.on('pageerror', (error) => amiss(go, error.message));
  page.on('console', (message) => amiss(go, `console: ${message.text()}`));
  page.on('dialog', (dialog) => { amiss(go, `a window says ${dialog.message()}`); dialog.dismiss(); });
  await page.goto(go);
  await act(page);
  await context.close();
}

const openAll = async (page) => { for (const one of await page.locator('#kitchen summary').all()) await one.click(); };
const views = [
  { viewport: { width: 320, height: 640 }, colorScheme: 'light' },
  { viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
  { viewport: { width: 1280, height: 900 }, colorScheme: 'light' },
  { viewport: { width: 1280, height: 900 }, colorScheme: 'dark' },
];
const lists = ['index.html', 'tags.html', 'ingredients.html'];
const names = readdirSync(resolve(place, 'site')).filter((file) => file.endsWith('.html') && !file.endsWith('.evidence.html') && !lists.includes(file)).map((file) => file.replace('.html', ''));

async function look(browser, name) {
  for (const view of views) {
    const where = `${name}, ${view.viewport.width} px, ${view.colorScheme}`;
    await opened(browser, { ...view, reducedMotion: 'reduce' }, address('site', name, '#room=18&times=2.5&serve=09:30&amounts=spoons&degrees=f'), async (page) => {
      await openAll(page);
      if (await page.locator('[name="way"]').count() > 1) await page.locator('[name="way"]').nth(1).check();
      if (await page.locator('[name="tin"]').count() > 0) await page.locator('[name="tin"]').selectOption('box');
      await page.locator('.tick').first().check();
      await judged(page, `${where}, controls`);
      const timers = page.locator('main .do button');
      for (let n = 0; n < Math.min(3, await timers.count()); n += 1) await timers.nth(n).click();
      await judged(page, `${where}, timers`);
      await page.locator('#across').click();
      await judged(page, `${where}, from across the room`);
      const moving = await page.evaluate(() => document.getAnimations().length);
      must(where, moving === 0, `${moving} things move where less motion is wished`);
    });
  }
}

/// What is chosen is in the address, comes back from it, and timers go on.
async function keptInTheAddress(browser) {
  const where = 'the address';
  await opened(browser, views[1], address('site', 'potato-muffins'), async (page) => {
    await openAll(page);
    await page.locator('[name="pieces"]').fill('24');
    await page.locator('[name="serve"]').fill('09:30');
    await page.locator('.needs .tick').nth(2).check();
    const timers = page.locator('main .do button');
    await timers.nth(0).click();
    await timers.nth(1).click();
    must(where, await page.locator('#timers li').count() === 2, 'two timers do not run at once');
    const before = await page.locator('.needs').innerText();
    await page.reload();
    must(where, await page.locator('#timers li').count() === 2, 'timers are lost when the page is read again');
    must(where, await page.locator('.needs .tick').nth(2).isChecked(), 'a tick is lost');
    must(where, await page.locator('[data-makes]').innerText() === '24\u00a0muffins', 'the batch is lost');
    must(where, await page.locator('.needs').innerText() === before, 'amounts differ');
    await page.locator('#afresh').click();
    must(where, await page.locator('[data-makes]').innerText() === '12\u00a0muffins', 'it is not as published again');
    must(where, await page.locator('#timers li').count() === 2, 'timers stop where only the batch was put back');
  });
}

/// The room is moved, a step is timed, and the view is gone through, all without a mouse.
async function byKeyboard(browser) {
  const where = 'by keyboard';
  await opened(browser, views[2], address('site', 'potato-muffins', '#room=23'), async (page) => {
    const reach = async (which) => {
      for (let n = 0; n < 60; n += 1) {
        if (await page.evaluate((one) => document.activeElement?.matches(one), which)) return true;
        await page.keyboard.press('Tab');
      }
      return amiss(where, `${which} is not reached by Tab`);
    };
    await reach('#kitchen summary');
    await page.keyboard.press('Enter');
    await reach('[name="room"]');
    const foreseen = () => page.locator('[data-step="0.1.2"] .foreseen').innerText();
    const warm = await foreseen();
    for (let n = 0; n < 10; n += 1) await page.keyboard.press('ArrowLeft');
    must(where, (await page.locator('[name="shown"]').innerText()).startsWith('18\u00a0°C'), 'ten steps to the left are not five degrees');
    must(where, warm !== await foreseen(), 'the times do not follow the room');
    await page.locator('#across').focus();
    await page.keyboard.press('Enter');
    must(where, await page.locator('#view[open]').count() === 1, 'the view does not open');
    await page.keyboard.press('ArrowRight');
    must(where, (await page.locator('#view .count').innerText()).startsWith('2 of'), 'the arrow does not go on');
    await page.keyboard.press('Escape');
    must(where, await page.locator('#view[open]').count() === 0, 'the view does not close');
  });
}

/// Printed, the page is what it is with scripts off.
async function printed(browser) {
  await opened(browser, views[2], address('site', 'caraway-rye-tin'), async (page) => {
    await page.emulateMedia({ media: 'print' });
    for (const one of await page.locator('#kitchen, .tick, .do, #timers, #view').all()) {
      must('print', !(await one.isVisible()), 'a control is printed');
    }
  });
}

const HOSTILE = '</script><script>document.title="spoilt"</script><img src=x onerror=alert(1)> "q" \' & \u202egnp\u202c 🥐';

/// Whatever words a book holds and whatever an address says, they stay words.
async function hostile(browser) {
  const book = resolve(place, 'book');
  cpSync(resolve(root, 'examples/saltmarsh'), book, { recursive: true });
  const file = resolve(book, 'formulas/potato-muffins.toml');
  const words = JSON.stringify(HOSTILE.replaceAll('\u202e', '').replaceAll('\u202c', ''));
  const text = readFileSync(file, 'utf8')
    .replace(/^title = "Overnight sponge"/m, `title = ${words}`)
    .replace('piece = "muffin"', `piece = [${words}, ${words}]`)
    .replace('{ amount = 3, title = "dried bay leaves"', `{ amount = 3, title = ${words}`);
  writeFileSync(file, text);
  publish(book, resolve(place, 'hostile'));
  const bad = '#room=99&pieces=-3&way=%3Cscript%3E&eggs=constructor&spoons=__proto__&serve=25:99&done=%3Cb%3E,0.0.0&timers=0.9.9*17,x*1&protein.x=1e9&tin=box&long=1e400';
  await opened(browser, views[1], address('hostile', 'potato-muffins', bad), async (page) => {
    await openAll(page);
    must('hostile words', !(await page.title()).includes('spoilt'), 'a script of the book ran');
    must('hostile words', await page.locator('img[src="x"]').count() === 0, 'markup of the book became an element');
    must('hostile words', (await page.locator('#clock').innerText()).includes('</script>'), 'a title is not told as it is');
    must('hostile words', (await page.locator('[data-makes]').innerText()).includes('<img src=x'), 'a word is not told as it is');
    must('hostile address', await page.locator('[data-g]').first().innerText() === '480\u00a0g', 'an address without sense changes amounts');
    await page.locator('main .do button').first().click();
    must('hostile words', (await page.locator('#timers').innerText()).includes('</script>'), 'a timer does not tell its title');
  });
}

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-background-networking', '--disable-component-update', '--disable-sync'] });
for (const name of names) await look(browser, name);
await keptInTheAddress(browser);
await byKeyboard(browser);
await printed(browser);
await hostile(browser);
await browser.close();
for (const finding of findings) console.error(finding);
console.log(`${names.length} pages in use, ${findings.length} findings`);
process.exit(findings.length > 0 ? 1 : 0);
