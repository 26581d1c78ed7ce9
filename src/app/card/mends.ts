import { type Analysis, type Finding, type Joint, jointIsFound } from '../../plan/analysis.ts';
import type { Change } from '../../plan/edits/fields.ts';
import { planCoveringLaid, planSectionChanged } from '../../plan/edits/settings.ts';
import type { TilesFile, TilesOf } from '../../plan/edits/tiles.ts';
import type { Plan } from '../../plan/plan.ts';
import { defaults, type RuleSetKey, ruleSets, rules } from '../../plan/reference.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { figureShort } from '../parts/format.ts';
import { widthRanges } from '../parts/ranges.ts';

/** A change of the plan that answers a finding; without one where no figure that the field takes would. */
export interface Mend {
  readonly words: string;
  readonly edit: ((file: PlanFile) => PlanFile) | null;
  /** In place of the edit, what it is to do with tiles: the edits of tiles come with the cards. */
  readonly tiles?: TileMend;
}

export type TileMend =
  | { readonly of: TilesOf; readonly change: Change<TilesFile> }
  /** Rooms that go back to the tiles of the floor. */
  | { readonly rooms: readonly string[] }
  /** A field that goes. */
  | { readonly away: string };

/** Whether there is anything to be done, or only something to be said. */
export function mendIsDone({ edit, tiles }: Mend): boolean {
  return edit !== null || tiles !== undefined;
}

/** The sealant class of ISO 11600 that takes most, as a share of the width. */
const bestCapability = Math.max(defaults.sealantCapability.value, ...(defaults.sealantCapability.range ?? []));

/** What a figure of the plan can mend: widths to the next whole mm, so that they can be ordered. */
export function mendsOf(
  finding: Finding,
  { plan, analysis }: { readonly plan: Plan; readonly analysis: Analysis },
): readonly Mend[] {
  switch (finding.code) {
    case 'sealant-narrow':
      return sealantMends(plan, analysis.joints);
    case 'sealant-least-width':
      return [sealantWiden(ruleSets[plan.ruleSet as RuleSetKey].sealantLeastWidth.value)];
    case 'profile-overrun':
    case 'profile-worst-case': {
      const joint = analysis.joints.find((each) => finding.refs.includes(each.id));
      return joint === undefined || joint.kind === 'structural'
        ? []
        : [profileWiden(plan, finding.code, analysis.joints)];
    }
    case 'strip-travel':
    case 'strip-overrun':
      return [stripThicken(plan, analysis)];
    default:
      return tileMends(finding, plan, analysis);
  }
}

/** Whose tiles a finding is about. */
export function findingTiles({ refs }: Finding, { tileFields }: Plan): TilesOf {
  return tileFields.find(({ id }) => refs.includes(id))?.id ?? null;
}

function tileMends(finding: Finding, plan: Plan, { joints }: Analysis): readonly Mend[] {
  const of = findingTiles(finding, plan);
  const tiles = (words: string, change: Change<TilesFile>): readonly Mend[] => [
    { words, edit: null, tiles: { of, change } },
  ];
  switch (finding.code) {
    case 'tile-grout-narrow': {
      const groutMm = rules.groutLeastMm.value;
      return tiles(`Widen the grout lines to ${figureShort(groutMm, 1)} mm`, { groutMm });
    }
    case 'tile-grout-wide': {
      const groutMm = defaults.groutMm.value;
      const grid = plan.tileFields.find(({ id }) => id === of) ?? plan.tiles;
      if (grid === null || groutMm > Math.min(grid.lengthMm, grid.widthMm)) return [];
      return tiles(`Narrow the grout lines to ${figureShort(groutMm, 1)} mm`, { groutMm });
    }
    case 'tile-field-empty':
      return of === null ? [] : [{ words: 'Take the field away', edit: null, tiles: { away: of } }];
    case 'tile-offset-large':
      return tiles('Use an offset of a third', { bond: 'third' });
    case 'tile-bond-unknown':
    case 'tile-herringbone-square':
      return tiles('Use the straight bond', { bond: 'straight' });
    case 'tile-field-covering':
      return [
        {
          words: 'Lay stone or ceramic there',
          edit: (file) => planCoveringLaid(file, finding.refs, 'stone-or-ceramic'),
        },
        { words: 'Take the room out of the field', edit: null, tiles: { rooms: finding.refs } },
      ];
    case 'tile-joint-off-grout': {
      const isFree = joints.some((joint) => finding.refs.includes(joint.id) && jointIsFound(joint));
      return isFree && plan.layout.aim !== 'grout-lines' ? [jointsAim] : [];
    }
    default:
      return [];
  }
}

const jointsAim: Mend = {
  words: 'Move the joints to grout lines',
  edit: (file) => planSectionChanged(file, 'layout', { aim: 'grout-lines' }),
};

/** One width serves the whole plan: it is what the joint that moves most needs. */
function sealantMends(plan: Plan, joints: readonly Joint[]): readonly Mend[] {
  const needsMm = Math.max(
    ...joints.filter((joint) => joint.kind !== 'structural').map((joint) => joint.sealantNeedsMm),
  );
  const widen = sealantWiden(Math.ceil(needsMm));
  const needsAtBestMm = (needsMm * plan.sealant.capability) / bestCapability;
  if (plan.sealant.capability >= bestCapability || needsAtBestMm > widthRanges.sealant.most) return [widen];
  const words = `Use sealant class ${figureShort(bestCapability * 100, 1)}`;
  const better = {
    words,
    edit: (file: PlanFile) => planSectionChanged(file, 'sealant', { capability: bestCapability }),
  };
  return widen.edit === null ? [better] : [widen, better];
}

function sealantWiden(widthMm: number): Mend {
  if (widthMm > widthRanges.sealant.most) return noneWithin('sealant', widthRanges.sealant.most);
  return {
    words: `Widen the sealant to ${figureShort(widthMm, 1)} mm`,
    edit: (file) => planSectionChanged(file, 'sealant', { widthMm }),
  };
}

function profileWiden(plan: Plan, code: 'profile-overrun' | 'profile-worst-case', joints: readonly Joint[]): Mend {
  const figure = code === 'profile-overrun' ? 'closingMm' : 'worstClosingMm';
  const needsMm = Math.max(...joints.filter((joint) => joint.kind !== 'structural').map((joint) => joint[figure]));
  const widthMm = Math.ceil(needsMm / plan.jointProfile.usableTravel);
  if (widthMm > widthRanges.jointProfile.most) return noneWithin('profile', widthRanges.jointProfile.most);
  return {
    words: `Widen the profile to ${widthMm} mm`,
    edit: (file) => planSectionChanged(file, 'jointProfile', { widthMm }),
  };
}

function stripThicken(plan: Plan, { edges }: Analysis): Mend {
  const needsMm = Math.max(rules.stripLeastTravelMm.value, ...edges.map((edge) => edge.movementMm));
  const thicknessMm = Math.ceil(needsMm / plan.edgeStrip.usableTravel);
  if (thicknessMm > widthRanges.edgeStrip.most) return noneWithin('strip', widthRanges.edgeStrip.most);
  return {
    words: `Use a strip of ${thicknessMm} mm`,
    edit: (file) => planSectionChanged(file, 'edgeStrip', { thicknessMm }),
  };
}

function noneWithin(what: 'sealant' | 'profile' | 'strip', mostMm: number): Mend {
  return { words: `No ${what} of up to ${mostMm} mm takes so much`, edit: null };
}
