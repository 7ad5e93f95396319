// The long run: 500 random scenarios instead of the 40 of every run. More or others: NODULARY_RANDOM_SCENARIOS, NODULARY_FIRST_SEED.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const vitest = fileURLToPath(new URL('../node_modules/vitest/vitest.mjs', import.meta.url));
const env = { NODULARY_RANDOM_SCENARIOS: '500', ...process.env };
process.exit(spawnSync(process.execPath, [vitest, 'run', 'tests/properties'], { stdio: 'inherit', env }).status ?? 1);
