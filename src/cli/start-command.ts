import { existsSync, readdirSync, readFileSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { SCENARIO_PARTS } from '../engine/index.ts';
import { runPlan } from './plan-command.ts';
import { readNumber } from './read-options.ts';
import { EXIT, type ExitCode, Refusal } from './refusal.ts';
import { serveApp } from './serve-app.ts';
import { openTerminal } from './terminal.ts';

const DEMO = 'demo-district';
const USUAL_PORT = 8642;

/**
 * Plans the demonstration district, prints its headline and the address, and serves the built page with that plan. The
 * command is done when the server listens; the process lives as long as the server.
 */
export async function startCommand(): Promise<ExitCode> {
  const terminal = openTerminal();
  try {
    const root = projectFolder();
    const app = join(root, 'dist', 'app');
    if (!existsSync(join(app, 'index.html'))) throw new Refusal('The page is not built: dist/app is missing.');
    const folder = join(root, 'scenarios', DEMO);
    const out = join(root, 'dist', 'start');
    const exitCode = await runPlan([folder, '--out', out], terminal);
    if (exitCode !== EXIT.done) return exitCode;
    const start = { folder, name: DEMO, files: scenarioFiles(folder), plan: join(out, 'plan.json') };
    const port = await listen(serveApp(app, start));
    terminal.result(`\nhttp://127.0.0.1:${port}/`);
    return EXIT.done;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    terminal.notice(error.message);
    return error.exitCode;
  }
}

/** Walks up from the running script, which lies elsewhere once it is built. */
function projectFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'scenarios', DEMO)) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}

/** scenario.json and what it names, the files of a folder one by one. */
function scenarioFiles(folder: string): string[] {
  const document = JSON.parse(readFileSync(join(folder, 'scenario.json'), 'utf8')) as {
    readonly files?: Readonly<Record<string, string>>;
  };
  const named = SCENARIO_PARTS.flatMap((part) => document.files?.[part] ?? []);
  const paths = named.flatMap((path) => {
    if (!path.endsWith('/')) return [path];
    return existsSync(join(folder, path)) ? readdirSync(join(folder, path)).map((name) => path + name) : [];
  });
  return ['scenario.json', ...paths].filter((path) => existsSync(join(folder, path)));
}

/** Listens on the port asked for with PORT; without it on the usual one, or any where that is taken. */
async function listen(server: Server): Promise<number> {
  const asked = process.env['PORT'];
  if (asked !== undefined && asked !== '') {
    const port = readNumber('PORT', asked, { least: 0, most: 65535, whole: true });
    return tryPort(server, port).catch(() => {
      throw new Refusal(`Port ${port} is taken or not allowed. Choose another with PORT.`);
    });
  }
  return tryPort(server, USUAL_PORT).catch(() => tryPort(server, 0));
}

function tryPort(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
}
