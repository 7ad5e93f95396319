// Where a Chromium is, if one is to be had: CHROME_BIN, the browser tool's own download, or one installed on the machine.
// Each is tried by starting it, since a file that is there may still not run.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

const INSTALLED = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/opt/google/chrome/chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

export const LAUNCH_ARGUMENTS = [
  '--no-sandbox',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

async function starts(executablePath) {
  if (!executablePath || !existsSync(executablePath)) return false;
  try {
    const browser = await chromium.launch({ executablePath, args: LAUNCH_ARGUMENTS, timeout: 60_000 });
    await browser.close();
    return true;
  } catch {
    return false;
  }
}

/** Path of a Chromium that starts, or null. */
export async function findChromium() {
  for (const path of [process.env.CHROME_BIN, chromium.executablePath(), ...INSTALLED])
    if (await starts(path)) return path;
  return null;
}

/** Fetches or installs one: the browser tool's download first, then Debian's package where we are root. */
export async function provideChromium(say) {
  const found = await findChromium();
  if (found) return found;
  say("no Chromium found; fetching the browser tool's own");
  const cli = new URL('../../node_modules/playwright-core/cli.js', import.meta.url).pathname;
  spawnSync(process.execPath, [cli, 'install', 'chromium'], { stdio: 'ignore', timeout: 240_000 });
  const fetched = await findChromium();
  if (fetched) return fetched;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    say("not to be fetched; installing Debian's chromium");
    const quiet = { stdio: 'ignore', timeout: 600_000, env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
    spawnSync('apt-get', ['update'], quiet);
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], quiet);
  }
  return findChromium();
}
