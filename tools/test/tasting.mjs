// Blind tastings in the workbench: tasters on telephones, some of them twice, some without a network for a while; what
// each may see; and published examples entered by hand and read in the report.
import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { values } from './published-rows.mjs';
import { Walk, findings, launch, serve } from './serving.mjs';

const root = process.argv[2];
const walk = new Walk();
const browser = await launch();
const phone = { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true };

const samples = (names) => names.map((name) => `[[sample]]\nname = "${name}"\ntitle = "secret ${name}"\nformula = "potato-muffins"\n`).join('\n');
const tasting = (title, method, names, more = '') => `title = "${title}"\nmethod = "${method}"\nquestion = "What do you say of it?"\n${more}\n${samples(names)}`;
const book = resolve(root, 'target/browser/tasting-source');
rmSync(book, { recursive: true, force: true });
cpSync(resolve(root, 'examples/saltmarsh'), book, { recursive: true });
mkdirSync(resolve(book, 'tastings'), { recursive: true });
const file = (name, text) => writeFileSync(resolve(book, 'tastings', `${name}.toml`), text);
file('liked', tasting('Liked', 'liking', ['oat', 'rye', 'bran'], 'rinse = "water"'));
file('ranked', tasting('Ranked', 'ranking', ['a', 'b', 'c', 'd', 'e'], 'comparative = "softer"'));
file('odd', tasting('Odd', 'triangle', ['a', 'b'], 'pause = "1 s"'));
file('said', tasting('Said', 'description', ['a', 'b'], '[[attribute]]\nname = "softness"\nlow = "firm"\nhigh = "soft"\n\n[[attribute]]\nname = "sweetness"\nlow = "not at all"\nhigh = "very"\n'));

/** Lays a table as its leader does, and gives the links. */
async function lay(bench, name, seats, leader) {
  const page = leader ?? (await (await browser.newContext()).newPage());
  await page.goto(`${new URL(bench.url).origin}/tastings/${name}`);
  await page.fill('input[name=seats]', String(seats));
  await page.click('text=Lay the table');
  const links = await page.locator('ul.links a').evaluateAll((all) => all.map((one) => one.href));
  const codes = await page.locator('ul.links svg').count();
  if (!leader) await page.close();
  return { links, codes };
}

const post = (address, body) => fetch(address, { method: 'POST', headers: { 'x-parts': '1' }, body: new URLSearchParams(body) });
/** What somebody says of a cup: known from its code, so that it can be looked up afterwards. */
const points = (code) => 1 + (Number(code) % 9);
/** What a page's browser is answered at an address. */
const asked = (page, address) => page.evaluate(async (address) => { const answer = await fetch(address); return { status: answer.status, text: await answer.text() }; }, address);
const rows = async (leader, name) => {
  const { text } = await asked(leader, `/tastings/${name}/raw.csv`);
  return text.trim().split('\n').slice(1).map((line) => line.split(','));
};
const items = (page) => [...page.matchAll(/data-answer="([^"]+)"/g)].map((one) => one[1]);

/** Somebody with a plain client, who sends all of it so many times at once. */
async function plainly(link, times = 1) {
  const asked = items(await (await fetch(link)).text());
  const once = async () => {
    const statuses = [(await post(`${link}/agree`, {})).status];
    for (const item of asked) statuses.push((await post(`${link}/answer`, { item, value: points(item), client: `client-${item}` })).status);
    return statuses;
  };
  const all = await Promise.all(Array.from({ length: times }, once));
  return all.flat().every((status) => status === 204);
}

/** Somebody with a telephone; `cut` loses the network after the first sample and finds it after the last. */
async function byHand(link, { cut = false, tabs = 1 } = {}) {
  const context = await browser.newContext(phone);
  const pages = await Promise.all(Array.from({ length: tabs }, () => context.newPage()));
  await Promise.all(pages.map((page) => page.goto(link)));
  let seen = '';
  const go = async (page) => {
    seen += await page.content();
    await page.click('section:not([hidden]) button.go');
    for (let cup = 0; cup < 3; cup += 1) {
      const screen = page.locator('section:not([hidden])');
      const code = await screen.locator('h2 b').textContent();
      await screen.locator(`button[value="${points(code)}"]`).click();
      if (cut && cup === 0) {
        await page.waitForFunction(() => document.querySelector('main').dataset.left === '0');
        await context.setOffline(true);
      }
      const pause = page.locator('section:not([hidden]) [data-next]');
      if (cup < 2) await pause.click();
    }
    if (cut) {
      await page.waitForFunction(() => document.querySelector('#waiting').textContent.includes('2 answers wait'));
      await context.setOffline(false);
    }
    await page.waitForFunction(() => document.querySelector('main').dataset.left === '0' && !document.querySelector('[data-screen=done]').hidden);
  };
  await Promise.all(pages.map(go));
  await context.close();
  return seen;
}

