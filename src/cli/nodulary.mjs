#!/usr/bin/env node
// Runs Nodulary on a fresh clone: installs what is missing, builds what is stale, then does what was asked. Plain
// JavaScript and Node's own modules only, because it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(realpathSync(fileURLToPath(import.meta.url))), '..', '..');
const say = (text) => process.stderr.write(`${text}\n`);

/** Ends with words instead of a stack of calls. */
class Stop extends Error {}

function requireNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  const fits = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;
  if (!fits) throw new Stop(`Nodulary needs Node 20.19, 22.12 or newer; this is Node ${process.versions.node}.`);
}

const readJson = (file) => JSON.parse(readFileSync(file, 'utf8'));

/** Whether node_modules holds what package-lock.json asks for; npm writes down there what it installed when it is done. */
function isInstalled() {
  const record = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(record)) return false;
  const asked = readJson(join(root, 'package-lock.json')).packages;
  const there = readJson(record).packages;
  return Object.entries(asked).every(([path, { version, optional }]) => {
    if (path === '') return true;
    // What is optional is left out on systems that it is not made for.
    return there[path] === undefined ? optional === true : there[path].version === version;
  });
}

/** The npm that runs this, else the one on the path. */
function npmCommand() {
  const running = process.env.npm_execpath;
  const script = running && join(dirname(running), 'npm-cli.js');
  if (script && basename(running).startsWith('np') && existsSync(script)) return [process.execPath, script];
  return [process.platform === 'win32' ? 'npm.cmd' : 'npm'];
}

function install() {
  if (isInstalled()) return;
  say('Installing what is missing (once) ...');
  const [command, ...before] = npmCommand();
  const { status, error } = spawnSync(command, [...before, 'ci', '--include=dev', '--no-audit', '--no-fund'], {
    cwd: root,
    // npm's words go to standard error, so that standard output holds results alone.
    stdio: ['ignore', 2, 2],
    shell: command.endsWith('.cmd'),
  });
  if (error || status !== 0) {
    throw new Stop('Installing failed: see above. It needs npm, and the network or a filled npm cache.');
  }
}

function filesUnder(folder) {
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesUnder(path) : [path];
  });
}

/** One hash of all that the builds are made from. */
function sourceHash() {
  const hash = createHash('sha256');
  const folders = ['src', 'geodata'].flatMap((folder) => filesUnder(join(root, folder)));
  for (const file of [join(root, 'package-lock.json'), join(root, 'vite.config.ts'), ...folders])
    hash
      .update(`${file.slice(root.length)}\0`)
      .update(readFileSync(file))
      .update('\0');
  return hash.digest('hex');
}

/** Builds into a folder of its own and puts it in place when it is whole, so that two runs at once do no harm. */
function build(name, options) {
  const built = join(root, 'dist', name);
  const mark = 'built-from.txt';
  const hash = sourceHash();
  if (existsSync(join(built, mark)) && readFileSync(join(built, mark), 'utf8') === hash) return built;
  say(`Building the ${name === 'cli' ? 'commands' : 'page'} (once after every change) ...`);
  const folder = join(root, 'dist', `${name}-${process.pid}`);
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const all = ['build', ...options, '--outDir', folder, '--emptyOutDir', '--logLevel', 'warn'];
  // Whatever the shell says: another value would build the page with its libraries' checks for developers.
  const env = { ...process.env, NODE_ENV: 'production' };
  const { status } = spawnSync(process.execPath, [vite, ...all], { cwd: root, stdio: ['ignore', 2, 2], env });
  if (status !== 0) throw new Stop('Building failed: see above.');
  writeFileSync(join(folder, mark), hash);
  rmSync(built, { recursive: true, force: true });
  try {
    renameSync(folder, built);
  } catch {
    // Another run was quicker and built the same.
    rmSync(folder, { recursive: true, force: true });
  }
  return built;
}

async function runCommand(args) {
  const built = build('cli', ['--ssr']);
  const { main } = await import(pathToFileURL(join(built, 'main.js')).href);
  return main(args);
}

function test(args) {
  const runAll = join(root, 'tests', 'run-all.mjs');
  const { status } = spawnSync(process.execPath, [runAll, ...args], { cwd: root, stdio: 'inherit' });
  return status ?? 1;
}

async function run([command, ...args]) {
  requireNode();
  install();
  if (command === 'test') return test(args);
  if (command === 'start') build('app', []);
  return runCommand(command === undefined ? [] : [command, ...args]);
}

try {
  process.exitCode = await run(process.argv.slice(2));
} catch (error) {
  say(
    error instanceof Stop
      ? error.message
      : `Nodulary could not start: ${error instanceof Error ? error.message : error}`,
  );
  process.exitCode = 1;
}
