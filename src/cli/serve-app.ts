import { createReadStream, realpathSync, statSync } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join, sep } from 'node:path';

/** Scripts, styles, fonts and workers from here only; WebAssembly may be compiled; nothing else, and nowhere else. */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "font-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const MIME_TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.geojson': 'application/geo+json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
};

/** What is served beside the built page. */
export interface ServedStart {
  /** Folder of the scenario, and the paths of its files within. */
  readonly folder: string;
  readonly name: string;
  readonly files: readonly string[];
  /** Path of the plan made from it. */
  readonly plan: string;
}

/** A server of the built page, to be listened on: only what stands in the build, and the scenario with its plan. */
export function serveApp(appFolder: string, start: ServedStart): Server {
  return createServer((request, response) => {
    setHeaders(response);
    if (request.method !== 'GET' && request.method !== 'HEAD') return end(response, 405, 'GET only\n');
    const path = pathOf(request);
    if (path === '/start/files.json') {
      response.setHeader('content-type', MIME_TYPES['.json'] as string);
      return end(response, 200, JSON.stringify({ name: start.name, files: start.files }));
    }
    const file = path === null ? null : fileAt(path, appFolder, start);
    if (file === null) return end(response, 404, 'Not here\n');
    return sendFile(file, request, response);
  });
}

function setHeaders(response: ServerResponse): void {
  response.setHeader('content-security-policy', CONTENT_SECURITY_POLICY);
  response.setHeader('x-content-type-options', 'nosniff');
  response.setHeader('referrer-policy', 'no-referrer');
  response.setHeader('cross-origin-opener-policy', 'same-origin');
  // The build and the plan may change between two runs on the same port.
  response.setHeader('cache-control', 'no-cache');
}

/** The path asked for, decoded once; null where it is not a path. */
function pathOf(request: IncomingMessage): string | null {
  try {
    return decodeURIComponent(new URL(request.url ?? '/', 'http://here').pathname);
  } catch {
    return null;
  }
}

function fileAt(path: string, appFolder: string, { folder, files, plan }: ServedStart): string | null {
  if (path === '/start/plan.json') return fileWithin(join(plan, '..'), 'plan.json');
  const part = path.startsWith('/start/files/') ? path.slice('/start/files/'.length) : null;
  if (part !== null) return files.includes(part) ? fileWithin(folder, part) : null;
  return fileWithin(appFolder, path === '/' ? 'index.html' : path);
}

/** A file that stands in a folder, links followed; null where there is none or it would lead out of the folder. */
function fileWithin(folder: string, path: string): string | null {
  try {
    const real = realpathSync(join(folder, path));
    const isInside = real.startsWith(realpathSync(folder) + sep);
    const isHidden = real.slice(realpathSync(folder).length).includes(`${sep}.`);
    return isInside && !isHidden && statSync(real).isFile() ? real : null;
  } catch {
    return null;
  }
}

function sendFile(file: string, request: IncomingMessage, response: ServerResponse): void {
  response.setHeader('content-type', MIME_TYPES[extname(file)] ?? 'application/octet-stream');
  response.setHeader('content-length', statSync(file).size);
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
}

function end(response: ServerResponse, status: number, text: string): void {
  response.statusCode = status;
  if (!response.hasHeader('content-type')) response.setHeader('content-type', 'text/plain; charset=utf-8');
  response.end(text);
}
