// The workbench of a copy of the demo book, opened for a test by the real program, and what every page of it must pass.
import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { chromium } from 'playwright-core';
import { judged } from './judging.mjs';


/** Opens the workbench of a fresh copy of a book, or of an empty folder; gives its address, its folder, and how to close it. */
export async function serve(root, name, { from = 'examples/saltmarsh', args = [], program } = {}) {
  const folder = resolve(root, 'target/browser', name);
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  // What the demo book's own memory holds is not the demo.
  if (from) cpSync(resolve(root, from), folder, { recursive: true, filter: (file) => !file.includes('.remembered') });
  return { folder, ...(await reopen(root, folder, args, program)) };
}

/** Opens the workbench of a folder as it is. */
export function reopen(root, folder, args = [], built = 'target/debug/wellproved') {
  const port = args.includes('--port') ? [] : ['--port', '0'];
  const program = spawn(resolve(root, built), ['serve', folder, '--no-open', ...port, ...args]);
  program.stderr.pipe(process.stderr);
  const ended = new Promise((done) => program.once('exit', done));
  const close = async (signal = 'SIGTERM') => {
    program.kill(signal);
    return ended;
  };
  return new Promise((done, fail) => {
    let said = '';
    program.stdout.on('data', (data) => {
      said += data;
      const address = said.match(/http:\/\/\S+/)?.[0];
      if (address) done({ url: address.replace(/\/$/, ''), close, program });
    });
    ended.then((status) => fail(new Error(`the workbench ended with ${status}: ${said}`)));
  });
}

export const launch = () =>
  chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-background-networking', '--disable-component-update', '--disable-sync'] });

/** The widths and looks at which a page must hold. */
export const views = [
  { name: 'phone', width: 390, height: 844, colorScheme: 'light' },
  { name: 'phone, dark', width: 390, height: 844, colorScheme: 'dark' },
  { name: 'narrowest', width: 320, height: 640, colorScheme: 'light' },
  { name: 'desk', width: 1280, height: 900, colorScheme: 'light' },
  { name: 'desk, dark', width: 1280, height: 900, colorScheme: 'dark' },
  { name: 'wide', width: 2560, height: 1200, colorScheme: 'light' },
];

/** What a page fails in: accessibility, what is cut off at the side, what the browser complains of. */
export async function findings(browser, address, { ready, looks } = {}) {
  const found = [];
  for (const view of views) {
    const context = await browser.newContext({ viewport: view, colorScheme: view.colorScheme, reducedMotion: 'reduce', bypassCSP: true });
    const page = await context.newPage();
    page.on('console', (message) => message.type() === 'error' && found.push(`${view.name}: console: ${message.text()}`));
    page.on('pageerror', (error) => found.push(`${view.name}: ${error.message}`));
    await page.goto(address);
    if (ready) await page.waitForSelector(ready);
    found.push(...(await judged(page)).map((words) => `${view.name}: ${words}`));
    if (looks) await page.screenshot({ path: `${looks}-${view.name.replace(/\W+/g, '-')}.png`, fullPage: true });
    await context.close();
  }
  return found;
}

/** A test that tells its lines and ends with 1 if one of them is amiss. */
export class Walk {
  amiss = 0;

  check(words, holds, seen = '') {
    if (!holds) this.amiss += 1;
    console.log(`${holds ? 'fine ' : 'amiss'} ${words}${holds || seen === '' ? '' : `: ${typeof seen === 'string' ? seen : JSON.stringify(seen)}`}`);
  }

  /** The same of something that is waited for: it fails where it does not come in time. */
  async sees(words, waiting) {
    const late = await Promise.resolve(waiting).then(() => '', (error) => error.message.split('\n')[0]);
    this.check(words, late === '', late);
  }

  end() {
    process.exit(this.amiss > 0 ? 1 : 0);
  }
}
