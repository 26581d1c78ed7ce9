import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { build } from 'vite';
import type { Ink } from '../../src/documents/ink.ts';
import type { Page } from '../../src/documents/page.ts';
import { pagesPdf } from '../../src/documents/pdf.ts';
import { libraryFont } from '../../src/documents/pdf-file.ts';
import { pageSvg } from '../../src/documents/svg.ts';
import { svgFonts } from '../../src/documents/svg-fonts.ts';

/** A page by itself that makes a PDF and an SVG, bundled as the app is and under the same policy: libraries have other code for browsers. */

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
const sourceOf = (name: string) =>
  JSON.stringify(fileURLToPath(new URL(`../../src/documents/${name}.ts`, import.meta.url)));
const code = `
  import { pagesPdf } from ${sourceOf('pdf')};
  import { pageSvg } from ${sourceOf('svg')};
  import { svgFonts } from ${sourceOf('svg-fonts')};
  const sheet = ${JSON.stringify(sheet)};
  const bytes = async (url) => new Uint8Array(await (await fetch(url)).arrayBuffer());
  const fonts = { regular: await bytes('regular.ttf'), bold: await bytes('bold.ttf') };
  const made = await pagesPdf([sheet, sheet], { ...${JSON.stringify(about)}, fonts });
  await fetch('made.pdf', { method: 'POST', body: made });
  await fetch('made.svg', { method: 'POST', body: pageSvg(sheet, { fontFaces: svgFonts(sheet, fonts) }) });
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

test('papers made in the browser are those that the command line makes, byte for byte', async ({ page }) => {
  const files: Readonly<Record<string, { readonly contentType: string; readonly body: string | Buffer }>> = {
    '/': { contentType: 'text/html', body: html },
    '/main.js': { contentType: 'text/javascript', body: await bundle() },
    '/regular.ttf': { contentType: 'font/ttf', body: fonts.regular },
    '/bold.ttf': { contentType: 'font/ttf', body: fonts.bold },
  };
  await page.route('http://papers.test/**', (route) =>
    route.fulfill(files[new URL(route.request().url()).pathname] ?? { status: 204 }),
  );
  const posted = (name: string) => page.waitForRequest(`http://papers.test/${name}`);
  const [pdfPosted, svgPosted] = [posted('made.pdf'), posted('made.svg')];
  await page.goto('http://papers.test/');
  const made = (await pdfPosted).postDataBuffer() ?? Buffer.alloc(0);
  const own = await pagesPdf([sheet, sheet], { ...about, fonts });
  expect(made.length).toBe(own.length);
  expect(createHash('sha256').update(made).digest('hex')).toBe(createHash('sha256').update(own).digest('hex'));
  expect((await svgPosted).postData()).toBe(svgOf(sheet));
});

function svgOf(of: Page): string {
  return pageSvg(of, { fontFaces: svgFonts(of, fonts) });
}

test('an SVG is set in the font that lies inside it: Latin, Greek and Cyrillic letters are as wide as the font says', async ({
  page,
}) => {
  const styles = { regular: 'sheet-text', bold: 'bay-name' } as const;
  const lines = ['Küche 3,5 m² × 2 – “Šatna”', 'Ёлка Щётка Їжа', 'Διάδρομος ΧΩΡΟΣ'].flatMap((text, i) =>
    (['regular', 'bold'] as const).map((weight, k) => ({ text, weight, at: [20, 20 + 20 * i + 10 * k] as const })),
  );
  const inks = lines.map(({ text, weight, at }): Ink => {
    const place = { at, anchor: 'start', angleDeg: 0, halo: null } as const;
    return { ink: 'text', text, style: styles[weight], colour: 'ink', ...place };
  });
  // the same font may be at hand on this machine too
  const body = svgOf({ ...sheet, groups: [{ ref: null, inks }] }).replace(/, 'DejaVu[^"]*"/u, ', monospace"');
  await page.route('http://papers.test/sheet.svg', (route) => route.fulfill({ contentType: 'image/svg+xml', body }));
  await page.goto('http://papers.test/sheet.svg');
  const shares = await page.evaluate(async () => {
    await document.fonts.ready;
    return [...document.querySelectorAll('text')].map(
      (text) => text.getComputedTextLength() / Number(text.getAttribute('font-size')),
    );
  });
  expect(shares).toHaveLength(lines.length);
  const library = { regular: libraryFont(fonts.regular), bold: libraryFont(fonts.bold) };
  for (const [i, { text, weight }] of lines.entries()) {
    const font = library[weight];
    // letter by letter, as the SVG has no pairs that are moved together
    const units = [...text].reduce((sum, letter) => sum + (font.layout(letter).glyphs[0]?.advanceWidth ?? 0), 0);
    expect(Math.abs((shares[i] ?? 0) / (units / font.unitsPerEm) - 1), text).toBeLessThan(0.002);
  }
});
