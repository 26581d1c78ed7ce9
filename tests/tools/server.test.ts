import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { get, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveFolder } from '../../src/cli/server.mjs';

const folder = mkdtempSync(join(tmpdir(), 'screed-bays-server-'));
let server: Awaited<ReturnType<typeof serveFolder>>;

/** Asks for a path exactly as written: `fetch` would tidy `..` away before it is sent. */
function ask(path: string, method = 'GET'): Promise<{ status: number | undefined; type: string; text: string }> {
  const { hostname, port } = new URL(server.address);
  return new Promise((done, fail) => {
    request({ hostname, port, path, method, agent: false }, (answer) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (chunk) => {
        text += chunk;
      });
      answer.on('end', () => done({ status: answer.statusCode, type: answer.headers['content-type'] ?? '', text }));
    })
      .on('error', fail)
      .end();
  });
}

beforeAll(async () => {
  mkdirSync(join(folder, 'dist', 'assets'), { recursive: true });
  mkdirSync(join(folder, 'dist-private'));
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'dist-private', 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'dist', 'index.html'), '<title>page</title>');
  writeFileSync(join(folder, 'dist', 'assets', 'a.js'), 'export {};');
  server = await serveFolder(join(folder, 'dist'), 0);
});

afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

describe('the server of npm start', () => {
  it('gives the page and its files with their types', async () => {
    expect(await ask('/')).toEqual({ status: 200, type: 'text/html; charset=utf-8', text: '<title>page</title>' });
    expect(await ask('/assets/a.js?v=1')).toMatchObject({ status: 200, type: 'text/javascript; charset=utf-8' });
    expect(await ask('/', 'HEAD')).toMatchObject({ status: 200, text: '' });
  });

  it.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/../../secret.txt',
    '/../dist-private/secret.txt',
    '//secret.txt',
    '/..%5csecret.txt',
    '/%00',
    '/%zz',
    '/assets',
  ])('gives nothing for %s', async (path) => {
    const { status, text } = await ask(path);
    expect(status).toBe(404);
    expect(text).not.toContain('secret');
  });

  it('takes no orders', async () => {
    expect(await ask('/', 'POST')).toMatchObject({ status: 405 });
  });

  it('lets no other page frame it', async () => {
    const policy = await new Promise((done) => {
      get(server.address, (answer) => {
        answer.resume();
        done(answer.headers['content-security-policy']);
      });
    });
    expect(policy).toBe("frame-ancestors 'none'");
  });

  it('takes the next port where one is taken', async () => {
    const taken = Number(new URL(server.address).port);
    const other = await serveFolder(join(folder, 'dist'), taken);
    expect(Number(new URL(other.address).port)).toBeGreaterThan(taken);
    await other.close();
  });
});
