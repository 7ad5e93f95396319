// End-to-end time and memory of planning a folder, and each stage's share: npm run bench -- FOLDER [RUNS]
// One run to warm the disk and the build, then RUNS whole processes; median and spread of each stage.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const [folder = 'scenarios/demo-district', runs = '3'] = process.argv.slice(2);
if (!(Number(runs) >= 1)) {
  console.error(`${runs} is no number of runs. Give one folder and how often it is planned: npm run bench -- FOLDER 3`);
  process.exit(2);
}
const command = fileURLToPath(new URL('../../src/cli/nodulary.mjs', import.meta.url));
const out = mkdtempSync(join(tmpdir(), 'nodulary-bench-'));

function run() {
  const from = performance.now();
  const { status, stderr } = spawnSync(process.execPath, [command, 'plan', folder, '--out', out], { encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  const { milliseconds, peakMemoryMiB } = JSON.parse(readFileSync(join(out, 'run.json'), 'utf8'));
  return { ...milliseconds, 'whole process': Math.round(performance.now() - from), 'peak memory, MiB': peakMemoryMiB };
}

run();
const results = Array.from({ length: Number(runs) }, run);
rmSync(out, { recursive: true });
console.log(`${folder}: ${runs} runs after one to warm up, milliseconds (lowest, median, highest)`);
for (const name of Object.keys(results[0])) {
  const sorted = results.map((result) => result[name]).sort((a, b) => a - b);
  const figures = [sorted[0], sorted[Math.floor(sorted.length / 2)], sorted.at(-1)];
  console.log(name.padEnd(32), ...figures.map((figure) => String(figure).padStart(8)));
}
