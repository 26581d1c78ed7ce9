import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Page } from '../../src/documents/page.ts';
import { pagesPdf } from '../../src/documents/pdf.ts';
import { isPaper, planTextIn } from '../../src/documents/plan-data.ts';
import { pageSvg } from '../../src/documents/svg.ts';
import { planRead } from '../../src/plan/read.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { planWrite } from '../../src/plan/write.ts';
import { demoText, shippedFonts } from './paper-fixture.ts';

const fonts = await shippedFonts();

const hostileNames = [
  '</metadata></svg><script>alert(1)</script>',
  ']]> & "quoted" \'once\' <!-- \\u003c',
  '\u0000\u0007\ud800\uffff\ufffe\u2028\u202e',
  '=1+1,"a"\r\n;b',
  'endstream endobj /Type /EmbeddedFile stream {"format": "screed-bays/plan"}',
  '<plan-data xmlns="urn:screed-bays:plan">AAAA</plan-data>',
  '\u05d7\u05d3\u05e8 \u0645\u0637\u0628\u062e \u{1f6c1}',
  '%PDF-1.7',
  'x'.repeat(10_000),
];

function planNamed(name: string): PlanFile {
  const outline = [[0, 0], [4000, 0], [4000, 3000], [0, 3000]] as const; // biome-ignore format: a line a line
  return { format: 'screed-bays/plan', version: 1, name, rooms: [{ id: 'r1', name, outline }] };
}

const pageOf = (title: string): Page => {
  const about = { paper: 'A4', widthMm: 297, heightMm: 210, scale: null, subject: title, part: title };
  return { ...about, title, groups: [] };
};

const bytesOf = (text: string) => new TextEncoder().encode(text);
const svgOf = (file: PlanFile) => bytesOf(pageSvg(pageOf(file.name), { planText: planWrite(file) }));
const pdfOf = (file: PlanFile) =>
  pagesPdf([pageOf(file.name)], { title: file.name, date: '2027-03-01', planText: planWrite(file), fonts });

describe('the plan inside a paper', () => {
  it.each(hostileNames.map((name) => [name.slice(0, 40), name]))('comes back byte for byte: %j', async (_, name) => {
    const file = planNamed(name);
    for (const paper of [svgOf(file), await pdfOf(file)]) {
      expect(isPaper(paper)).toBe(true);
      expect(planTextIn(paper)).toBe(planWrite(file));
    }
  });

  it('comes back as the plan of the demo that it was made from', async () => {
    const read = planRead(demoText('2-public-library'));
    if (read.kind === 'refused') throw new Error('the demo is refused');
    for (const paper of [svgOf(read.file), await pdfOf(read.file)]) {
      expect(planRead(planTextIn(paper) ?? '')).toEqual(read);
    }
  });

  it('takes less room in an SVG than its own text does', () => {
    const planText = demoText('2-public-library');
    const [bare, carrying] = [pageSvg(pageOf('A')), pageSvg(pageOf('A'), { planText })];
    expect(carrying.length - bare.length).toBeLessThan(planText.length / 2);
  });

  it('leaves a sheet without it as it was', () => {
    expect(pageSvg(pageOf('A'), {})).toBe(pageSvg(pageOf('A')));
    expect(pageSvg(pageOf('A'))).not.toContain('metadata');
  });

  it('is found after an editor gave its namespace a short name and broke its lines', () => {
    const file = planNamed('Hall');
    const text = new TextDecoder().decode(svgOf(file));
    const edited = text
      .replace('<svg ', '<svg xmlns:p="urn:screed-bays:plan" ')
      .replace('<plan-data xmlns="urn:screed-bays:plan"', '<p:plan-data')
      .replace('</plan-data>', '</p:plan-data>')
      .replace(/("zlib base64">)([^<]{40})/u, '$1\n    $2\n    ');
    expect(planTextIn(bytesOf(edited))).toBe(planWrite(file));
  });

  it('is found in a PDF that another program has written out anew', () => {
    const planText = planWrite(planNamed('Hall'));
    const packed = deflateSync(bytesOf(planText)).toString('latin1');
    const words = `/Filter[/FlateDecode]/Length ${packed.length}/Subtype/application#2Fjson/Type/EmbeddedFile`;
    const paper = `%PDF-1.6\n7 0 obj\n<<${words}>>stream\r\n${packed}\r\nendstream\nendobj\n`;
    expect(planTextIn(Buffer.from(paper, 'latin1'))).toBe(planText);
    const longer = paper.replace(`/Length ${packed.length}`, '/Length 8 0 R');
    expect(planTextIn(Buffer.from(longer, 'latin1'))).toBeNull();
  });
});

