import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, resolve, sep } from 'node:path';

const host = '127.0.0.1';

/** @type {Readonly<Record<string, string>>} */
const contentTypes = {
  '.css': 'text/css; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/** What the page's own policy cannot say from inside the page. */
const headers = {
  'Content-Security-Policy': "frame-ancestors 'none'",
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};

/** The file that a request path stands for, or null where it leads out of the folder.
 *  @param {string} folder absolute
 *  @param {string} url such as /assets/a.js?x=1 */
function requestedFile(folder, url) {
  let path;
  try {
    path = decodeURIComponent(url.replace(/[?#].*$/s, ''));
  } catch {
    return null; // a broken escape names no file
  }
  if (path.includes('\0')) return null;
  const file = resolve(folder, `.${path.endsWith('/') ? `${path}index.html` : path}`);
  return file.startsWith(folder + sep) ? file : null;
}

/** @param {string} folder absolute
 *  @param {import('node:http').IncomingMessage} request
 *  @param {import('node:http').ServerResponse} response */
async function answer(folder, request, response) {
  /** @param {number} status @param {string} text */
  const refuse = (status, text) => {
    response.writeHead(status, { ...headers, 'Content-Type': 'text/plain; charset=utf-8' }).end(`${text}\n`);
  };
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, 'Only GET and HEAD');
  const file = requestedFile(folder, request.url ?? '/');
  const facts = file === null ? null : await stat(file).catch(() => null);
  if (file === null || !facts?.isFile()) return refuse(404, 'Not found');
  response.writeHead(200, {
    ...headers,
    'Content-Type': contentTypes[extname(file).toLowerCase()] ?? 'application/octet-stream',
    'Content-Length': facts.size,
    // Built files carry a hash of what is in them; the page that names them does not.
    'Cache-Control': extname(file) === '.html' ? 'no-cache' : 'max-age=3600',
  });
  if (request.method === 'HEAD') return response.end();
  createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
}

/** @param {import('node:http').Server} server @param {number} port
 *  @returns {Promise<boolean>} false where the port is taken */
function listen(server, port) {
  return new Promise((done, fail) => {
    /** @param {NodeJS.ErrnoException} error */
    const refused = (error) => (error.code === 'EADDRINUSE' ? done(false) : fail(error));
    server.once('error', refused);
    server.listen(port, host, () => {
      server.off('error', refused);
      done(true);
    });
  });
}

/** Serves the files of a folder to this machine alone, at the port or the next free one (20 are tried).
 *  @param {string} folder
 *  @param {number} port 0: any free one
 *  @returns {Promise<{ address: string, close: () => Promise<void> }>} */
export async function serveFolder(folder, port) {
  const root = resolve(folder);
  const server = createServer((request, response) => void answer(root, request, response));
  for (let tried = port; tried < port + 20; tried += 1) {
    if (!(await listen(server, tried))) continue;
    const at = server.address();
    const bound = at !== null && typeof at === 'object' ? at.port : tried;
    return {
      address: `http://${host}:${bound}/`,
      close: () =>
        new Promise((done) => {
          server.close(() => done());
          server.closeAllConnections();
        }),
    };
  }
  throw new Error(`The ports ${port} to ${port + 19} are all taken: give another one with --port`);
}
