// Published values of tasting panels through the whole path: tables laid, answers given in the browser, reports read there.
// Tastings of most methods are filled in on telephones, screen by screen (the others in tasting.mjs); one through the
// tasters' own forms without their buttons; the many rows of tables as paper ballots, in the leader's browser.
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { rows, tastings, values } from './published-rows.mjs';
import { Walk, findings, launch, serve } from './serving.mjs';

const root = process.argv[2];
const only = process.argv[3] ?? '';
const walk = new Walk();
const of = values(root);
const book = resolve(root, 'target/browser/published-source');
rmSync(book, { recursive: true, force: true });
mkdirSync(resolve(book, 'tastings'), { recursive: true });
mkdirSync(resolve(book, 'formulas'));
writeFileSync(resolve(book, 'book.toml'), 'title = "Panels"\n');
writeFileSync(
  resolve(book, 'formulas/flat-bread.toml'),
  `title = "Flat bread"\nintro = "Plain."\n\n[[component]]\nname = "bread"\n\n[[component.stage]]\nname = "dough"\nkind = "final-mix"\n
[component.stage.ingredients]\nflour-bread = "500 g"\nwater = "65 %"\n\n[[component.stage.step]]\naction = "mix"\ntext = "Mix {flour-bread} and {water}."\n`,
);
for (const [name, text] of Object.entries(tastings(of))) writeFileSync(resolve(book, 'tastings', `${name}.toml`), text);

const browser = await launch();
const bench = await serve(root, 'published-book', { from: 'target/browser/published-source' });
const leader = await (await browser.newContext()).newPage();
const plain = (text) => text.replace(/\s+/gu, ' ').trim();

/** Lays a table; gives each seat's link, and what stands there: code to sample, in the order of tasting. */
async function lay(name, seats) {
  await leader.goto(`${bench.url}/tastings/${name}`);
  await leader.fill('input[name=seats]', String(seats));
  await leader.click('text=Lay the table');
  const links = await leader.locator('ul.links a').evaluateAll((all) => all.map((one) => one.href));
  await leader.goto(`${bench.url}/tastings/${name}/key`);
  return { links, key: await leader.locator('table.key tbody tr').evaluateAll(keyOf) };
}

/** What stands at each seat, off the leader's sheet. */
const keyOf = (rows) =>
  rows.map((row) => ({
    reference: row.querySelector('[data-reference]')?.textContent.replace('secret ', ''),
    cups: [...row.querySelectorAll('[data-code]')].map((cup) => ({ code: cup.dataset.code, sample: cup.textContent.slice(-1) })),
  }));

/** What a seat answers: the right cup or another one, or its samples in the order of their ranks. */
function answer(seat, number, { right, ranks }) {
  if (ranks) return [...seat.cups].sort((one, other) => rank(one) - rank(other)).map((cup) => cup.code).join(' ');
  function rank(cup) {
    return ranks[number][cup.sample.charCodeAt(0) - 97];
  }
  const many = (sample) => seat.cups.filter((cup) => cup.sample === sample).length;
  const wanted = seat.reference ?? (seat.cups.length === 2 ? 'a' : seat.cups.find((cup) => many(cup.sample) === 1).sample);
  return seat.cups.find((cup) => (cup.sample === wanted) === number < right).code;
}

/** Closes a tasting and reads its report: its words, and its tables row by row. */
async function reported(name) {
  await leader.goto(`${bench.url}/tastings/${name}`);
  await leader.click('text=Close the tasting');
  await leader.click('text=Close it now');
  await leader.click('text=What was found');
  const words = plain(await leader.textContent('main'));
  const cells = await leader.locator('table tbody tr').evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent)));
  return { words, cells: cells.map((row) => row.map(plain)) };
}

/** Whether a report shows all that a row wants; what it does not. */
function missing({ figures, says }, { words, cells }) {
  const shows = ([label, value]) =>
    cells.some(([head, second]) => (label.test ? label.test(head) : head === label) && (typeof value === 'function' ? value(second) : second === value));
  const said = (part) => (part.startsWith('not ') ? !words.includes(part.slice(4)) : words.includes(part));
  return [...figures.filter((one) => !shows(one)).map(String), ...says.filter((part) => !said(part))];
}