/** A shared workbench: the leader comes in by a key, tasters have the link of their seat and nothing else. */
async function sixty(store) {
  const where = store ? 'on the server' : 'in the file';
  const args = ['--share=127.0.0.1', ...(store ? ['--store', store] : [])];
  const bench = await serve(root, 'tasting-book', { from: 'target/browser/tasting-source', args });
  const house = new URL(bench.url).origin;
  const leader = await (await browser.newContext()).newPage();
  await leader.goto(bench.url);
  await leader.waitForURL(`${house}/`);
  const { links, codes } = await lay(bench, 'liked', 60, leader);
  walk.check(`${where}: sixty links; none is drawn that no telephone reaches`, links.length === 60 && codes === 0 && new Set(links).size === 60);
  await leader.goto(`${house}/tastings/liked`);
  const others = links.slice(5).map((link, n) => plainly(link, n < 2 ? 2 : 1));
  const seen = await Promise.all([
    byHand(links[0]),
    byHand(links[1], { tabs: 2 }),
    byHand(links[2], { cut: true }),
    byHand(links[3], { cut: true }),
    byHand(links[4], { cut: true }),
  ]);
  walk.check(`${where}: every plain client is answered`, (await Promise.all(others)).every(Boolean));
  await leader.waitForFunction(() => document.querySelector('#count').textContent.includes('60 of 60'));
  walk.check(`${where}: the leader's count follows by itself`, true);
  const early = await asked(leader, '/tastings/liked/evidence');
  walk.check(`${where}: no result before closing`, early.status === 409 && !early.text.includes('mean'), early.status);
  walk.check(`${where}: nobody is told what is in a cup`, seen.every((page) => !page.includes('secret') && !page.includes('oat')));
  const cups = seen.map((page) => new Set([...page.matchAll(/data-screen="cup-(\d+)"/g)].map((one) => one[1])));
  walk.check(`${where}: nobody sees another's cups`, new Set(cups.flatMap((one) => [...one])).size === 15, cups.map((one) => [...one]));
  const taster = await (await browser.newContext(phone)).newPage();
  await taster.goto(links[5]);
  const doors = await Promise.all(['', '/key', '/raw.csv', '/evidence', '/ballots', '/paper', '/count'].map((end) => asked(taster, `/tastings/liked${end}`)));
  walk.check(`${where}: a taster's link opens neither the key nor the results`, doors.every(({ status, text }) => status === 401 && !text.includes('secret')), doors.map((one) => one.status));
  const foreign = await post(`${links[5]}/answer`, { item: [...cups[0]][0], value: 1, client: 'not-mine' });
  walk.check(`${where}: nobody answers for another's cup`, foreign.status === 422, foreign.status);
  await leader.goto(`${house}/tastings/liked`);
  await leader.click('text=Close the tasting');
  await leader.click('text=Close it now');
  await leader.waitForSelector('text=What was found');
  const all = await rows(leader, 'liked');
  walk.check(`${where}: nothing lost, nothing doubled`, all.length === 180 && all.every((row) => Number(row[8]) === points(row[4])), all.length);
  walk.check(`${where}: a closed tasting takes no answer`, (await post(`${links[9]}/answer`, { item: '1', value: 1, client: 'x' })).status === 422);
  walk.check(`${where}: a link that nobody gave leads nowhere`, (await fetch(`${house}/taste/abcdefghijkmnpqrstuvwxyz23`)).status === 404);
  await leader.click('text=A taster wishes the answers removed');
  await leader.fill('input[name=seat]', '7');
  await leader.click('text=Remove for good');
  walk.check(`${where}: what was removed is told`, (await leader.textContent('main [role=status]')).includes('3 answers of seat 7'));
  const left = await rows(leader, 'liked');
  walk.check(`${where}: and is gone`, left.length === 180 && left.every((row) => (row[8] === '') === (row[2] === '7')), left.filter((row) => row[8] === '').map((row) => row[2]));
  await taster.goto(links[6]);
  walk.check(`${where}: its taster sees that it is gone`, (await taster.textContent('main')).includes('removed'));
  await bench.close();
}

await sixty();
if (process.env.TEST_DATABASE_URL) await sixty(process.env.TEST_DATABASE_URL);
else console.log('      no server is named (TEST_DATABASE_URL): the same on PostgreSQL is left out');

