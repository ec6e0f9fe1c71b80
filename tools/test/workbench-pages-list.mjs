// The pages of the workbench: by which door they are reached, at which address, and what has to be done before.

const muffins = '/formula/potato-muffins';
const knots = '/formula/cardamom-knots';
const morning = 'formula=potato-muffins&serve=2026-11-29T09:30&now=2026-11-27+12:00&zone=Europe/Vienna';
const asked = `${muffins}/exchange?exchange=leaven&into=rye-culture&ask=yes`;

/** Does what a form of a page does, in whichever browser; gives the page that it is answered with. */
async function sent(page, house, path, form) {
  await page.goto(`${house}/tour`);
  const send = async ([path, form]) => {
    const token = document.querySelector('meta[name=token]').content;
    const answer = await fetch(path, { method: 'POST', body: new URLSearchParams({ token, ...form }) });
    return answer.text();
  };
  return page.evaluate(send, [path, form]);
}

/** Lays a tasting's table and keeps the links of its seats. */
async function laid(page, house, known) {
  const laid = await sent(page, house, '/tastings/softer-muffins/lay', { seats: '6' });
  known.links = [...new Set(laid.match(/\/taste\/[a-z0-9]+/gu))];
}

/** A knots' text that says something else, saved once and once too late. */
async function changed(page, house) {
  await page.goto(`${house}${knots}/text`);
  const [from, text] = [await page.$eval('input[name=from]', (one) => one.value), await page.$eval('#text', (one) => one.value)];
  await sent(page, house, `${knots}/text`, { from, text: text.replace('title = "Cardamom knots with almond butter"', 'title = "Knots"') });
  await sent(page, house, `${knots}/text`, { from, text: `${text}# what somebody else wanted\n` });
  await sent(page, house, `${knots}/history/save`, { note: 'a shorter title' });
  await sent(page, house, '/kitchens', { title: 'The summer kitchen' });
  await sent(page, house, '/changes/back', { file: 'kitchens/the-summer-kitchen.toml' });
}

const added = (page, house) => sent(page, house, '/ingredients', { title: 'Spelt from the bag', like: 'flour-strong-white', group: '', source: 'the bag, lot of November' });