/** A row in the leader's browser, by the forms of the pages and their own fields, without painting the pages. */
async function entered({ name, seats, answers }) {
  const sheet = await leader.evaluate(async ([name, seats]) => {
    const read = async (answer) => new DOMParser().parseFromString(await (await answer).text(), 'text/html');
    globalThis.read = read;
    globalThis.send = async (path, action, fields) => {
      const form = (await read(fetch(`/tastings/${path}`))).querySelector(`form[action="/tastings/${action}"]`);
      const said = new URLSearchParams([...form.querySelectorAll('input')].map((field) => [field.name, field.value]));
      for (const [field, value] of Object.entries(fields)) said.set(field, value);
      return fetch(form.getAttribute('action'), { method: 'POST', body: said });
    };
    await send(name, `${name}/lay`, { seats });
    const key = await read(fetch(`/tastings/${name}/key`));
    return [...key.querySelectorAll('table.key tbody tr')].map((row) => [row.querySelector('[data-reference]')?.textContent, ...[...row.querySelectorAll('[data-code]')].map((cup) => cup.textContent)]);
  }, [name, seats]);
  const seat = ([reference, ...cups]) => ({ reference: reference?.slice(-1), cups: cups.map((cup) => ({ code: cup.slice(0, 3), sample: cup.slice(-1) })) });
  const ballots = sheet.map(seat).map((seat, number) => `${number + 1},${answer(seat, number, answers)}`).join('\n');
  return leader.evaluate(async ([name, ballots]) => {
    const kept = await read(send(`${name}/paper`, `${name}/paper`, { ballots }));
    await send(`${name}/close`, `${name}/close`, {});
    const report = await read(fetch(`/tastings/${name}/evidence`));
    const plain = (node) => node.textContent.replace(/\s+/gu, ' ').trim();
    return {
      kept: plain(kept.querySelector('main p[role]')),
      words: plain(report.querySelector('main')),
      cells: [...report.querySelectorAll('table tbody tr')].map((row) => [...row.children].map(plain)),
    };
  }, [name, ballots]);
}

const began = Date.now();
let shown = 0;
await leader.goto(`${bench.url}/tastings`);
const table = rows(of).filter(({ name }) => name.includes(only));
for (const row of table) {
  const report = await entered(row);
  const amiss = report.kept.startsWith(`${row.seats} answer`) ? missing(row, report) : [report.kept];
  shown += row.figures.length + row.says.length;
  if (amiss.length > 0) walk.check(`${row.name}, ${row.seats} seats, ${JSON.stringify(row.answers)}`, false, [amiss, report]);
}
walk.check(`${table.length} tastings show ${shown} published values, ${Math.round((Date.now() - began) / 1000)} s`, walk.amiss === 0);

// One of them with the leader's own hands on the page for ballots of paper.
const onPaper = await lay('preference', 30);
await leader.goto(`${bench.url}/tastings/preference/paper`);
await leader.fill('textarea', onPaper.key.map((seat, number) => `${number + 1},${answer(seat, number, { right: 21 })}`).join('\n').replace('\n7,', '\n7,9'));
await leader.click('text=Take them down');
walk.check('a ballot that is none is told, and what was typed stays', (await leader.textContent('main [role=alert]')).includes('seat 7') && (await leader.inputValue('textarea')).includes('\n7,9'));
await leader.fill('textarea', (await leader.inputValue('textarea')).replace('\n7,9', '\n7,'));
await leader.click('text=Take them down');
walk.check('of a refused list nothing was kept', (await leader.textContent('main [role=status]')).includes('30 answers kept'));
const thirty = await reported('preference');
walk.check('21 of 30 prefer one: p 0.042774 (exact, two-sided)', missing({ figures: [[/^chance/u, '0.042774'], ['evidence at 5 %: from', '21']], says: ['21 of 30'] }, thirty).length === 0, thirty);

// Sizes of panels, on the page from which a table is laid.
for (const { p_d, power, panel } of of.panel_size.points) {
  await leader.goto(`${bench.url}/tastings/size-${p_d}-${power}`);
  const words = plain(await leader.textContent('main'));
  if (!words.includes(`takes ${panel} tasters`)) walk.check(`a panel for ${p_d} %, found ${power} % of the time: ${panel}`, false, words);
}
walk.check(`${of.panel_size.points.length} sizes of panels are advised as computed`, walk.amiss === 0);

// Orders after Williams (1949) as they are really laid: the design as it is printed, whichever sample is called 1.
const printed = (samples) => of.williams.points.filter((one) => one.p === samples).map((one) => one.row);
const turned = (row) => [...row].map((_, more) => [...row].map((one) => ((Number(one) - 1 + more) % row.length) + 1).join(''));
const designs = { 4: printed(4), 6: turned(printed(6)[0]), 5: [...turned(printed(5)[0]), ...turned([...printed(5)[0]].reverse().join(''))], 3: ['123', '231', '312', '321', '132', '213'] };
const namings = (left) => (left.length < 2 ? [left] : left.flatMap((one, n) => namings([...left.slice(0, n), ...left.slice(n + 1)]).map((rest) => [one, ...rest])));
for (const [samples, design] of Object.entries(designs)) {
  const { key } = await lay(`ranking-${samples}`, design.length);
  const laid = key.map((seat) => seat.cups.map((cup) => cup.sample.charCodeAt(0) - 97));
  const same = (naming) => laid.map((order) => order.map((sample) => naming[sample]).join('')).sort().join() === [...design].sort().join();
  walk.check(`the orders of ${samples} samples are the printed ones`, namings([...Array(Number(samples)).keys()].map((n) => n + 1)).some(same), laid);
  const codes = key.flatMap((seat) => seat.cups.map((cup) => cup.code));
  walk.check(`${codes.length} codes of three digits, none twice`, new Set(codes).size === codes.length);
}

