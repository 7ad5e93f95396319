// Published routing instances against the best known: npm run bench:routes -- [SECONDS] [SEEDS, such as 1,2,3] [NAMES]
// Writes its table into the README of stage 6. NAMES: a part of the file names to run alone, which leaves the README as it is.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const out = mkdtempSync(join(tmpdir(), 'nodulary-bench-routes-'));
// Built as the command line is, so that the search runs at its own pace.
await build({
  configFile: false,
  logLevel: 'warn',
  build: {
    ssr: fileURLToPath(new URL('bench-routes.ts', import.meta.url)),
    outDir: out,
    rolldownOptions: { output: { entryFileNames: 'bench-routes.mjs' } },
  },
});
const root = fileURLToPath(new URL('../..', import.meta.url));
const { status } = spawnSync(process.execPath, [join(out, 'bench-routes.mjs'), root, ...process.argv.slice(2)], {
  stdio: 'inherit',
});
rmSync(out, { recursive: true });
process.exit(status ?? 1);
