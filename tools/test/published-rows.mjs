// Every published value of a tasting as a row: a tasting of the test's book, how many sit there, what they answer, and
// what the report must then show. Values stand in one place each, with their source, in crates/science/reference/sensory
// and crates/bench/tests/tasting/rankings.toml; this reads them.
import { execFileSync } from 'node:child_process';

const LETTERS = 'abcdefgh';

/** All tables of values, by file. */
export function values(root) {
  const script = `
import json, pathlib, tomllib
of = {file.stem: tomllib.loads(file.read_text()) for file in pathlib.Path("crates/science/reference/sensory").glob("*.toml")}
of["rankings"] = tomllib.loads(pathlib.Path("crates/bench/tests/tasting/rankings.toml").read_text())
print(json.dumps(of))`;
  return JSON.parse(execFileSync('target/venv/bin/python', ['-c', script], { cwd: root }));
}

const samples = (count) =>
  [...LETTERS.slice(0, count)].map((name) => `[[sample]]\nname = "${name}"\ntitle = "secret ${name}"\nformula = "flat-bread"\n`).join('\n');
const tasting = (method, count, more = '') =>
  `title = "A ${method}"\nmethod = "${method}"\nquestion = "What do you say of it?"\n${more}\n${samples(count)}`;
const expected = (count) => `expected = [${[...LETTERS.slice(0, count)].map((name) => `"${name}"`).join(', ')}]`;

/** The files of the book's tastings. */
export function tastings(of) {
  const files = {
    triangle: tasting('triangle', 2),
    'duo-trio': tasting('duo-trio', 2),
    directed: tasting('paired', 2, 'expected = "a"'),
    preference: tasting('preference', 2),
    liking: tasting('liking', 2),
    described: tasting('description', 2, '[[attribute]]\nname = "softness"\nlow = "firm"\nhigh = "soft"\n'),
  };
  for (const count of [3, 4, 5, 6]) {
    files[`ranking-${count}`] = tasting('ranking', count);
    files[`trend-${count}`] = tasting('ranking', count, expected(count));
  }
  for (const { p_d } of of.similarity_exact.points) files[`alike-${p_d}`] = tasting('triangle', 2, `alike = "${p_d} %"`);
  for (const { p_d } of of.power.points) files[`tell-${p_d}`] = tasting('triangle', 2, `tell = "${p_d} %"`);
  for (const { p_d, power } of of.panel_size.points) files[`size-${p_d}-${power}`] = tasting('triangle', 2, `tell = "${p_d} %"\npower = "${power} %"`);
  return files;
}

/** Every row, those of one tasting, panel and answers joined: what is shown of them is looked for on one page. */
export function rows(of) {
  const all = new Map();
  const row = (name, seats, answers, figures, says = []) => {
    const key = JSON.stringify([name, seats, answers]);
    const one = all.get(key) ?? { name, seats, answers, figures: [], says: [] };
    one.figures.push(...figures);
    one.says.push(...says);
    all.set(key, one);
  };
  choices(of, row);
  alike(of, row);
  rankings(of, row);
  return [...all.values()];
}

const CHANCE = /^chance of so many/u;

function choices(of, row) {
  // Critical numbers: the panel answers as many right as are just evidence at 5 %, or are evidence at no risk.
  const tables = ['triangle_table', 'triangle_none', 'duo_trio_table', 'paired_directed_table', 'paired_preference_table'];
  const points = tables.flatMap((name) => of[name].points).concat(of.triangle_other_rows.points.filter(({ n }) => [40, 45, 50].includes(n)));
  const five = (test, n) => points.find((one) => one.test === test && one.n === n && one.alpha === 5)?.fewest ?? n;
  for (const { test, n, alpha, fewest } of points) {
    const is = [`evidence at ${alpha} %: from`, fewest === undefined ? 'no number' : String(fewest)];
    row(test, n, { right: five(test, n) }, [is, [CHANCE, (p) => Number(p) <= 0.05]]);
    if (n === 30) row(test, n, { right: five(test, n) - 1 }, [is, [CHANCE, (p) => Number(p) > 0.05]]);
  }
  for (const { test, x, n, p } of of.chance.points) row(test, n, { right: x }, [[CHANCE, (seen) => Math.abs(Number(seen) - p) < 6e-7]]);
  // Byer & Abrams (1953), in Hollander & Wolfe, Example 2.2.
  for (const { test, x, n, z } of of.triangle_deviations.points) row(test, n, { right: x }, [[/^z of a large panel/u, z.toFixed(2)]], [`${x} of ${n} found the odd one`]);
  const limits = (from, to) => (seen) => {
    const both = seen.replaceAll('−', '-').split(' to ').map(Number);
    return [from, to].every((limit, n) => limit === undefined || Math.abs(both[n] - limit) < 6e-5);
  };
  for (const { x, n, lower, p_d, SE, upper } of of.discriminators.points) {
    row('triangle', n, { right: x }, [['share who tell it, guesses taken off', p_d.toFixed(4)], ['its standard error', SE.toFixed(4)], [/limits at 95 %, normal/u, limits(lower, upper)]]);
  }
  for (const { x, n, exact_lower, exact_upper } of of.discriminators_exact.points) row('triangle', n, { right: x }, [[/^one-sided limits at 95 %, exact/u, limits(exact_lower, exact_upper)]]);
  // Fewer right than guessing gives: nought to a reader, below nought among the figures.
  row('triangle', 30, { right: 0 }, [['share who tell it, guesses taken off', '−0.5000']], ['about 0 % of people really tell']);
  for (const { n, p_d, power } of of.power.points) row(`tell-${p_d}`, n, { right: n }, [], [`${p_d} % of people truly tell would be missed ${Math.round(100 * (1 - power))} times in 100`]);
}

