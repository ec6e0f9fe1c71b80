// A shared workbench: an owner makes a key, a helper comes in by it on a telephone, each sees the other and what the
// other does, and is out once the key is withdrawn; nothing on the way breaks the policy that pages are sent with.
import { join } from 'node:path';
import { Walk, findings, launch, serve } from './serving.mjs';

const root = process.argv[2];
const walk = new Walk();
const bench = await serve(root, 'shared-book', { args: ['--share=127.0.0.1'] });
const browser = await launch();
const complaints = [];
const somebody = async (viewport) => {
  const page = await (await browser.newContext({ viewport })).newPage();
  page.on('console', (message) => message.type() === 'error' && complaints.push(`${page.url()}: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(`${page.url()}: ${error.message}`));
  return page;
};
const house = new URL(bench.url).origin;

const owner = await somebody({ width: 1280, height: 900 });
await owner.goto(bench.url);
await owner.waitForURL(`${house}/`);
walk.check('the key has left the address', owner.url() === `${house}/`, owner.url());
await owner.goto(`${house}/people`);
await owner.fill('[name=name]', 'Ada');
await owner.press('[name=name]', 'Enter');
await owner.waitForSelector('.code svg');
await owner.screenshot({ path: join(root, 'target/browser/looks/people.png'), fullPage: true });
await owner.locator('.code svg').screenshot({ path: join(root, 'target/browser/looks/code.png') });
const key = await owner.locator('code.long').nth(1).textContent();

const ada = await somebody({ width: 390, height: 844 });
const refused = await ada.goto(`${house}/formula/potato-muffins`);
walk.check('without a key there is only the door', refused.status() === 401 && (await ada.locator('[name=key]').count()) === 1);
complaints.splice(0);
await ada.screenshot({ path: join(root, 'target/browser/looks/door.png') });
await ada.fill('[name=key]', key);
await ada.press('[name=key]', 'Enter');
await ada.waitForURL(`${house}/`);
await ada.goto(`${house}/formula/potato-muffins`);
await owner.goto(`${house}/formula/potato-muffins`);
await ada.waitForFunction(() => document.querySelector('#also-here')?.textContent.includes('the owner'));
await owner.waitForFunction(() => document.querySelector('#also-here')?.textContent.includes('Ada'));
walk.check('each sees that the other is there', true);
await owner.waitForSelector('#day svg');
await owner.screenshot({ path: join(root, 'target/browser/looks/shared.png'), fullPage: true });
await ada.fill('#g-0-1-milk-whole', '190');
await ada.press('#g-0-1-milk-whole', 'Enter');
await owner.waitForFunction(() => document.querySelector('#g-0-1-milk-whole').value === '190');
await owner.waitForFunction(() => document.querySelector('#happened').textContent.includes('by Ada'));
walk.check('what one does the other sees, and who did it', true);
walk.check('nothing breaks the policy of a page', complaints.length === 0, complaints);

await owner.goto(`${house}/people`);
await owner.click('button[aria-label="Withdraw the key of Ada"]');
await owner.waitForFunction(() => document.body.textContent.includes('No keys yet'));
const out = await ada.goto(`${house}/`);
walk.check('a key that is withdrawn lets nobody stay', out.status() === 401);
await bench.close();

const alone = await serve(root, 'alone-book');
const amiss = await findings(browser, `${alone.url}/people`);
walk.check('people, alone: every width and look, and accessible', amiss.length === 0, amiss);
const door = await findings(browser, `${alone.url}/enter`);
walk.check('the door: every width and look, and accessible', door.length === 0, door);
await alone.close();
await browser.close();
walk.end();
