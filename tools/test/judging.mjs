// What a page in the browser must pass, whatever it is: the accessibility rules, and nothing cut off at the side.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What a page fails in as it stands. */
export async function judged(page) {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  await page.evaluate(axe);
  const { violations } = await page.evaluate((tags) => axe.run(document, { runOnly: tags }), rules);
  const told = violations.map((one) => `${one.id}: ${one.help} (${one.nodes.map((node) => node.target.join(' ')).join('; ')})`);
  return over > 0 ? [`${over} px are cut off at the side`, ...told] : told;
}
