/** Where a text stops being JSON. Browsers and servers word and place this differently, so that it is looked for here. */
export interface JsonFault {
  readonly line: number;
  readonly column: number;
  /** The character that may not stand there. */
  readonly found: string;
}

/** What may come next: a value, a value or the end of an empty list, a key, a key or the end of an empty object, or what follows a value. */
type Expects = 'value' | 'value-or-end' | 'key' | 'key-or-end' | 'after';

/** A piece of the text: where it ends, or where it goes wrong. */
interface Piece {
  readonly end: number;
  readonly right: boolean;
}

const space = /[ \t\n\r]*/y;
const word = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
const escaped = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/** @param text that `JSON.parse` has refused */
export function jsonFault(text: string): JsonFault {
  const open: ('{' | '[')[] = [];
  let expects: Expects = 'value';
  let at = 0;
  for (;;) {
    at = matchEnd(space, text, at) ?? at;
    const character = text[at];
    const next: Expects | null = character === undefined ? null : bracketStep(expects, character, open);
    if (next !== null) {
      expects = next;
      at++;
      continue;
    }
    if (expects === 'after') return faultAt(text, at);
    const isKey: boolean = expects === 'key' || expects === 'key-or-end';
    const piece = isKey ? keyPiece(text, at) : valuePiece(text, at);
    if (!piece.right) return faultAt(text, piece.end);
    at = piece.end;
    expects = isKey ? 'value' : 'after';
  }
}

/** Takes a bracket or comma where one may stand; null where it may not. Keeps `open` in step. */
function bracketStep(expects: Expects, character: string, open: ('{' | '[')[]): Expects | null {
  if ((expects === 'value' || expects === 'value-or-end') && (character === '{' || character === '[')) {
    open.push(character);
    return character === '{' ? 'key-or-end' : 'value-or-end';
  }
  const inside = open.at(-1);
  if (inside === undefined) return null;
  const mayClose = expects === 'after' || expects === 'key-or-end' || expects === 'value-or-end';
  if (mayClose && character === (inside === '{' ? '}' : ']')) {
    open.pop();
    return 'after';
  }
  if (expects === 'after' && character === ',') return inside === '{' ? 'key' : 'value';
  return null;
}

function matchEnd(pattern: RegExp, text: string, at: number): number | null {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : null;
}

function valuePiece(text: string, at: number): Piece {
  if (text[at] === '"') return stringPiece(text, at);
  const end = matchEnd(word, text, at);
  return end === null ? { end: at, right: false } : { end, right: true };
}

/** A key with its colon. */
function keyPiece(text: string, at: number): Piece {
  const key = stringPiece(text, at);
  if (!key.right) return key;
  const colon = matchEnd(space, text, key.end) ?? key.end;
  return text[colon] === ':' ? { end: colon + 1, right: true } : { end: colon, right: false };
}

/** A loop and not one pattern: a pattern over a string of megabytes overflows. */
function stringPiece(text: string, start: number): Piece {
  if (text[start] !== '"') return { end: start, right: false };
  let at = start + 1;
  while (at < text.length) {
    const character = text[at] as string;
    if (character === '"') return { end: at + 1, right: true };
    if (character < ' ') return { end: at, right: false };
    const end = character === '\\' ? matchEnd(escaped, text, at) : at + 1;
    if (end === null) return { end: at, right: false };
    at = end;
  }
  return { end: at, right: false };
}

function faultAt(text: string, at: number): JsonFault {
  const lineStart = text.lastIndexOf('\n', at - 1) + 1;
  const line = text.slice(0, lineStart).split('\n').length;
  const found = at >= text.length ? 'the end of the file' : JSON.stringify(text[at]);
  return { line, column: at - lineStart + 1, found };
}
