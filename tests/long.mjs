// The long run: 500 random scenarios instead of the 40 of every run, and 200 small networks against all plans there are instead of 6. More or others: NODULARY_RANDOM_SCENARIOS, NODULARY_FIRST_SEED.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const vitest = fileURLToPath(new URL('../node_modules/vitest/vitest.mjs', import.meta.url));
const env = { NODULARY_RANDOM_SCENARIOS: '500', NODULARY_SMALL_NETWORKS: '200', ...process.env };
process.exit(
  spawnSync(process.execPath, [vitest, 'run', 'tests/properties', 'exact-on-the-small'], { stdio: 'inherit', env })
    .status ?? 1,
);
