import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { build } from 'vite';
import type { Ink } from '../../src/documents/ink.ts';
import type { Page } from '../../src/documents/page.ts';
import { pagesPdf } from '../../src/documents/pdf.ts';

/** A page by itself that makes a PDF, bundled as the app is and under the same policy: the library has other code for browsers. */

const words = [
  'Küche 3,5 m²',
  'Кухня',
  'Διάδρομος',
  '\u05d7\u05d3\u05e8 (12)',
  '\u0645\u0637\u0628\u062e 25',
  'official',
];
const texts = words.map((text, i): Ink => {
  const at = [100, 20 + 12 * i] as const;
  return { ink: 'text', text, style: 'bay-name', colour: 'ink', at, anchor: 'middle', angleDeg: 7 * i, halo: 'tint0' };
});
const disc: Ink = { ink: 'disc', centre: [40, 40], radiusMm: 7.3, fill: 'tint3', stroke: null };
const sheet: Page = {
  ...{ paper: 'A4', widthMm: 297, heightMm: 210, scale: 50, title: 'Küche', subject: 'Bays', part: 'Bays' },
  groups: [{ ref: null, inks: [disc, ...texts] }],
};
const about = { title: 'Küche', date: '2027-03-01', planText: '{"format": "screed-bays/plan"}' };

const entry = 'made-in-the-browser';
const writer = fileURLToPath(new URL('../../src/documents/pdf.ts', import.meta.url));
const code = `
  import { pagesPdf } from ${JSON.stringify(writer)};
  const bytes = async (url) => new Uint8Array(await (await fetch(url)).arrayBuffer());
  const fonts = { regular: await bytes('regular.ttf'), bold: await bytes('bold.ttf') };
  const made = await pagesPdf(${JSON.stringify([sheet, sheet])}, { ...${JSON.stringify(about)}, fonts });
  await fetch('made.pdf', { method: 'POST', body: made });
`;
const policy = "default-src 'none'; script-src 'self'; connect-src 'self'";
const html = `<meta http-equiv="Content-Security-Policy" content="${policy}"><script type="module" src="main.js"></script>`;

const { resolve } = createRequire(import.meta.url);
const fontOf = (name: string) => readFileSync(resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
const fonts = { regular: fontOf('DejaVuSansCondensed'), bold: fontOf('DejaVuSansCondensed-Bold') };

async function bundle(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    plugins: [
      {
        name: entry,
        resolveId: (id) => (id === entry ? id : null),
        load: (id) => (id === entry ? code : null),
      },
    ],
    build: { write: false, target: 'es2023', rolldownOptions: { input: entry, output: { codeSplitting: false } } },
  });
  if (!('output' in built)) throw new Error('not one bundle');
  return built.output[0].code;
}

test('a PDF made in the browser is the one that the command line makes, byte for byte', async ({ page }) => {
  const files: Readonly<Record<string, { readonly contentType: string; readonly body: string | Buffer }>> = {
    '/': { contentType: 'text/html', body: html },
    '/main.js': { contentType: 'text/javascript', body: await bundle() },
    '/regular.ttf': { contentType: 'font/ttf', body: fonts.regular },
    '/bold.ttf': { contentType: 'font/ttf', body: fonts.bold },
  };
  await page.route('http://papers.test/**', (route) =>
    route.fulfill(files[new URL(route.request().url()).pathname] ?? { status: 204 }),
  );
  const posted = page.waitForRequest('http://papers.test/made.pdf');
  await page.goto('http://papers.test/');
  const made = (await posted).postDataBuffer() ?? Buffer.alloc(0);
  const own = await pagesPdf([sheet, sheet], { ...about, fonts });
  expect(made.length).toBe(own.length);
  expect(createHash('sha256').update(made).digest('hex')).toBe(createHash('sha256').update(own).digest('hex'));
});
