import { isPure } from './layers.ts';
import { isNode, type Node, type Place, placesOf, type Source, type Violation, violation } from './source.ts';

/** Names that bring in a screen, a clock, chance, a console, a file, a network or the machine's own settings. */
const impureNames = new Set(
  `Buffer Date Intl Worker XMLHttpRequest cancelAnimationFrame console crypto document fetch global globalThis
  indexedDB localStorage navigator performance process queueMicrotask requestAnimationFrame self sessionStorage
  setImmediate setInterval setTimeout window`.split(/\s+/),
);

/** Their answers depend on the machine's language, so the same plan would not give the same bytes. */
const impureMembers = new Set(['localeCompare', 'toLocaleString', 'toLocaleUpperCase', 'toLocaleLowerCase']);

/** Chance, and a length that each engine rounds as it sees fit (ECMA-262, implementation-approximated), where a square root is exact in all. */
const impureMath = new Set(['random', 'hypot']);

/** Fields of a node that hold a name and not a use of it, unless computed. */
const namingFields = ['property', 'key', 'imported', 'exported', 'label'];

function isUse({ node, above }: Place): boolean {
  const parent = above[0];
  if (node.type !== 'Identifier' || parent === undefined) return false;
  // A shorthand `{ name }` is one name in two fields; its value is the use.
  return !namingFields.some((field) => parent[field] === node && parent.computed !== true);
}

/** Names that a file makes itself: variables, parameters, functions, imports. */
function ownNames(places: readonly Place[]): Set<unknown> {
  const patterns: unknown[] = places.flatMap(({ node }) => {
    const made: unknown[] = [];
    if (/^(VariableDeclarator|FunctionDeclaration|ClassDeclaration)$/.test(node.type)) made.push(node.id);
    if (node.type.startsWith('Import')) made.push(node.local);
    if (Array.isArray(node.params)) made.push(...node.params);
    return made;
  });
  return new Set(patterns.flatMap(namesIn));
}

/** The names in a pattern such as `{ a, b: [c] = [] }`. */
function namesIn(pattern: unknown): unknown[] {
  if (!isNode(pattern)) return [];
  if (pattern.type === 'Identifier') return [pattern.name];
  const inner = [pattern.left, pattern.argument, pattern.value, pattern.elements, pattern.properties];
  return inner.flat().flatMap(namesIn);
}

/** Uses of the outside world below level 6. */
export function purityViolations(sources: readonly Source[]): Violation[] {
  return sources
    .filter((source) => isPure(source.path))
    .flatMap((source) => {
      const places = placesOf(source);
      const own = ownNames(places);
      return places.flatMap((place) => {
        const name = impureUse(place, own);
        return name === null ? [] : [violation(source, place.node, `uses ${name}`)];
      });
    });
}

function impureUse(place: Place, own: ReadonlySet<unknown>): string | null {
  const { node } = place;
  if (node.type === 'MetaProperty' && isNode(node.meta) && node.meta.name === 'import') return 'import.meta';
  if (node.type === 'MemberExpression' && isNode(node.object) && isNode(node.property)) {
    const member = String(node.property.name ?? node.property.value);
    if (node.object.name === 'Math' && impureMath.has(member)) return `Math.${member}`;
    if (impureMembers.has(member)) return member;
  }
  return isUse(place) && impureNames.has(String(node.name)) && !own.has(node.name) ? String(node.name) : null;
}

/** The only file of the core that may hold a small number to compare lengths with. */
const toleranceFile = 'src/geometry/tolerance.ts';

/** Anything smaller than this is no length that somebody could lay out, mm. */
const smallestLength = 1e-3;

const comparisons = new Set(['<', '<=', '>', '>=', '==', '===', '!=', '!==']);

/** Small numbers that are compared with something, added to it, handed to a function or given a name. Left: factors such as
 *  `areaMm2 * 1e-6` outside a comparison, and figures in a table of values. */
export function epsilonViolations(sources: readonly Source[]): Violation[] {
  return sources
    .filter((source) => isPure(source.path) && source.path !== toleranceFile)
    .flatMap((source) =>
      placesOf(source)
        .filter((place) => isSmallNumber(place.node) && isTolerance(place))
        .map(({ node }) => violation(source, node, 'a tolerance of its own: take one of geometry/tolerance.ts')),
    );
}

function isSmallNumber(node: Node): boolean {
  if (node.type === 'MemberExpression' && isNode(node.object) && isNode(node.property)) {
    return node.object.name === 'Number' && node.property.name === 'EPSILON';
  }
  return node.type === 'Literal' && typeof node.value === 'number' && node.value > 0 && node.value < smallestLength;
}

function isTolerance({ above }: Place): boolean {
  const end = above.findIndex((node) => /Statement$|Declaration$|Function/.test(node.type));
  const within = above.slice(0, end < 0 ? undefined : end);
  if (within.some((node) => node.type === 'BinaryExpression' && comparisons.has(String(node.operator)))) return true;
  const parent = within.find((node) => node.type !== 'UnaryExpression');
  if (parent?.type === 'BinaryExpression') return parent.operator === '+' || parent.operator === '-';
  return parent !== undefined && /^(VariableDeclarator|AssignmentPattern|CallExpression)$/.test(parent.type);
}
