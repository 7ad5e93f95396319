// Runs a benchmark of this folder, built as the command line is, so that the engine runs at its own pace:
//   npm run bench:routes -- [SECONDS] [SEEDS, such as 1,2,3] [NAMES, by commas]   published instances; all of them: the table in stage 6's README
//   npm run bench:play -- [FOLDER]                                     time and heap of one play of a plan
//   npm run bench:allocation -- [PLACES, such as 300,1000] [RUNS]       stage 5 beside the solver by itself
//   npm run bench:delivery -- [STEPS] [FOLDERS]                        the plan beside what people do by hand
//   npm run bench:growth -- [STEPS A LOAD] [COMMUNITIES]               invented districts of 100 to 1,000 loads with 15 vehicles
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const [name, ...args] = process.argv.slice(2);
const root = fileURLToPath(new URL('../..', import.meta.url));
const outDir = join(root, 'dist/benchmarks');
await build({
  root,
  configFile: false,
  logLevel: 'warn',
  build: {
    ssr: fileURLToPath(new URL(`${name}.ts`, import.meta.url)),
    outDir,
    emptyOutDir: false,
    rolldownOptions: { output: { entryFileNames: `${name}.mjs` } },
  },
});
const { status } = spawnSync(process.execPath, [join(outDir, `${name}.mjs`), root, ...args], { stdio: 'inherit' });
process.exit(status ?? 1);
