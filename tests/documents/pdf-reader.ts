import { getDocument, OPS, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What stands in a PDF, read by a second library. */
export interface ReadPdf {
  readonly title: unknown;
  readonly madeOn: unknown;
  readonly marks: readonly string[];
  readonly attached: ReadonlyMap<string, Uint8Array>;
  readonly pages: readonly ReadPage[];
}

export interface ReadPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly paths: readonly ReadPath[];
  readonly texts: readonly ReadText[];
}

/** Lines and curves of one path, points in points of the page, y up; of a curve its end. */
export interface ReadPath {
  readonly lines: readonly (readonly Pair[])[];
  readonly paint: 'stroke' | 'fill' | 'fill and stroke';
  readonly widthPt: number;
  readonly dashPt: readonly number[];
  readonly stroke: string;
  readonly fill: string;
}

export interface ReadText {
  readonly text: string;
  /** Start of the base line. */
  readonly at: Pair;
  readonly turnDeg: number;
  readonly widthPt: number;
  readonly sizePt: number;
}

type Pair = readonly [x: number, y: number];
type Matrix = readonly [number, number, number, number, number, number];

export async function pdfRead(bytes: Uint8Array): Promise<ReadPdf> {
  // the reader takes what it is given away from its owner
  const file = await getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false }).promise;
  const { info } = (await file.getMetadata()) as unknown as { info: Record<string, unknown> };
  const attached = (await file.getAttachments()) as Record<string, { filename: string; content: Uint8Array }> | null;
  const outline = (await file.getOutline()) as readonly { readonly title: string }[] | null;
  const pages: ReadPage[] = [];
  for (let i = 1; i <= file.numPages; i++) pages.push(await pageRead(await file.getPage(i)));
  await file.destroy();
  return {
    title: info.Title,
    madeOn: info.CreationDate,
    marks: (outline ?? []).map(({ title }) => title),
    attached: new Map(Object.values(attached ?? {}).map(({ filename, content }) => [filename, content])),
    pages,
  };
}

async function pageRead(page: PDFPageProxy): Promise<ReadPage> {
  const [, , widthPt = 0, heightPt = 0] = page.view;
  const { items } = await page.getTextContent();
  const texts = items.flatMap((item): ReadText[] => {
    if (!('str' in item) || item.str.trim() === '') return [];
    const [a, b, c, d, x, y] = item.transform as unknown as Matrix;
    const turnDeg = (Math.atan2(b, a) * 180) / Math.PI;
    return [{ text: item.str, at: [x, y], turnDeg, widthPt: item.width, sizePt: Math.hypot(c, d) }];
  });
  return { widthPt, heightPt, paths: pathsRead(await page.getOperatorList()), texts };
}

interface Drawing {
  matrix: Matrix;
  widthPt: number;
  dashPt: readonly number[];
  stroke: string;
  fill: string;
}

const paints = new Map<number, ReadPath['paint']>([
  [OPS.stroke, 'stroke'],
  [OPS.eoFill, 'fill'],
  [OPS.eoFillStroke, 'fill and stroke'],
]);

/** Follows the operators of a page as a printer would. */
function pathsRead({ fnArray, argsArray }: { fnArray: number[]; argsArray: unknown[] }): readonly ReadPath[] {
  const paths: ReadPath[] = [];
  const kept: Drawing[] = [];
  let now: Drawing = { matrix: [1, 0, 0, 1, 0, 0], widthPt: 1, dashPt: [], stroke: '', fill: '' };
  let lines: Pair[][] = [];
  for (const [i, operator] of fnArray.entries()) {
    const args = argsArray[i] as readonly never[];
    const scale = Math.abs(now.matrix[0]);
    if (operator === OPS.save) kept.push({ ...now });
    else if (operator === OPS.restore) now = kept.pop() ?? now;
    else if (operator === OPS.transform) now.matrix = product(args as unknown as Matrix, now.matrix);
    else if (operator === OPS.setLineWidth) now.widthPt = (args[0] as unknown as number) * scale;
    else if (operator === OPS.setDash) now.dashPt = (args[0] as unknown as number[]).map((mm) => mm * scale);
    else if (operator === OPS.setStrokeRGBColor) now.stroke = colourOf(args);
    else if (operator === OPS.setFillRGBColor) now.fill = colourOf(args);
    else if (operator === OPS.constructPath) linesRead(lines, args, now.matrix);
    const paint = paints.get(operator);
    if (paint === undefined) continue;
    const { widthPt, dashPt, stroke, fill } = now;
    paths.push({ lines, paint, widthPt, dashPt, stroke, fill });
    lines = [];
  }
  return paths;
}

/** Numbers that each operator takes. */
const taken = new Map<number, number>([
  [OPS.moveTo, 2],
  [OPS.lineTo, 2],
  [OPS.curveTo, 6],
  [OPS.closePath, 0],
]);

/** Goes on with the lines of a path: long ones come in several pieces. */
function linesRead(lines: Pair[][], args: readonly unknown[], matrix: Matrix): void {
  const [operators, numbers] = args as [number[], number[]];
  let at = 0;
  for (const operator of operators) {
    const count = taken.get(operator);
    if (count === undefined) throw new Error(`path operator ${operator}`);
    at += count;
    const line = lines.at(-1);
    const end = count === 0 ? line?.[0] : placed([numbers[at - 2] as number, numbers[at - 1] as number], matrix);
    if (end === undefined) throw new Error('a path without a start');
    if (operator === OPS.moveTo) lines.push([end]);
    else line?.push(end);
  }
}

function placed([x, y]: Pair, [a, b, c, d, e, f]: Matrix): Pair {
  return [a * x + c * y + e, b * x + d * y + f];
}

function product(inner: Matrix, outer: Matrix): Matrix {
  const [a, b, c, d, e, f] = inner;
  const turned = (pair: Pair) => placed(pair, [outer[0], outer[1], outer[2], outer[3], 0, 0]);
  return [...turned([a, b]), ...turned([c, d]), ...placed([e, f], outer)] as unknown as Matrix;
}

function colourOf(args: readonly unknown[]): string {
  if (typeof args[0] === 'string') return args[0];
  return `#${Array.from(args, Number)
    .map((part) => part.toString(16).padStart(2, '0'))
    .join('')}`;
}
