import { type Interval, intervalSharing, lineInside } from '../geometry/scanline.ts';
import { EQUAL_LENGTH_MM, onGrid, SAME_LINE_MM } from '../geometry/tolerance.ts';
import { frameOf } from './frame.ts';
import { groutAlong, groutFrom, groutTo } from './grout.ts';
import { cutBarred, cutPrice } from './lattice.ts';
import type { Part, PartCut } from './part.ts';
import { cutsTurn, partTurn } from './part-frame.ts';

/** The joint across a neck in the grout line beside it: where the passage goes on no wider, by no more than leaves an allowed pocket at the corner that
 *  it starts from. The same joint where none is better. */
export function neckInGrout(part: Part, neck: PartCut): PartCut {
  for (const { normal } of part.grout?.rows ?? []) {
    const frame = frameOf(Math.atan2(normal[1], normal[0]));
    const [own] = cutsTurn([neck], frame.toFrame) as [PartCut];
    if (Math.abs(own.from[0] - own.to[0]) > SAME_LINE_MM) continue;
    const turned = partTurn(part, frame);
    const [best] = besideNeck(turned, own)
      .filter((cut) => !cutBarred(cut, turned))
      .sort((a, b) => cutPrice(a, turned) - cutPrice(b, turned));
    const isBetter = best && cutPrice(best, turned) < cutPrice(own, turned) - EQUAL_LENGTH_MM;
    return isBetter ? (cutsTurn([best], frame.toSheet)[0] as PartCut) : neck;
  }
  return neck;
}

/** An upright joint across a neck in the grout lines to both sides of it, as far as the neck goes there. */
function besideNeck({ region, grout, layout }: Part, { kind, from, to }: PartCut): PartCut[] {
  const rows = groutAlong(grout, 0);
  if (rows === null) return [];
  const at = (from[0] + to[0]) / 2;
  const across: Interval = [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
  return [groutTo(rows, at), groutFrom(rows, at)].map(onGrid).flatMap((line): PartCut[] => {
    if (Math.abs(line - at) > layout.reentrantMm) return [];
    const chord = intervalSharing(lineInside([region.outline, ...region.holes], 0, line), across);
    const isWider = chord === null || chord[1] - chord[0] > across[1] - across[0] + SAME_LINE_MM;
    return isWider ? [] : [{ kind, from: [line, chord[0]], to: [line, chord[1]] }];
  });
}
