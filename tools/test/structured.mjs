// The structured data of every page against the vocabulary of schema.org, by an independent judge: Google's generated
// types (npm schema-dts) and the TypeScript compiler. A property that a Recipe does not have, or a value of a kind
// that it cannot take, does not compile; a spoilt copy must not.
import { execFileSync } from 'node:child_process';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const compiler = resolve(here, 'node_modules/typescript/bin/tsc');

/// What the compiler has to say of a file of these recipes.
function judged(name, recipes) {
  const lines = recipes.map((recipe, n) => `export const recipe${n}: WithContext<Recipe> = ${JSON.stringify(recipe)};`);
  const file = resolve(here, name);
  writeFileSync(file, `import type { Recipe, WithContext } from 'schema-dts';\n${lines.join('\n')}\n`);
  try {
    const options = ['--noEmit', '--strict', '--skipLibCheck', '--module', 'nodenext', '--moduleResolution', 'nodenext', '--types', ''];
    execFileSync(process.execPath, [compiler, ...options, file], { cwd: here, encoding: 'utf8' });
    return '';
  } catch (error) {
    return error.stdout || error.stderr || String(error);
  }
}

const recipes = [];
for (const folder of process.argv.slice(2)) {
  for (const name of readdirSync(folder).filter((name) => name.endsWith('.html'))) {
    const page = readFileSync(resolve(folder, name), 'utf8');
    for (const [, data] of page.matchAll(/<script type="application\/ld\+json">(.*?)<\/script>/gs)) recipes.push(JSON.parse(data));
  }
}
const wrong = judged('recipes.ts', recipes);
const spoilt = [{ ...recipes[0], noSuchProperty: 1 }, { ...recipes[0], nutrition: { '@type': 'Person', name: 'x' } }];
const findings = wrong ? [wrong] : [];
for (const one of spoilt) if (!judged('spoilt.ts', [one])) findings.push('a spoilt recipe is let through');
findings.forEach((finding) => console.error(finding));
console.log(`${recipes.length} recipes held against schema.org, ${findings.length} findings`);
process.exit(findings.length > 0 || recipes.length === 0 ? 1 : 0);
