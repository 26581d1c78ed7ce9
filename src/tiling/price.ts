import { type JointGrout, type JointLine, jointIsInRoom, type Split, type TileCounts } from '../plan/analysis.ts';
import { rules } from '../plan/reference.ts';

/** What a layout of joints and tiles costs, in metres of joint: so that layouts that trade one for the other can be compared. */
export interface TilingPrice {
  /** Length of the joints within rooms: intermediate, across necks and drawn, m. */
  readonly jointM: number;
  /** Length of joints that lie off the grout lines, m. Joints of doorways stay under their leaf and do not count. */
  readonly offGroutM: number;
  /** Less what falls into the perimeter joint. */
  readonly cutTiles: number;
  readonly slivers: number;
  /** All of them, by the weights of `shared/rule-sets.json`. */
  readonly totalM: number;
}

/** @param sawn cut tiles and slivers of those that are laid */
export function tilingPrice(
  { joints }: Split,
  grouts: ReadonlyMap<string, JointGrout>,
  { cut, slivers }: Pick<TileCounts, 'cut' | 'slivers'>,
): TilingPrice {
  const lengthM = (wanted: (joint: JointLine) => boolean) =>
    joints.filter(wanted).reduce((sum, joint) => sum + joint.lengthM, 0);
  const jointM = lengthM(jointIsInRoom);
  const offGroutM = lengthM(({ id, kind }) => kind !== 'doorway' && grouts.get(id)?.onGroutLine === false);
  return { jointM, offGroutM, cutTiles: cut, slivers, totalM: totalOf(jointM, offGroutM, cut, slivers) };
}

function totalOf(jointM: number, offGroutM: number, cut: number, slivers: number): number {
  const { offGroutPrice, cutTilePriceM, sliverPriceM } = rules;
  return jointM + offGroutM * offGroutPrice.value + cut * cutTilePriceM.value + slivers * sliverPriceM.value;
}

/** Share of the length of the joints within rooms that lies in grout; null where none lies under tiles. */
export function onGroutShare({ joints }: Split, grouts: ReadonlyMap<string, JointGrout>): number | null {
  let [on, all] = [0, 0];
  for (const joint of joints) {
    const isOn = grouts.get(joint.id)?.onGroutLine ?? null;
    if (!jointIsInRoom(joint) || isOn === null) continue;
    all += joint.lengthM;
    if (isOn) on += joint.lengthM;
  }
  return all === 0 ? null : on / all;
}
