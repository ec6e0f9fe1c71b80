// How long a reader waits for the page to be of use: from the moment its text is read to the moment its controls answer,
// and how long a change of the room takes to be told. It prints what it measured and judges nothing: no speed of a
// machine is a test.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const root = resolve(process.argv[2] ?? '.');
const TIMES = Number(process.argv[3] ?? 15);
const place = resolve(root, 'target/browser/usable');
rmSync(place, { recursive: true, force: true });
mkdirSync(place, { recursive: true });
execFileSync(resolve(root, 'target/debug/wellproved'), ['publish', resolve(root, 'examples/saltmarsh'), '--out', place], { stdio: 'ignore' });
const lists = ['index.html', 'tags.html', 'ingredients.html'];
const pages = readdirSync(place).filter((file) => file.endsWith('.html') && !file.endsWith('.evidence.html') && !lists.includes(file));

// Scripts of the page are run when it is read to its end, and before the browser says that its content is there.
const waited = () => {
  const [read] = performance.getEntriesByType('navigation');
  return { usable: read.domContentLoadedEventStart - read.domInteractive, live: document.documentElement.classList.contains('live') };
};
const moved = () => {
  const room = document.querySelector('[name="room"]');
  if (!room) return null;
  const before = performance.now();
  room.value = room.value === '18' ? '23' : '18';
  room.dispatchEvent(new Event('input', { bubbles: true }));
  // The layout belongs to it: only then is the new figure where it is read.
  document.body.getBoundingClientRect();
  return performance.now() - before;
};

const sorted = (all) => [...all].sort((a, b) => a - b);
const middle = (all) => sorted(all)[Math.floor(all.length / 2)];
const told = (all) => (all.length === 0 ? '–' : `${middle(all).toFixed(1)} ms (at most ${Math.max(...all).toFixed(1)})`);

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-background-networking', '--disable-component-update', '--disable-sync'] });
for (const [machine, slower] of [['this machine', 1], ['a processor four times slower', 4]]) {
  console.log(`${machine}: from read to usable, and from another room to other times; middle of ${TIMES}`);
  for (const file of pages) {
    const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: slower });
    const [usable, rooms] = [[], []];
    for (let n = 0; n < TIMES; n += 1) {
      await page.goto('about:blank');
      await page.goto(pathToFileURL(resolve(place, file)).href);
      const one = await page.evaluate(waited);
      if (!one.live) throw new Error(`${file} did not come to life`);
      usable.push(one.usable);
      const room = await page.evaluate(moved);
      if (room !== null) rooms.push(room);
    }
    await page.close();
    console.log(`  ${file}, ${(statSync(resolve(place, file)).size / 1000).toFixed(0)} kB: ${told(usable)}; ${told(rooms)}`);
  }
}
await browser.close();