describe('a file that carries no plan', () => {
  it.each([
    ['a drawing of another program', '<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"/>'],
    ['a paper of another program', '%PDF-1.4\n1 0 obj <</Type /EmbeddedFile /Length 4>> stream\nabcd\nendstream'],
    ['a sheet made without it', pageSvg(pageOf('A'))],
    [
      'one whose plan is another program\u2019s',
      '<svg xmlns:p="urn:screed-bays:plan"><p:plan-data>AAAA</p:plan-data></svg>',
    ],
    ['nothing', ''],
  ])('gives none: %s', (_what, text) => {
    expect(planTextIn(bytesOf(text))).toBeNull();
  });

  it('is told from a plan file by how it begins, not by what its names say', () => {
    expect(isPaper(bytesOf(planWrite(planNamed('%PDF-1.7'))))).toBe(false);
    expect(isPaper(bytesOf('\ufeff{"name": "<svg>"}'))).toBe(false);
    expect(isPaper(bytesOf('\ufeff\n <svg/>'))).toBe(true);
    expect(isPaper(bytesOf('junk before\n%PDF-1.7\n'))).toBe(true);
  });
});

describe('a paper that was cut off or damaged', () => {
  const file = planNamed('Reading room of the library');
  const whole = planWrite(file);

  it('gives the whole plan or none, wherever it is cut', async () => {
    for (const paper of [svgOf(file), await pdfOf(file)]) {
      const answers = Array.from({ length: 200 }, (_, i) => planTextIn(paper.subarray(0, (paper.length * i) / 200)));
      expect(answers.every((answer) => answer === null || answer === whole)).toBe(true);
      expect(answers.slice(0, 2)).toEqual([null, null]);
    }
  });

  it('gives the whole plan or none, whichever bytes were changed', async () => {
    const papers = [svgOf(file), await pdfOf(file)];
    const change = fc.array(fc.tuple(fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(fc.constantFrom(...papers), change, (paper, changes) => {
        const damaged = paper.slice();
        // most of a PDF are its fonts: half of the changes go where the plan lies
        for (const [at, byte] of changes) damaged[at % (at % 2 === 0 ? paper.length : 1500)] = byte;
        const answer = planTextIn(damaged);
        expect(answer === null || answer === whole).toBe(true);
      }),
      { seed: 3, numRuns: 1500 },
    );
  });

  const marks = [
    ...['%PDF-1.7\n', '/EmbeddedFile ', 'stream\n', 'endstream', '/Filter /FlateDecode ', '<plan-data>', 'obj'],
    ...['urn:screed-bays:plan', '<svg ', '/Length 99999999999999999999 ', '/Length 9 ', '>>', 'AAAA', '<'],
  ];

  it('is answered soon where it is made of the marks of papers and of nothing else', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...marks), { maxLength: 60 }), (parts) => {
        expect(planTextIn(bytesOf(parts.join('')))).toBeNull();
      }),
      { seed: 4, numRuns: 1500 },
    );
  });

  it.each(marks)('is answered soon where it is nothing but many times %j', (mark) => {
    expect(planTextIn(bytesOf(`%PDF-${mark.repeat(100_000)}`))).toBeNull();
    expect(planTextIn(bytesOf(`<svg urn:screed-bays:plan ${mark.repeat(100_000)}`))).toBeNull();
  });

  it('does not fill the memory where a few bytes unfold to very many', () => {
    const bomb = deflateSync(Buffer.alloc(200e6)).toString('latin1');
    const paper = `%PDF-1.7\n1 0 obj <</Type /EmbeddedFile /Filter /FlateDecode /Length ${bomb.length}>> stream\n${bomb}\nendstream`;
    expect(planTextIn(Buffer.from(paper, 'latin1'))).toBeNull();
  });
});