/** `door` is the route, `path` the address; `act` is done on the page, `prepare` before it; `codes` says that lots are drawn. */
export const pages = [
  { name: 'book', door: '/', path: '/' },
  { name: 'book-found', path: '/?with=milk-whole&remarks=without' },
  { name: 'formula', door: '/formula/{name}', path: muffins, ready: '#day svg', fleeting: ['#day'] },
  { name: 'formula-amiss', path: muffins, ready: '#remark-0-1-salt .remark', fleeting: ['#day', '#ahead'], act: async (page) => {
    await page.fill('#p-0-1-salt', '5');
    await page.waitForSelector('#remark-0-1-salt .remark');
  } },
  { name: 'text', door: '/formula/{name}/text', path: `${muffins}/text` },
  { name: 'exchange', door: '/formula/{name}/exchange', path: `${muffins}/exchange?exchange=leaven` },
  { name: 'exchanged', path: asked },
  { name: 'target', path: `${muffins}/exchange?target=yeast&stage=sponge&ripe-after=10&ask=yes` },
  { name: 'why', door: '/why/{code}', path: '/why/salt-outside-custom' },
  { name: 'day-empty', door: '/day', path: '/day' },
  { name: 'day', path: `/day?${morning}` },
  { name: 'day-prep', door: '/day/prep', path: `/day/prep?${morning}` },
  { name: 'day-shopping', door: '/day/shopping', path: `/day/shopping?${morning}` },
  { name: 'ingredients', door: '/ingredients', path: '/ingredients?words=rye' },
  { name: 'ingredient', door: '/ingredients/{name}', path: '/ingredients/milk-whole' },
  { name: 'ingredient-own', path: '/ingredients/spelt-from-the-bag', prepare: added },
  { name: 'prices', door: '/settings/{what}', path: '/settings/prices' },
  { name: 'larder', path: '/settings/larder' },
  { name: 'settings', path: '/settings/book' },
  { name: 'kitchens', door: '/kitchens', path: '/kitchens' },
  { name: 'kitchen', door: '/kitchens/{name}', path: '/kitchens/estuary' },
  { name: 'trials', door: '/trials', path: '/trials' },
  { name: 'trial', door: '/trial/{name}', path: '/trial/2026-11-14-muffins' },
  { name: 'trials-learnt', door: '/trials/learnt', path: '/trials/learnt' },
  { name: 'trials-compare', door: '/trials/compare', path: '/trials/compare?formula=potato-muffins' },
  { name: 'trials-plan', door: '/trials/plan', path: '/trials/plan?formula=potato-muffins&factors=milk%3D160%2C180&seed=7263' },
  { name: 'trials-plan-sheet', door: '/trials/plan/sheet', path: '/trials/plan/sheet?formula=potato-muffins&factors=milk%3D160%2C180&seed=7263', codes: true, alone: true },
  { name: 'publish', door: '/publish', path: '/publish' },
  { name: 'cost', door: '/publish/{name}/{what}', path: '/publish/potato-muffins/cost' },
  { name: 'people', door: '/people', path: '/people' },
  { name: 'people-key', path: '/people', act: async (page) => {
    await page.fill('[name=name]', 'Ada');
    await page.press('[name=name]', 'Enter');
    await page.waitForSelector('.code svg');
  }, fleeting: ['code.long'] },
  { name: 'door', door: '/enter', path: '/enter', outside: true },
  { name: 'tastings', door: '/tastings', path: '/tastings' },
  { name: 'tasting', door: '/tastings/{name}', path: '/tastings/softer-muffins' },
  { name: 'tasting-going', path: '/tastings/softer-muffins', prepare: laid },
  { name: 'tasting-key', door: '/tastings/{name}/key', path: '/tastings/softer-muffins/key', fleeting: ['.seed', 'table.key tbody'] },
  { name: 'tasting-close', door: '/tastings/{name}/close', path: '/tastings/softer-muffins/close' },
  { name: 'tasting-ballots', door: '/tastings/{name}/ballots', path: '/tastings/softer-muffins/ballots', codes: true, alone: true },
  { name: 'tasting-paper', door: '/tastings/{name}/paper', path: '/tastings/softer-muffins/paper', codes: true },
  { name: 'taste', door: '/taste/{word}', path: ({ links }) => links[0], outside: true, codes: true },
  { name: 'taste-cup', path: ({ links }) => links[1], outside: true, codes: true, act: async (page) => {
    await page.locator('button').first().click();
    await page.waitForFunction(() => document.body.dataset.at !== 'consent' && [...document.querySelectorAll('[data-screen]')].filter((one) => one.checkVisibility()).length === 1);
  } },
  { name: 'compare', door: '/formula/{name}/compare', path: `${knots}/compare?with=revision-1&with=formula-potato-muffins`, prepare: changed },
  { name: 'history', door: '/formula/{name}/history', path: `${knots}/history` },
  { name: 'history-difference', path: `${knots}/history?at=aside-1` },
  { name: 'changes', door: '/changes', path: '/changes' },
  { name: 'tour', door: '/tour', path: '/tour' },
  { name: 'nothing-there', path: '/nowhere', refused: true },
  { name: 'empty', path: '/', empty: true },
  { name: 'tour-empty', path: '/tour', empty: true },
];

/** Doors that answer with a part of a page, a file, or a page of its own kind that other walks look at. */
export const notPages = [
  '/asset/{mark}/{name}',
  '/favicon.ico',
  '/formula/{name}/bands',
  '/formula/{name}/day',
  '/formula/{name}/parts',
  '/formula/{name}/story',
  '/live',
  '/day/fixed',
  '/day/told',
  '/day/calendar.ics',
  '/day/prep.pdf',
  // The readers' own page, which pages.mjs, reader.mjs and reader-looks.mjs look at.
  '/formula/{name}/page',
  '/published/{*path}',
  '/tastings/{name}/count',
  '/tastings/{name}/raw.csv',
  // Only after closing, with answers: tasting.mjs looks at it.
  '/tastings/{name}/evidence',
];
