// The long run: 500 random scenarios instead of the 40 of every run, 500 small problems of stock counted out instead of 100, and
// 200 small networks against all plans there are instead of 12, and three whole seasons played through instead of some days. More or others: NODULARY_RANDOM_SCENARIOS, NODULARY_FIRST_SEED,
// NODULARY_COUNTED_PROBLEMS, NODULARY_SMALL_NETWORKS, NODULARY_SEASONS.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const vitest = fileURLToPath(new URL('../node_modules/vitest/vitest.mjs', import.meta.url));
const env = {
  NODULARY_RANDOM_SCENARIOS: '500',
  NODULARY_COUNTED_PROBLEMS: '500',
  NODULARY_SMALL_NETWORKS: '200',
  NODULARY_SEASON_DAYS: '27',
  NODULARY_SEASONS: '3',
  ...process.env,
};
const tests = [
  'tests/properties',
  'tests/engine/stages/5-allocation/enumeration.test.ts',
  'exact-on-the-small',
  'season-played',
];
process.exit(spawnSync(process.execPath, [vitest, 'run', ...tests], { stdio: 'inherit', env }).status ?? 1);