// Ranks with the rank sums that ISO 8587, Annex A, prints, given by hand on telephones: F 10.60, least difference 12.40.
const bench = await serve(root, 'tasting-book', { from: 'target/browser/tasting-source' });
const iso = values(root).rankings['iso-8587'].rows.map((row) => row.split(' ').map(Number));
/** The sample of each code at each seat, from the leader's sheet. */
async function keyOf(name) {
  const page = await (await browser.newContext()).newPage();
  await page.goto(`${bench.url}/tastings/${name}/key`);
  const seats = await page.locator('table.key tbody tr').evaluateAll((all) => all.map((row) => [...row.querySelectorAll('[data-code]')].map((cup) => cup.textContent)));
  await page.close();
  return seats.map((cups) => Object.fromEntries(cups.map((cup) => cup.match(/^(\d{3}) secret (\w+)$/u).slice(1))));
}
const ranked = await lay(bench, 'ranked', 8);
const key = await keyOf('ranked');
for (const [seat, link] of ranked.links.entries()) {
  const page = await (await browser.newContext(phone)).newPage();
  await page.goto(link);
  await page.click('section:not([hidden]) button.go');
  for (let cup = 0; cup < 5; cup += 1) await page.click('section:not([hidden]) [data-next]');
  if (seat === 0) {
    await page.click('section:not([hidden]) button.go').catch(() => {});
    walk.check('an order that is not whole is not sent', (await page.locator('section[data-screen=rank]').isVisible()));
  }
  for (const [code, sample] of Object.entries(key[seat])) await page.selectOption(`select[name="rank-${code}"]`, String(iso[seat]['abcde'.indexOf(sample)]));
  await page.click('section:not([hidden]) button.go');
  await page.waitForFunction(() => document.querySelector('main').dataset.left === '0' && !document.querySelector('[data-screen=done]').hidden);
  if (seat === 1) {
    await page.reload();
    walk.check('who comes back finds the end, not the beginning', await page.locator('section[data-screen=done]').isVisible());
  }
  await page.close();
}

// The FAO's table of triangles (V7180E, Appendix A): of 12, 8 right are evidence at 5 %, p 0.0188.
const odd = await lay(bench, 'odd', 12);
const oddKey = await keyOf('odd');
for (const [seat, link] of odd.links.entries()) {
  const page = await (await browser.newContext({ ...phone, javaScriptEnabled: seat > 0 })).newPage();
  const cups = Object.entries(oddKey[seat]);
  const alone = cups.find(([, sample]) => cups.filter(([, other]) => other === sample).length === 1)[0];
  const chosen = seat < 8 ? alone : cups.find(([code]) => code !== alone)[0];
  await page.goto(link);
  await page.click('section:not([hidden]) button.go');
  if (seat > 0) {
    for (let cup = 0; cup < 3; cup += 1) {
      await page.click('section:not([hidden]) [data-next]');
      // Between two samples the way on opens after the pause.
      if (cup < 2) await page.click('section:not([hidden]) [data-next]:enabled');
    }
  }
  await page.click(`section[data-screen=choose] button[value="${chosen}"]`);
  if (seat === 1) {
    // A choice is shown before it is sent: the way back leads to another one.
    walk.check('what was chosen is shown before it is sent', (await page.textContent('section[data-screen=sending]:not([hidden]) h2')) === `You chose ${chosen}`);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.click(`section[data-screen=choose]:not([hidden]) button[value="${chosen}"]`);
  }
  if (seat > 0) await page.click('section[data-screen=sending]:not([hidden]) [data-send]');
  if (seat > 0) await page.waitForFunction(() => document.querySelector('main').dataset.left === '0' && !document.querySelector('[data-screen=done]').hidden);
  else walk.check('without scripts an answer arrives as well', (await page.locator(`button[value="${chosen}"][aria-pressed=true]`).count()) === 1);
  await page.close();
}

const said = await lay(bench, 'said', 2);
const liked = await lay(bench, 'liked', 6);
for (const [name, link] of [['said', said.links[0]], ['liked', liked.links[0]]]) {
  await post(`${link}/agree`, {});
  const found = await findings(browser, link, { looks: resolve(root, `target/browser/looks/taste-${name}`) });
  walk.check(`the sheet “${name}” holds at every width and look`, found.length === 0, found);
}
const fresh = await findings(browser, liked.links[1], { looks: resolve(root, 'target/browser/looks/taste-agree') });
walk.check('the notice holds at every width and look', fresh.length === 0, fresh);

const page = await (await browser.newContext()).newPage();
for (const name of ['ranked', 'odd']) {
  await page.goto(`${bench.url}/tastings/${name}`);
  await page.click('text=Close the tasting');
  await page.click('text=Close it now');
}
await page.goto(`${bench.url}/tastings/ranked/evidence`);
let words = await page.textContent('body');
walk.check('ISO 8587: F = 10.60, least difference 12.4', words.includes('F = 10.60') && words.includes('12.4'), words);
await page.goto(`${bench.url}/tastings/odd/evidence`);
words = await page.textContent('body');
walk.check('FAO: 8 of 12, p = 0.019', words.includes('8 of 12') && words.includes('p = 0.019'), words);
for (const path of ['/tastings', '/tastings/odd', '/tastings/said', '/tastings/odd/key', '/tastings/odd/evidence', '/tastings/said/ballots']) {
  const found = await findings(browser, bench.url + path, { looks: resolve(root, `target/browser/looks${path.replaceAll('/', '-').replace('-', '/')}`) });
  walk.check(`${path} holds at every width and look`, found.length === 0, found);
}
await bench.close();
await browser.close();
walk.end();
