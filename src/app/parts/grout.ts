import { type Analysis, type Joint, jointIsFound } from '../../plan/analysis.ts';
import type { Plan } from '../../plan/plan.ts';
import { type TiledField, tiledFields } from '../../plan/tile-grid.ts';
import { countOf, figure } from './format.ts';

/** How a joint lies in the grout lines, in words: for its card and for the lists. */
export interface GroutWords {
  /** "on it", "off by 12 mm", "none runs here". */
  readonly place: string;
  /** What becomes of the tiles, or why no grout line runs there; null where that needs no word. */
  readonly tiles: string | null;
}

/** Null where no tiles lie over the joint. */
export function groutWords(joint: Joint, { plan, analysis }: { readonly plan: Plan; readonly analysis: Analysis }) {
  const { onGroutLine, offGroutMm, bondLets, tilesAt } = joint;
  if (onGroutLine === null || offGroutMm === null) return null;
  const words = (place: string, ...tiles: readonly (string | null)[]): GroutWords => {
    const said = tiles.filter((part) => part !== null);
    return { place, tiles: said.length === 0 ? null : said.join('; ') };
  };
  if (tilesAt === 'restart') return words('the field restarts', 'another tile field begins here');
  const side = tilesAt === 'one-side' ? 'tiles on one side only' : null;
  const cut = joint.cutsTiles === 0 ? null : `${countOf(joint.cutsTiles, 'tile', 'tiles')} to cut`;
  if (onGroutLine) return words('on it', side);
  if (bondLets === true) return words(`off by ${figure(offGroutMm, 0)} mm`, cut, side);
  return words('none runs here', whyNone(joint, plan, analysis), cut, side);
}

/** Why no straight grout line runs a joint's way. */
function whyNone(joint: Joint, plan: Plan, analysis: Analysis): string {
  const bonds = fieldsAt(joint, plan, analysis).map(({ grid }) => grid);
  if (bonds.some(({ bond }) => bond === 'herringbone')) return 'a herringbone has no straight grout lines';
  return bonds.some(({ shiftMm }) => shiftMm > 0)
    ? 'it does not run along the courses, which are shifted'
    : 'it runs askew to the tiles';
}

function fieldsAt({ bays }: Joint, plan: Plan, analysis: Analysis): readonly TiledField[] {
  const rooms = analysis.bays.filter(({ id }) => bays.includes(id)).flatMap((bay) => bay.rooms);
  return tiledFields(plan).filter((field) => field.rooms.some(({ id }) => rooms.includes(id)));
}

/** Joints at which tiles are cut although they could lie in grout, or because no grout runs their way. */
export function groutMisses({ joints }: Pick<Analysis, 'joints'>): readonly Joint[] {
  return joints.filter(({ onGroutLine, tilesAt }) => onGroutLine === false && tilesAt !== 'restart');
}

/** Length of intermediate joints, and of those across necks, that lie under tiles and in grout, m. */
export function groutLengths({ joints }: Pick<Analysis, 'joints'>): { readonly onM: number; readonly allM: number } {
  const found = joints.filter((joint) => jointIsFound(joint) && joint.onGroutLine !== null);
  const lengthM = (some: readonly Joint[]) => some.reduce((sum, joint) => sum + joint.lengthM, 0);
  return { onM: lengthM(found.filter(({ onGroutLine }) => onGroutLine === true)), allM: lengthM(found) };
}

/** Whether a joint may be moved on to a grout line: one that was found or drawn, where such a line runs its way. */
export function groutIsNear(joint: Joint): boolean {
  const isFree = jointIsFound(joint) || joint.kind === 'drawn';
  return isFree && joint.onGroutLine === false && joint.bondLets === true;
}
