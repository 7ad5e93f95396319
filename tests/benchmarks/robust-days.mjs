// Delivery days chosen on the list of past seasons against days chosen on the median one, each judged in seasons that had no part in
// the choice: npm run bench:robust -- [FOLDER] [SEASONS] [ITERATIONS]. Prints each season and the difference, as found.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const vitest = fileURLToPath(new URL('../../node_modules/vitest/vitest.mjs', import.meta.url));
const [folder = 'scenarios/demo-district', seasons = '30', iterations = '2000'] = process.argv.slice(2);
const env = { ...process.env, NODULARY_ROBUST: `${folder};${seasons};${iterations}` };
const { status } = spawnSync(process.execPath, [vitest, 'run', 'tests/engine/replay/robust-days.test.ts'], {
  stdio: 'inherit',
  env,
});
process.exit(status ?? 1);
