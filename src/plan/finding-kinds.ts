import type { Severity } from './analysis.ts';
import type { FindingCode } from './finding.ts';
import type { SourceKey } from './sources.ts';

export interface FindingKind {
  readonly severity: Severity;
  /** Behind the rule, where the finding does not name a source of its own. */
  readonly source: SourceKey;
}

const fault = (source: SourceKey): FindingKind => ({ severity: 'fault', source });
const caution = (source: SourceKey): FindingKind => ({ severity: 'caution', source });
const note = (source: SourceKey): FindingKind => ({ severity: 'note', source });

/** fault: the floor as planned breaks a limit or is held; caution: look at it; note: for information. */
export const findingKinds: Readonly<Record<FindingCode, FindingKind>> = {
  'outline-crossing': fault('plan-data'),
  'hole-off-room': caution('plan-data'),
  'rooms-overlap': fault('plan-data'),
  'room-too-thin': caution('plan-data'),
  'room-unreached': caution('plan-data'),
  'doorway-joins-nothing': caution('plan-data'),
  'doorway-one-room': note('plan-data'),
  'object-off-floor': caution('plan-data'),
  'no-joint-stands': note('plan-data'),
  'drawn-joint-loose': fault('drawing-practice'),
  'joint-idle': caution('plan-data'),
  'structural-joint-loose': fault('structural-joint'),
  'doorway-blocked': caution('plan-data'),
  'layout-too-many-bays': fault('plan-data'),
  'layout-unfinished': fault('plan-data'),
  'bay-area': fault('en-1264-4-bays'),
  'bay-length': fault('en-1264-4-bays'),
  'bay-aspect': fault('en-1264-4-bays'),
  'bay-aspect-allowance': note('cpt-3774-corridor'),
  'bay-reentrant': fault('reentrant-corner'),
  'bay-narrow': caution('bay-width'),
  'bay-core': fault('columns'),
  'neck-unjointed': fault('neck'),
  'column-off-joint': fault('columns'),
  'column-one-direction': caution('columns'),
  'column-in-bay': note('columns'),
  'joint-through-joinery': fault('plan-data'),
  'joint-through-keep-clear': fault('plan-data'),
  'slab-contact': fault('slab-contact'),
  'held-twice': fault('held-stress'),
  'profile-overrun': fault('foam-travel'),
  'profile-worst-case': caution('foam-travel'),
  'strip-overrun': fault('foam-travel'),
  'strip-travel': fault('strip-travel'),
  'sealant-narrow': fault('sealant-width'),
  'sealant-least-width': caution('bs-5385-joint'),
  'screed-thin': fault('din-18560-2-thickness'),
  'cover-thin': fault('pipe-cover'),
  'screed-thick': fault('dead-load'),
  'no-rooms': note('plan-data'),
  'temperatures-reversed': caution('plan-data'),
  'unheated-as-plan': note('plan-data'),
  'screed-hot': caution('screed-temperature'),
  'rule-set-other-screed': caution('en-1264-4-bays'),
  'rule-set-other-floor': caution('en-1264-4-bays'),
  'limits-not-entered': caution('data-sheet'),
  'limits-from-memory': note('en-1264-4-rectangle'),
  'limits-carried-over': note('heated-other-coverings'),
  'tile-field-unknown-room': caution('plan-data'),
  'tile-room-twice': caution('plan-data'),
  'tile-field-covering': caution('plan-data'),
  'tile-field-empty': caution('plan-data'),
  'tile-field-edge': caution('joint-over-joint'),
  'tile-bond-unknown': caution('plan-data'),
  'tile-grout-narrow': caution('grout-width-uk'),
  'tile-grout-wide': caution('plan-data'),
  'tile-herringbone-square': caution('plan-data'),
  'tile-offset-large': caution('ansi-a108-02-offset'),
  'tile-perimeter-narrow': caution('bs-5385-joint'),
  'tile-too-fine': caution('plan-data'),
  'tile-slivers': caution('tile-sliver'),
  'tile-cuts-small': note('ansi-a108-02-cuts'),
  'tile-joint-off-grout': caution('joint-over-joint'),
  'tile-joint-across-courses': caution('tile-straight-joint'),
  'tile-standing-cut': note('joint-over-joint'),
  'not-checked': caution('plan-data'),
};
