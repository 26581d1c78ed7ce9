import { posix } from 'node:path';
import { isNode, literalText, type Place, placesOf, type Source, type Violation, violation } from './source.ts';

interface Layer {
  readonly level: number;
  /** Packages that the folder may import, `node:` for all of Node's own. */
  readonly packages: readonly string[];
  /** Folders outside `src` that it may import data from. */
  readonly data: readonly string[];
}

/** The table of docs/decisions/0001: a folder imports from lower levels and from itself, never from a neighbour. */
export const layers: Readonly<Record<string, Layer>> = {
  geometry: { level: 0, packages: ['polygon-clipping'], data: [] },
  plan: { level: 1, packages: ['zod'], data: ['shared'] },
  floor: { level: 2, packages: [], data: [] },
  bays: { level: 3, packages: [], data: [] },
  movement: { level: 3, packages: [], data: [] },
  tiling: { level: 3, packages: [], data: [] },
  takeoff: { level: 3, packages: [], data: [] },
  analysis: { level: 4, packages: [], data: [] },
  documents: { level: 5, packages: ['bidi-js', 'fflate', 'fonteditor-core', 'pdfkit'], data: [] },
  cli: { level: 6, packages: ['node:', 'tsx', 'zod'], data: [] },
  app: {
    level: 6,
    packages: ['comlink', 'dejavu-fonts-ttf', 'fflate', 'idb-keyval', 'konva', 'react', 'react-dom', 'zustand'],
    data: ['demo-plans'],
  },
};

/** Levels below this one hold no screen, clock, chance, console or file. */
const firstImpureLevel = 6;

/** The folder of `src` that a file belongs to, such as `plan`. */
export function folderOf(path: string): string {
  return path.split('/')[1] ?? '';
}

export function isPure(path: string): boolean {
  return (layers[folderOf(path)]?.level ?? 0) < firstImpureLevel;
}

/** What a node imports: `import`, `import type`, `export from`, `import()`, `import('...').Type`, `require`, the files of
 *  `import.meta.glob('...')` and of a worker. Null: nothing. `computed`: a path that cannot be read from the line. */
function importedBy({ node }: Place): string | 'computed' | null {
  if (node.type === 'TSExternalModuleReference') return literalText(node.expression) ?? 'computed';
  if (isNode(node.source)) return literalText(node.source) ?? 'computed';
  const first: unknown = Array.isArray(node.arguments) ? node.arguments[0] : null;
  if (node.type === 'NewExpression' && isNode(node.callee) && node.callee.name === 'URL' && isOwnUrl(node)) {
    const file = literalText(first) ?? 'computed';
    return /\.\w+$/.test(file) || file === 'computed' ? file : null; // a folder's address is no import
  }
  if (node.type !== 'CallExpression' || !isNode(node.callee)) return null;
  if (node.callee.name === 'require') return literalText(first) ?? 'computed';
  const { object, property } = node.callee;
  const isGlob = isNode(object) && object.type === 'MetaProperty' && isNode(property) && property.name === 'glob';
  return isGlob ? (literalText(first) ?? 'computed') : null;
}

/** `new URL(..., import.meta.url)` */
function isOwnUrl(node: Place['node']): boolean {
  const base: unknown = Array.isArray(node.arguments) ? node.arguments[1] : null;
  return isNode(base) && isNode(base.object) && base.object.type === 'MetaProperty';
}

/** Why a file may not import this; null where it may. */
function importProblem(path: string, imported: string): string | null {
  const from = folderOf(path);
  const layer = layers[from];
  if (layer === undefined) return `src/${from} is no folder of the table of levels`;
  if (imported === 'computed') return 'imports a path that is not written out';
  if (!imported.startsWith('.')) {
    const allowed = layer.packages.some(
      (name) => imported === name || imported.startsWith(name.endsWith(':') ? name : `${name}/`),
    );
    return allowed ? null : `src/${from} may not import the package ${imported}`;
  }
  const target = posix.join(posix.dirname(path), imported);
  if (!target.startsWith('src/')) {
    const data = target.split('/')[0] ?? '';
    return layer.data.includes(data) ? null : `src/${from} may not import ${target}`;
  }
  const to = folderOf(target);
  const level = layers[to]?.level;
  if (level === undefined) return `src/${to} is no folder of the table of levels`;
  return to === from || level < layer.level
    ? null
    : `src/${from} (level ${layer.level}) may not import src/${to} (level ${level})`;
}

/** Imports that go up, sideways or out. */
export function layerViolations(sources: readonly Source[]): Violation[] {
  return sources.flatMap((source) =>
    placesOf(source).flatMap((place) => {
      const imported = importedBy(place);
      const problem = imported === null ? null : importProblem(source.path, imported);
      return problem === null ? [] : [violation(source, place.node, problem)];
    }),
  );
}

/** Relative imports of one source, for the test that the reader sees them at all. */
export function countImports(source: Source): number {
  return placesOf(source).filter((place) => importedBy(place) !== null).length;
}
