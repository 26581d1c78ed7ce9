import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseAst } from 'vite';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** A source file; `path` is from the project's folder, with forward slashes. */
export interface Source {
  readonly path: string;
  readonly text: string;
}

/** What a rule found wrong, and where: an empty list is a pass. */
export interface Violation {
  readonly path: string;
  readonly line: number;
  readonly problem: string;
}

/** A node of the syntax tree with the nodes above it, nearest first. */
export interface Place {
  readonly node: Node;
  readonly above: readonly Node[];
}

export interface Node {
  readonly type: string;
  readonly start: number;
  readonly [field: string]: unknown;
}

/** Every file under a folder, or the file itself, hidden and installed ones apart. */
export function filesUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

export function readSource(path: string): Source {
  return { path, text: readFileSync(join(root, path), 'utf8') };
}

/** The scripts of `src`. */
export function readSources(): Source[] {
  return filesUnder('src')
    .filter((path) => /\.(ts|tsx|mjs)$/.test(path))
    .map(readSource);
}

export function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';
}

/** Every node of a file, outer ones first. */
export function placesOf(source: Source): Place[] {
  const places: Place[] = [];
  const visit = (node: Node, above: readonly Node[]): void => {
    places.push({ node, above });
    const inside = [node, ...above];
    for (const value of Object.values(node)) {
      for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) visit(child, inside);
    }
  };
  const language = source.path.endsWith('.tsx') ? 'tsx' : source.path.endsWith('.mjs') ? 'js' : 'ts';
  const tree: unknown = parseAst(source.text, { lang: language });
  if (isNode(tree)) visit(tree, []);
  return places;
}

export function violation(source: Source, node: Node, problem: string): Violation {
  return { path: source.path, line: source.text.slice(0, node.start).split('\n').length, problem };
}

/** The text of a string literal; null for everything else, computed strings included. */
export function literalText(node: unknown): string | null {
  return isNode(node) && node.type === 'Literal' && typeof node.value === 'string' ? node.value : null;
}