// The other methods on telephones, screen by screen (tasting.mjs has a triangle and a ranking). The critical numbers of eight are ISO 10399's and 5495's.
const phone = { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true };
const onward = (page) => page.click('section:not([hidden]) [data-next]');
async function onPhone(link, cups, act) {
  const context = await browser.newContext(phone);
  const page = await context.newPage();
  await page.goto(link);
  await page.click('section:not([hidden]) button.go');
  await act(page);
  await page.waitForFunction(() => document.querySelector('main').dataset.left === '0' && !document.querySelector('[data-screen=done]').hidden);
  await context.close();
}
async function byScreens(name, seats, answers, wanted) {
  const { links, key } = await lay(name, seats);
  await Promise.all(
    links.map((link, number) =>
      onPhone(link, key[number].cups, async (page) => {
        const seat = key[number];
        if (seat.reference) await onward(page);
        for (const _ of seat.cups) await onward(page);
        await page.click(`section[data-screen=choose] button[value="${answer(seat, number, answers)}"]`);
        return page.click('section[data-screen=sending]:not([hidden]) [data-send]');
      }),
    ),
  );
  const report = await reported(name);
  const amiss = missing({ figures: [], says: [], ...wanted }, report);
  walk.check(`${name} by screens: ${seats} telephones`, amiss.length === 0, [amiss, report]);
}
const eight = (test) => [['evidence at 5 %: from', String(of[test].points.find((one) => one.n === 8 && one.alpha === 5).fewest)]];
await byScreens('duo-trio', 8, { right: 7 }, { figures: eight('duo_trio_table'), says: ['7 of 8 found the one like the reference'] });
await byScreens('directed', 8, { right: 7 }, { figures: eight('paired_directed_table'), says: ['7 of 8'] });
await byScreens('preference', 8, { right: 7 }, { figures: eight('paired_preference_table'), says: ['that is no evidence of a difference'] });
// The nine points of liking: Peryam & Girardot (1952), Peryam & Pilgrim (1957), 1 to 9.
const nine = ['dislike extremely', 'dislike very much', 'dislike moderately', 'dislike slightly', 'neither like nor dislike', 'like slightly', 'like moderately', 'like very much', 'like extremely'];
for (const [name, points] of [['liking', { a: 8, b: 5 }], ['described', { a: 7, b: 2 }]]) {
  const { links, key } = await lay(name, 4);
  const words = [];
  for (const [number, link] of links.entries()) {
    await onPhone(link, key[number].cups, async (page) => {
      for (const [n, { sample }] of key[number].cups.entries()) {
        const shown = page.locator('section:not([hidden]) button[name=value]');
        if (words.length === 0) words.push(...(await shown.evaluateAll((all) => all.sort((one, other) => one.value - other.value).map((one) => one.textContent.trim()))));
        await page.locator('section:not([hidden])').locator(`button[value="${points[sample]}"]`).click();
        if (n === 0 && (await page.locator('section:not([hidden]) [data-next]').count())) await onward(page);
      }
    });
  }
  const report = await reported(name);
  walk.check(`${name} by screens: means 7.00`, report.cells.some((row) => row[0] === 'secret a' && row[1] === `${points.a}.00`), report);
  if (name === 'liking') walk.check('the nine points are called as they were published', words.join() === nine.join(), words);
}

// Byer & Abrams (1953), 25 of 50, through the tasters' own forms: each field as it stands on their sheets.
const { links, key } = await lay('triangle', 50);
const chosen = key.map((seat, number) => answer(seat, number, { right: 25 }));
const taster = await (await browser.newContext()).newPage();
await taster.goto(links[0]);
const statuses = await taster.evaluate(
  async ([links, chosen]) => {
    const statuses = [];
    for (const [number, link] of links.entries()) {
      const sheet = new DOMParser().parseFromString(await (await fetch(link)).text(), 'text/html');
      const send = (form, more = []) => {
        const said = new URLSearchParams([...form.querySelectorAll('input')].map((field) => [field.name, field.value]).concat(more));
        return fetch(form.getAttribute('action'), { method: 'POST', body: said });
      };
      await send(sheet.querySelector('form[action$="/agree"]'));
      statuses.push((await send(sheet.querySelector('form[data-answer=chosen]'), [['value', chosen[number]]])).status);
    }
    return statuses;
  },
  [links, chosen],
);
walk.check('every form is taken', statuses.every((status) => status === 200), statuses);
const report = await reported('triangle');
const amiss = missing({ figures: [[/^z of/u, '2.50'], [/^chance/u, '0.010827'], ['evidence at 5 %: from', '23']], says: ['25 of 50 found the odd one'] }, report);
walk.check('Byer & Abrams: z 2.50, p 0.010827, critical 23', amiss.length === 0, [amiss, report]);
for (const path of ['ranking-3/paper', 'triangle/evidence', 'trend-6/evidence']) {
  const found = await findings(browser, `${bench.url}/tastings/${path}`, { looks: resolve(root, `target/browser/looks/tastings-${path.replace('/', '-')}`) });
  walk.check(`${path} holds at every width and look`, found.length === 0, found);
}
await bench.close();
await browser.close();
walk.end();
