import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveApp } from '../../src/cli/serve-app.ts';

const folder = mkdtempSync(join(tmpdir(), 'nodulary-serve-'));
let server: Server;

beforeAll(async () => {
  for (const part of ['app/.vite', 'scenario', 'out']) mkdirSync(join(folder, part), { recursive: true });
  const files: Readonly<Record<string, string>> = {
    'app/index.html': '<!doctype html>',
    'app/a.mjs': '0',
    'app/b.wasm': '0',
    'app/.vite/manifest.json': '{}',
    'scenario/scenario.json': '{}',
    'scenario/private.txt': 'secret',
    'out/plan.json': '{"plan":1}',
    'outside.txt': 'secret',
  };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  symlinkSync(join(folder, 'outside.txt'), join(folder, 'app', 'link.txt'));
  const start = {
    folder: join(folder, 'scenario'),
    name: 's',
    files: ['scenario.json'],
    plan: join(folder, 'out/plan.json'),
  };
  server = serveApp(join(folder, 'app'), start);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
});

afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Asks for a path exactly as written: fetch would tidy it first. */
function ask(path: string, method = 'GET'): Promise<{ status: number; type: string; policy: string; text: string }> {
  const { port } = server.address() as AddressInfo;
  return new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port, path, method }, (response) => {
      let text = '';
      response.on('data', (part) => {
        text += part;
      });
      response.on('end', () => {
        const { statusCode: status = 0, headers } = response;
        resolve({
          status,
          type: headers['content-type'] ?? '',
          policy: String(headers['content-security-policy']),
          text,
        });
      });
    })
      .on('error', reject)
      .end();
  });
}

describe('the server of the page', () => {
  it.each([
    ['/', 'text/html; charset=utf-8'],
    ['/a.mjs', 'text/javascript; charset=utf-8'],
    ['/b.wasm', 'application/wasm'],
    ['/start/plan.json', 'application/json; charset=utf-8'],
    ['/start/files.json', 'application/json; charset=utf-8'],
    ['/start/files/scenario.json', 'application/json; charset=utf-8'],
  ])('serves %s as %s under the policy', async (path, type) => {
    const answer = await ask(path);
    expect([answer.status, answer.type]).toEqual([200, type]);
    expect(answer.policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
    expect(answer.policy).not.toContain('unsafe-inline');
  });

  it.each([
    '/../outside.txt',
    '/..%2foutside.txt',
    '/%2e%2e/outside.txt',
    '/a/../../outside.txt',
    '/link.txt',
    '/.vite/manifest.json',
    '/start/files/private.txt',
    '/start/files/../out/plan.json',
    '/start/files/..%2fprivate.txt',
    '/%',
    '/a.mjs/x',
    '/nothing',
    '/\0',
  ])('gives nothing for %s', async (path) => {
    if (path.includes('\0')) return expect((await ask('/%00')).status).toBe(404);
    const answer = await ask(path);
    expect(answer.status).toBe(404);
    expect(answer.text).not.toContain('secret');
  });

  it('takes no other method than GET and HEAD', async () => {
    expect((await ask('/', 'POST')).status).toBe(405);
    expect(await ask('/', 'HEAD')).toMatchObject({ status: 200, text: '' });
  });
});
