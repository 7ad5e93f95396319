// Every check and test, in the order in which a failure is cheapest to read. Called by `npm test` once all is installed.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const bin = (name) => fileURLToPath(new URL(`../node_modules/.bin/${name}`, import.meta.url));

const steps = [
  ['format and lint', bin('biome'), ['check', '.']],
  ['types', bin('tsc'), ['-b']],
  ['unused files and dependencies', bin('knip'), []],
  [
    'a Chromium for the browser tests',
    process.execPath,
    [fileURLToPath(new URL('./browser/provide-chromium.mjs', import.meta.url))],
    'may fail',
  ],
  ['tests', bin('vitest'), ['run', '--exclude', 'tests/browser/**', ...process.argv.slice(2)]],
  // One browser at a time: two on two cores take each other's frames.
  ['tests in a browser', bin('vitest'), ['run', 'tests/browser', '--no-file-parallelism']],
];

let failed = 0;
for (const [title, command, args, mayFail] of steps) {
  console.log(`\n== ${title}`);
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' });
  if (status !== 0 && !mayFail) failed++;
}
console.log(`\nchecks: ${steps.length - failed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
