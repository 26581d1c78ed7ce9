import type { Plan } from '../../plan/plan.ts';
import { expansion, expansionFigure, figureShort } from '../parts/format.ts';
import { FiguresTable } from './FiguresTable.tsx';
import type { BayShare } from './working.ts';

/** What a movement was found from, with the spread of the expansion. */
export function MovementInputs({ plan, shares }: { readonly plan: Plan; readonly shares: readonly BayShare[] }) {
  const [least, most] = plan.screed.expansionRangePerK;
  const spread = (pick: (share: BayShare) => number, unit: string) =>
    [...new Set(shares.map((share) => `${figureShort(pick(share), 1)} ${unit}`))].join(' and ');
  return (
    <FiguresTable
      rows={[
        {
          name: 'Expansion',
          value: expansion(plan.screed.expansionPerK),
          limit: least === most ? null : `${expansionFigure(least)} to ${expansionFigure(most)}`,
        },
        { name: 'Warming', value: spread((share) => share.warmingK, 'K') },
        { name: 'Cooling', value: spread((share) => share.coolingK, 'K') },
        { name: 'Swelling', value: `${figureShort(plan.screed.swellingMmPerM, 2)} mm/m` },
        { name: 'Shrinkage', value: `${figureShort(plan.screed.shrinkageMmPerM, 2)} mm/m` },
      ]}
    />
  );
}
