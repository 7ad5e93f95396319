import { type ChildProcess, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { findChromium, LAUNCH_ARGUMENTS } from './find-chromium.mjs';

/** The dashboard as a stranger gets it: `npm start` on any free port, and a Chromium that opens the address it prints. */
export interface Dashboard {
  readonly address: string;
  readonly browser: Browser;
  /** What `npm start` wrote on standard output. */
  readonly printed: string;
  close(): Promise<void>;
}

const command = fileURLToPath(new URL('../../src/cli/nodulary.mjs', import.meta.url));

export async function openDashboard(): Promise<Dashboard> {
  const executablePath = await findChromium();
  if (!executablePath) throw new Error('No Chromium found, fetched or installed: browser tests cannot run.');
  const server = spawn(process.execPath, [command, 'start'], { env: { ...process.env, PORT: '0' } });
  const { address, printed } = await addressPrinted(server);
  const browser = await chromium.launch({ executablePath, args: LAUNCH_ARGUMENTS });
  return {
    address,
    browser,
    printed,
    async close() {
      await browser.close();
      server.kill();
    },
  };
}

function addressPrinted(server: ChildProcess): Promise<{ address: string; printed: string }> {
  return new Promise((resolve, reject) => {
    let [printed, said] = ['', ''];
    server.stderr?.on('data', (data) => {
      said += data;
    });
    server.stdout?.on('data', (data) => {
      printed += data;
      const address = /^http:\/\/127\.0\.0\.1:\d+\/$/m.exec(printed)?.[0];
      if (address) resolve({ address, printed });
    });
    server.on('exit', (code) => reject(new Error(`npm start ended with ${code}: ${said}`)));
  });
}

/** Messages of the console that are known and harmless on software rendering; all others fail a test. */
const HARMLESS = [
  /uniform block reflection failed/,
  /GPU stall due to ReadPixels/,
  /Automatic fallback to software WebGL/,
];

/** A page, and the list of what its console complained about. */
export async function openPage(
  { browser }: Dashboard,
  size: { readonly width: number; readonly height: number } = { width: 1366, height: 768 },
): Promise<{ page: Page; complaints: string[] }> {
  const page = await browser.newPage({ viewport: size });
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    const isComplaint = message.type() === 'error' || message.type() === 'warning';
    if (isComplaint && !HARMLESS.some((known) => known.test(message.text()))) complaints.push(message.text());
  });
  return { page, complaints };
}
