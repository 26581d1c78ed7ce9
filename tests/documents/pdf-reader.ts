/** What is used of the second library. Its own types cannot be had: they name a package that not every machine has. */
interface Reader {
  readonly OPS: Readonly<Record<string, number>>;
  getDocument(from: { readonly data: Uint8Array; readonly verbosity: number; readonly useSystemFonts: false }): {
    readonly promise: Promise<ReaderFile>;
  };
}

interface ReaderFile {
  readonly numPages: number;
  getMetadata(): Promise<{ readonly info: Readonly<Record<string, unknown>> }>;
  getAttachments(): Promise<Readonly<
    Record<string, { readonly filename: string; readonly content: Uint8Array }>
  > | null>;
  getOutline(): Promise<readonly { readonly title: string }[] | null>;
  getPage(number: number): Promise<ReaderPage>;
  destroy(): Promise<void>;
}

interface ReaderPage {
  readonly view: readonly number[];
  getTextContent(): Promise<{
    readonly items: readonly { readonly str: string; readonly transform: Matrix; readonly width: number }[];
  }>;
  getOperatorList(): Promise<Operators>;
}

interface Operators {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly unknown[];
}

const { getDocument, OPS } = (await import(import.meta.resolve('pdfjs-dist/legacy/build/pdf.mjs'))) as Reader;

const operator = (name: string): number => OPS[name] ?? Number.NaN;

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
  const { info } = await file.getMetadata();
  const attached = await file.getAttachments();
  const outline = await file.getOutline();
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

async function pageRead(page: ReaderPage): Promise<ReadPage> {
  const [, , widthPt = 0, heightPt = 0] = page.view;
  const { items } = await page.getTextContent();
  const texts = items.flatMap((item): ReadText[] => {
    if (item.str.trim() === '') return [];
    const [a, b, c, d, x, y] = item.transform;
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
  [operator('stroke'), 'stroke'],
  [operator('eoFill'), 'fill'],
  [operator('eoFillStroke'), 'fill and stroke'],
]);

/** Follows the operators of a page as a printer would. */
function pathsRead({ fnArray, argsArray }: Operators): readonly ReadPath[] {
  const paths: ReadPath[] = [];
  const kept: Drawing[] = [];
  let now: Drawing = { matrix: [1, 0, 0, 1, 0, 0], widthPt: 1, dashPt: [], stroke: '', fill: '' };
  let lines: Pair[][] = [];
  for (const [i, done] of fnArray.entries()) {
    const args = argsArray[i] as readonly never[];
    const scale = Math.abs(now.matrix[0]);
    if (done === operator('save')) kept.push({ ...now });
    else if (done === operator('restore')) now = kept.pop() ?? now;
    else if (done === operator('transform')) now.matrix = product(args as unknown as Matrix, now.matrix);
    else if (done === operator('setLineWidth')) now.widthPt = (args[0] as unknown as number) * scale;
    else if (done === operator('setDash')) now.dashPt = (args[0] as unknown as number[]).map((mm) => mm * scale);
    else if (done === operator('setStrokeRGBColor')) now.stroke = colourOf(args);
    else if (done === operator('setFillRGBColor')) now.fill = colourOf(args);
    else if (done === operator('constructPath')) linesRead(lines, args, now.matrix);
    const paint = paints.get(done);
    if (paint === undefined) continue;
    const { widthPt, dashPt, stroke, fill } = now;
    paths.push({ lines, paint, widthPt, dashPt, stroke, fill });
    lines = [];
  }
  return paths;
}

/** Numbers that each operator takes. */
const taken = new Map<number, number>([
  [operator('moveTo'), 2],
  [operator('lineTo'), 2],
  [operator('curveTo'), 6],
  [operator('closePath'), 0],
]);

/** Goes on with the lines of a path: long ones come in several pieces. */
function linesRead(lines: Pair[][], args: readonly unknown[], matrix: Matrix): void {
  const [operators, numbers] = args as [number[], number[]];
  let at = 0;
  for (const done of operators) {
    const count = taken.get(done);
    if (count === undefined) throw new Error(`path operator ${done}`);
    at += count;
    const line = lines.at(-1);
    const end = count === 0 ? line?.[0] : placed([numbers[at - 2] as number, numbers[at - 1] as number], matrix);
    if (end === undefined) throw new Error('a path without a start');
    if (done === operator('moveTo')) lines.push([end]);
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
