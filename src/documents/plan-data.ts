import { Unzlib, zlibSync } from 'fflate';
import { PLAN_FORMAT } from '../plan/schema.ts';
import { base64Of, bytesOfBase64 } from './base64.ts';

/** The plan file inside a PDF or an SVG: how it is put there, and how it is found again. Reading takes any bytes: what is cut off, damaged or from
 *  another program gives no plan. */

/** Name of the file that is attached to a PDF. */
export const planFileName = 'plan.json';

/** What is said of a paper without one. */
export const noPlanWords = 'carries no plan: only papers made by this program do';

const namespace = `urn:${PLAN_FORMAT.replace('/', ':')}`;
const element = 'plan-data';

/** Bytes of plans that are read from one paper: a million points take 20 MB, and a paper made to fill the memory would unfold to more. */
const mostBytes = 50e6;
/** Places in a paper at which a plan is looked for. */
const mostPlaces = 50;

/** The plan as an element of an SVG: packed, so that it says at once when a letter of it was lost. */
export function planMetadata(planText: string): string {
  const packed = base64Of(zlibSync(new TextEncoder().encode(planText), { level: 9 }));
  return `<metadata><${element} xmlns="${namespace}" encoding="zlib base64">${packed}</${element}></metadata>`;
}

/** Whether bytes are those of a PDF or of XML, and not of a plan file. */
export function isPaper(bytes: Uint8Array): boolean {
  return paperKind(lettersOf(bytes.subarray(0, headBytes))) !== null;
}

/** The text of the plan file that a PDF or an SVG carries; null where there is none, or not the whole of it. */
export function planTextIn(bytes: Uint8Array): string | null {
  const text = lettersOf(bytes);
  const kind = paperKind(text.slice(0, headBytes));
  if (kind === null) return null;
  const budget = { bytes: mostBytes };
  const found = kind === 'pdf' ? attachedIn(text, bytes, budget) : metadataIn(text, budget);
  for (const planText of found) if (planText?.includes(PLAN_FORMAT)) return planText;
  return null;
}

/** Whether a paper is a PDF that is locked with a password: whatever it carries cannot be read. ISO 32000-1, 7.6.1: its trailer names how. */
export function paperIsLocked(bytes: Uint8Array): boolean {
  const text = lettersOf(bytes);
  return paperKind(text.slice(0, headBytes)) === 'pdf' && /\/Encrypt(?:\s+\d+\s+\d+\s+R|\s*<<)/u.test(text);
}

/** Within so many bytes a PDF has to say what it is. */
const headBytes = 1024;

/** Told by the first sign, as a plan or a drawing may have the mark of a PDF in its name. */
function paperKind(head: string): 'pdf' | 'xml' | null {
  const start = head.replace(/^\u00ef\u00bb\u00bf/u, '').trimStart();
  if (start.startsWith('<')) return 'xml';
  return head.includes('%PDF-') && !/^[{["]/u.test(start) ? 'pdf' : null;
}

interface Budget {
  bytes: number;
}

/** The words that describe a stream of a PDF take no more than this, before and after the one that says what it is. */
const mostWords = 2000;

/** What is attached to a PDF, place by place. */
function* attachedIn(text: string, bytes: Uint8Array, budget: Budget): Generator<string | null> {
  for (const at of placesOf(text, '/EmbeddedFile')) {
    const [before, after] = [text.slice(Math.max(0, at - mostWords), at), text.slice(at, at + mostWords)];
    const begin = after.indexOf('stream');
    if (begin < 0) continue;
    const words = before.slice(before.lastIndexOf('obj') + 1) + after.slice(0, begin);
    const first = at + begin + 'stream'.length + (after[begin + 'stream'.length] === '\r' ? 2 : 1);
    const length = /\/Length\s+(\d{1,10})(?!\d|\s+\d+\s+R)/u.exec(words)?.[1];
    const end = length === undefined ? text.indexOf('endstream', first) : first + Number(length);
    if (end < first || end > bytes.length) continue;
    const stream = bytes.subarray(first, end);
    const filter = /\/Filter\s*(.{0,40})/u.exec(words)?.[1];
    if (filter === undefined) yield utf8Of([stream]);
    else if (/^(?:\[\s*)?\/FlateDecode(?:\s*\])?\s*(?:\/|>|$)/u.test(filter)) yield unpacked(stream, budget);
  }
}

/** The element of an SVG, whatever short name an editor has given to its namespace. */
function* metadataIn(text: string, budget: Budget): Generator<string | null> {
  if (!text.includes(namespace)) return;
  for (const at of placesOf(text, element)) {
    const begin = text.indexOf('>', at);
    const end = text.indexOf('<', at);
    if (begin < 0 || end < begin || !/[<:]$/u.test(text.slice(at - 1, at))) continue;
    const packed = bytesOfBase64(text.slice(begin + 1, end));
    if (packed !== null) yield unpacked(packed, budget);
  }
}

function* placesOf(text: string, word: string): Generator<number> {
  let at = text.indexOf(word);
  for (let i = 0; at >= 0 && i < mostPlaces; i++) {
    yield at;
    at = text.indexOf(word, at + word.length);
  }
}

/** Text that was packed by zlib; null where it is cut off or damaged. */
function unpacked(packed: Uint8Array, budget: Budget): string | null {
  const chunks: Uint8Array[] = [];
  const unzlib = new Unzlib((chunk) => {
    budget.bytes -= chunk.length;
    chunks.push(chunk);
  });
  try {
    // in small pieces, so that what would unfold without end is left early
    for (let at = 0; at < packed.length; at += 4096) {
      if (budget.bytes <= 0) return null;
      unzlib.push(packed.subarray(at, at + 4096), at + 4096 >= packed.length);
    }
  } catch {
    // the library's word for damage
    return null;
  }
  const [a = 0, b = 0, c = 0, d = 0] = packed.subarray(-4);
  return ((a << 24) | (b << 16) | (c << 8) | d) === adler32(chunks) ? utf8Of(chunks) : null;
}

/** The check sum of RFC 1950, which the library leaves unread. */
function adler32(chunks: readonly Uint8Array[]): number {
  // so many bytes add up to less than a number of the machine holds
  const most = 3800;
  let [low, high] = [1, 0];
  for (const chunk of chunks) {
    for (let at = 0; at < chunk.length; at += most) {
      for (const byte of chunk.subarray(at, at + most)) {
        low += byte;
        high += low;
      }
      low %= 65521;
      high %= 65521;
    }
  }
  return (high << 16) | low;
}

function utf8Of(chunks: readonly Uint8Array[]): string {
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  return chunks.map((chunk) => decoder.decode(chunk, { stream: true })).join('') + decoder.decode();
}

/** One letter for each byte; only those of ASCII mean anything. */
function lettersOf(bytes: Uint8Array): string {
  return new TextDecoder('latin1').decode(bytes);
}
