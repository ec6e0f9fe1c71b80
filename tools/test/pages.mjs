// Every page of a published book in Chromium: valid, accessible, nothing cut off, readable on paper,
// without a request and without scripts. Prints a line a page; ends with 1 if anything is amiss.
import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { HtmlValidate } from 'html-validate';
import { chromium } from 'playwright-core';
import { judged } from './judging.mjs';

const folder = resolve(process.argv[2]);
const names = readdirSync(folder).filter((name) => name.endsWith('.html')).sort();
const findings = [];
const amiss = (page, words) => findings.push(`${page}: ${words}`);

const views = [
  { name: 'phone', width: 360, height: 780, colorScheme: 'light' },
  { name: 'phone, dark', width: 360, height: 780, colorScheme: 'dark' },
  { name: 'narrowest', width: 320, height: 640, colorScheme: 'light' },
  { name: 'desk', width: 1280, height: 900, colorScheme: 'light' },
  { name: 'desk, dark', width: 1280, height: 900, colorScheme: 'dark' },
  { name: 'wide', width: 2560, height: 1200, colorScheme: 'light' },
];

async function look(browser, name) {
  for (const view of views) {
    const context = await browser.newContext({ viewport: { width: view.width, height: view.height }, colorScheme: view.colorScheme });
    const page = await context.newPage();
    const asked = [];
    page.on('request', (request) => { if (!request.url().startsWith('file:')) asked.push(request.url()); });
    page.on('console', (message) => { if (message.type() === 'error') amiss(name, `console: ${message.text()}`); });
    await page.goto(pathToFileURL(resolve(folder, name)).href);
    if (asked.length > 0) amiss(name, `asks the network for ${asked.join(', ')}`);
    for (const words of await judged(page)) amiss(name, `${view.name}: ${words}`);
    await context.close();
  }
}

/// With scripts off the whole recipe is there, and it prints on paper of both worlds.
async function readWithoutScripts(browser, name) {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(pathToFileURL(resolve(folder, name)).href);
  if ((await page.locator('h1').count()) < 1) amiss(name, 'has no heading with scripts off');
  for (const format of ['A4', 'Letter']) {
    const paper = (await page.pdf({ format })).toString('latin1');
    const pages = (paper.match(/\/Type\s*\/Page[^s]/g) ?? []).length;
    const most = name === 'sheets.html' || name.startsWith('labels') ? 40 : 8;
    if (pages < 1 || pages > most) amiss(name, `takes ${pages} sheets of ${format}`);
  }
  await context.close();
}

const validator = new HtmlValidate({ extends: ['html-validate:standard'], rules: { 'long-title': 'off', 'tel-non-breaking': 'off' } });
for (const name of names) {
  const report = await validator.validateFile(resolve(folder, name));
  for (const result of report.results) {
    for (const message of result.messages) amiss(name, `line ${message.line}: ${message.message} [${message.ruleId}]`);
  }
}

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-background-networking', '--disable-component-update', '--disable-sync'] });
for (const name of names) {
  const before = findings.length;
  await look(browser, name);
  await readWithoutScripts(browser, name);
  console.log(`${findings.length === before ? 'fine ' : 'amiss'} ${name}`);
}
await browser.close();
for (const finding of findings) console.error(finding);
console.log(`${names.length} pages looked at, ${findings.length} findings`);
process.exit(findings.length > 0 ? 1 : 0);