/** Two recipes, told apart by name: exact and by the normal limit. */
function alike(of, row) {
  for (const { n, p_d, most } of of.similarity_exact.points) {
    const normal = of.similarity_normal.points.find((one) => one.n === n && one.p_d === p_d).most;
    const figures = [[/at most, exact/u, String(most)], [/at most, by the normal limit/u, String(normal)]];
    row(`alike-${p_d}`, n, { right: most }, figures, ['They may.']);
    if (n === 30) row(`alike-${p_d}`, n, { right: most + 1 }, figures, ['They may not.']);
  }
}

/** Rank rows whose Page's L is a number: each taster's share of it by trying, the largest first. */
export function ranksOf(samples, tasters, L) {
  const orders = (left) => (left.length < 2 ? [left] : left.flatMap((one, n) => orders([...left.slice(0, n), ...left.slice(n + 1)]).map((rest) => [one, ...rest])));
  const shares = new Map(orders([...Array(samples).keys()].map((n) => n + 1)).map((order) => [order.reduce((sum, rank, n) => sum + rank * (n + 1), 0), order]));
  const largest = [...shares.keys()].sort((a, b) => b - a);
  const find = (left, many) => {
    if (many === 0) return left === 0 ? [] : undefined;
    if (left > many * largest[0] || left < many * largest.at(-1)) return undefined;
    for (const share of largest.filter((one) => left - one >= (many - 1) * largest.at(-1))) {
      const rest = find(left - share, many - 1);
      if (rest) return [share, ...rest];
    }
    return undefined;
  };
  return find(L, tasters).map((share) => shares.get(share));
}

function rankings(of, row) {
  const alikeRows = (samples, tasters) => Array.from({ length: tasters }, () => [...Array(samples).keys()].map((n) => n + 1));
  for (const { J, P, critical } of of.friedman_exact.points) row(`ranking-${P}`, J, { ranks: alikeRows(P, J) }, [[/^F is evidence at 5 %/u, (seen) => Math.abs(Number(seen) - critical) < 0.006]]);
  for (const { n, k, d } of of.all_pairs.points) row(`ranking-${k}`, n, { ranks: alikeRows(k, n) }, [['least difference of all pairs at once, 5 %', String(d)]]);
  for (const { P, J, alpha, critical } of of.page_exact.points) {
    const is = [`L is evidence at ${alpha} %, counted out without ties: from`, String(critical)];
    row(`trend-${P}`, J, { ranks: ranksOf(P, J, critical) }, [is, ['Page’s L', String(critical)], [/^its chance, one-sided/u, (p) => Number(p) <= alpha / 100]], ['They came as expected']);
  }
  for (const printed of Object.values(of.rankings).filter((one) => one.rows)) {
    const ranks = printed.rows.map((one) => one.split(' ').map(Number));
    const name = `${printed.expected ? 'trend' : 'ranking'}-${ranks[0].length}`;
    const figures = printed.sums.map((sum, n) => [`secret ${LETTERS[n]}`, String(sum)]);
    if (printed.statistic) figures.push(['Friedman’s F', printed.statistic], ['least difference of a pair chosen beforehand, 5 %', printed.least]);
    if (printed['all-pairs']) figures.push(['least difference of all pairs at once, 5 %', String(printed['all-pairs'])]);
    for (const [more, less] of printed.apart ?? []) figures.push([`secret ${more} – secret ${less}`, (difference) => Number(difference) >= Number(printed.least)]);
    if (printed.expected) {
      const { L, mean, deviation, z, p } = printed.expected;
      figures.push(['Page’s L', String(L)], [/^its mean and standard deviation/u, `${mean} and ${deviation}`], ['its z', z], [/^its chance, one-sided, exact/u, p]);
    }
    row(name, ranks.length, { ranks }, figures, printed.misprinted ? [`not ${printed.misprinted}`] : []);
  }
  // The chi-squared of ISO 8587's example: 0.0314 beside the exact chance.
  const [iso] = [of.rankings['iso-8587']];
  row('ranking-5', 8, { ranks: iso.rows.map((one) => one.split(' ').map(Number)) }, [[/by chi-squared, 4 degrees/u, (p) => Math.abs(Number(p) - 0.0314) < 6e-5]]);
}
