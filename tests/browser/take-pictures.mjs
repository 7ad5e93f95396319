// Takes the pictures of README.md anew, on the demonstration district.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const vitest = fileURLToPath(new URL('../../node_modules/vitest/vitest.mjs', import.meta.url));
const env = { ...process.env, NODULARY_PICTURES: 'yes' };
const options = ['run', 'tests/browser/pictures.test.ts', ...process.argv.slice(2)];
process.exit(spawnSync(process.execPath, [vitest, ...options], { stdio: 'inherit', env }).status ?? 1);
