import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../src/plan/analysis.ts';
import { orderingOf, papersOf } from '../../src/plan/papers.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import type { TakeOffLine } from '../../src/plan/take-off.ts';
import { orderOf } from '../../src/takeoff/order.ts';
import { demoOpen } from '../demo/demo.ts';
import { analysedOnce } from '../floors/analysed-once.ts';
import { planOf } from '../floors/read.ts';
import { expectedFloor } from '../oracle/expected-floor.ts';
import { measuredFloor } from '../oracle/measured-floor.ts';

/** Nets of the take-off against the plan measured with a library of its own: tests/oracle/measured-floor.ts. */

const noFile: PlanFile = { format: 'screed-bays/plan', version: 1, name: '', rooms: [] };

/** Overlay of whole floors in two ways takes seconds where cores are busy. */
const timeout = 120_000;

/** Sum of the nets of some lines. */
function netsOf(plan: Plan, analysis: Analysis) {
  const { lines } = orderOf(plan, analysis, orderingOf(noFile), papersOf(noFile));
  return (of: (line: TakeOffLine) => boolean) => lines.filter(of).reduce((sum, { net }) => sum + net, 0);
}

const isStrip = ({ group }: TakeOffLine) => group === 'edge-strip';
const isProfile = ({ group }: TakeOffLine) => group === 'profile';
const isVolume = ({ key }: TakeOffLine) => key === 'screed:volume';

describe('the take-off of the demos', { timeout }, () => {
  // pipes are drawn with some number of corners: 0.01 % of all there is
  const within = (given: number, measured: number) =>
    expect(Math.abs(given - measured)).toBeLessThanOrEqual(measured * 1e-4 + 1e-6);

  it.each(['1-dwelling.json', '2-public-library.json', '3-market-hall.json'])('measures %s as jsts does', (file) => {
    const { plan, analysis } = demoOpen(file);
    const [measured, net] = [measuredFloor(plan, analysis), netsOf(plan, analysis)];
    within(net(isVolume), measured.screedM3);
    within(net(isStrip), measured.edgeM);
    within(net(isProfile), measured.jointM);
    within(
      net(({ key }) => key.startsWith('profile:doorway:')),
      measured.doorwayM,
    );
    within(
      net(({ key }) => key.startsWith('profile:structural:')),
      measured.structuralM,
    );
    const bareM2 = analysis.bays.reduce((sum, bay) => sum + bay.bareM2, 0);
    within(
      net(({ group }) => group === 'insulation'),
      measured.floorM2 - bareM2,
    );
  });
});

describe('the take-off of real floors', { timeout }, () => {
  const folder = new URL('../../../shared/real-plans/', import.meta.url);
  const files = existsSync(folder) ? readdirSync(folder).filter((file) => file.endsWith('.json')) : [];

  it.skipIf(files.length === 0)('finds them in the folder shared/real-plans beside the project', () => {
    expect(files.length).toBeGreaterThan(0);
  });

  it.each(files)('measures %s as jsts does', (file) => {
    const { plan, analysis } = analysedOnce(planOf(JSON.parse(readFileSync(new URL(file, folder), 'utf8'))));
    const [measured, net] = [measuredFloor(plan, analysis), netsOf(plan, analysis)];
    expect(Math.abs(net(isVolume) - measured.screedM3)).toBeLessThanOrEqual(measured.screedM3 * 1e-3);
    // an opening beside which no room stands all along has no single reading: its reveals are a hundredth of the edges at most
    const share = expectedFloor(plan).doors.every(({ clear }) => clear) ? 1e-3 : 1e-2;
    expect(Math.abs(net(isStrip) - measured.edgeM)).toBeLessThanOrEqual(measured.edgeM * share);
    expect(Math.abs(net(isProfile) - measured.jointM)).toBeLessThanOrEqual(measured.edgeM * share);
  });
});
