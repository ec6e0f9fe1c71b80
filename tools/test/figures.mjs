// The page's own figures against the program's: every rounding, spoon and degree, value by value.
import { execFileSync } from 'node:child_process';
import { pathToFileURL } from 'node:url';
import { resolve } from 'node:path';

const root = resolve(process.argv[2] ?? '.');
const script = (name) => import(pathToFileURL(resolve(root, 'crates/publish/src/reader/script', name)).href);
const figures = await script('figures.js');
const { spoons } = await script('spoons.js');
const { speak } = await script('words.js');
// In millilitre, after the documents that crates/quantity/src/spoons.rs names.
const systems = {
  metric: { cup: 250, tbsp: 15, tsp: 5 },
  australian: { cup: 250, tbsp: 20, tsp: 5 },
  'us-customary': { cup: 236.5882365, tbsp: 14.78676478125, tsp: 4.92892159375 },
  'us-label': { cup: 240, tbsp: 15, tsp: 5 },
};

// In every language that pages speak.
const languages = ['en-GB', 'de'].map((language) =>
  JSON.parse(execFileSync('cargo', ['run', '--quiet', '-p', 'publish', '--example', 'figures', language], { cwd: root, maxBuffer: 1e8 })));
let checked = 0;
const wrong = [];
const same = (row, what, told, expected) => {
  checked += 1;
  // The page holds a range together over the line's end.
  const plain = typeof told === 'string' ? told.replaceAll('\u2060', '') : told;
  if (plain !== expected) wrong.push(`${what} of ${row.value}: ${JSON.stringify(plain)}, not ${JSON.stringify(expected)}`);
};
for (const row of languages.flatMap(({ words, rows }) => rows.map((one) => ({ ...one, words })))) {
  speak(row.words);
  const { value } = row;
  same(row, 'mass', figures.mass(value), row.mass);
  if (value > 0) same(row, 'bare gram', figures.bareGrams(value), row.bare);
  same(row, 'large mass', figures.largeMass(value), row.large);
  same(row, 'ounces', figures.ounces(value), row.ounces);
  same(row, 'percent', figures.barePercent(row.percent[0]), row.percent[1]);
  same(row, 'number', figures.number(value, 2), row.two);
  same(row, 'count', figures.count(Math.round(value * 24) / 24), row.count);
  same(row, 'celsius', figures.celsius(value - 20, value - 15.5), row.celsius);
  same(row, 'fahrenheit', figures.fahrenheit(value - 20, value - 15.5), row.fahrenheit);
  same(row, 'time', figures.time(row.time[0], row.time[1]), row.time[2]);
  same(row, 'rounded time', figures.time(...figures.roundedTime(value * 60, value * 60)), row.about);
  for (const [name, told] of row.spoons) same(row, `${name} spoons`, spoons(value, systems[name]), told);
}
for (const line of wrong.slice(0, 40)) console.error(line);
console.log(`${checked} figures held against the program's, ${wrong.length} findings`);
process.exit(wrong.length > 0 ? 1 : 0);
