import { lineMiddle } from '../geometry/line.ts';
import type { EdgeLine } from '../plan/analysis.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import { figureExceeds } from './figure.ts';
import { stripTakes } from './strip.ts';

/** Where an edge moves further than the strip along it goes. */
export function edgeFindings(edge: EdgeLine, movementMm: number, strip: Plan['edgeStrip']): FindingFact[] {
  const takesMm = stripTakes(strip.thicknessMm, strip.usableTravel);
  return figureExceeds(movementMm, takesMm)
    ? [
        {
          code: 'strip-overrun',
          at: lineMiddle(edge.line),
          refs: [edge.id],
          edge: edge.id,
          needsMm: movementMm,
          takesMm,
        },
      ]
    : [];
}

/** The strip's travel against the least that EN 1264-4 asks for: one strip in the plan, one finding.
 *  Example: 8 mm at 0.5 takes 4 mm of the 5 mm -> a finding; 10 mm at 0.5 -> none. */
export function stripTravelFindings(strip: Plan['edgeStrip']): FindingFact[] {
  const takesMm = stripTakes(strip.thicknessMm, strip.usableTravel);
  const leastMm = rules.stripLeastTravelMm.value;
  return figureExceeds(leastMm, takesMm) ? [{ code: 'strip-travel', at: null, refs: [], takesMm, leastMm }] : [];
}
