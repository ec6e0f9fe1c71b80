// How long it takes from a keystroke in the demo's first formula to the figures that follow, in the browser; beside
// it a bare question and answer of the same workbench. A measurement to be read, not a test: run it with the release
// program on a quiet machine.   node target/browser/keystroke.mjs . target/release/wellproved
import { launch, serve } from './serving.mjs';

const [root, program] = process.argv.slice(2);
const bench = await serve(root, 'keystroke-book', { program });
const browser = await launch();
const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
await page.goto(`${bench.url}/formula/potato-muffins`);
await page.waitForSelector('#glance-water-0');
await page.waitForTimeout(3000);

/** So many keys, each so long after the figures of the one before; beside each a bare question and answer. */
const typed = (pause) => page.evaluate(async (pause) => {
  const rest = () => new Promise((done) => setTimeout(done, pause));
  const input = document.querySelector('#g-0-1-milk-whole');
  input.focus();
  // Waited for without asking again and again, which would take a core from the workbench.
  let told;
  const seen = new PerformanceObserver((list) => list.getEntriesByName('figures').forEach((mark) => told(mark.startTime)));
  seen.observe({ type: 'mark' });
  const keystroke = async (value) => {
    const figures = new Promise((done) => (told = done));
    const begun = performance.now();
    input.value = value;
    input.dispatchEvent(new Event('input', { bubbles: true }));
    return (await figures) - begun;
  };
  const bare = async () => {
    const begun = performance.now();
    await (await fetch('/why/unknown-ingredient')).text();
    return performance.now() - begun;
  };
  const times = { keystroke: [], bare: [] };
  for (let n = 0; n < 220; n++) {
    const key = await keystroke(String(180 + (n % 90)));
    if (pause) await rest();
    const question = await bare();
    if (pause) await rest();
    if (n >= 20) {
      times.keystroke.push(key);
      times.bare.push(question);
    }
  }
  seen.disconnect();
  return times;
}, pause);
const at = (all, share) => all.toSorted((a, b) => a - b)[Math.floor(all.length * share)];
const words = (name, all) => console.log(`  ${name.padEnd(32)} median ${at(all, 0.5).toFixed(1)} ms, 95 in 100 under ${at(all, 0.95).toFixed(1)} ms, worst ${Math.max(...all).toFixed(1)} ms`);
for (const [rhythm, pause] of [['by quick hands, a tenth of a second after the figures before', 100], ['without a rest, which nobody types', 0]]) {
  const times = await typed(pause);
  console.log(rhythm);
  words('a keystroke to its figures', times.keystroke);
  words('a bare question and answer', times.bare);
  console.log(`  ratio ${(at(times.keystroke, 0.5) / at(times.bare, 0.5)).toFixed(1)}`);
}
await browser.close();
await bench.close();
