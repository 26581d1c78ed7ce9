import type { Analysis } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';

/** Fields and types of the result as the contract prints them, references and keys. */

type Kind =
  | 'number'
  | 'string'
  | 'boolean'
  | 'point'
  | 'line'
  | 'rings'
  | 'strings'
  | 'number?'
  | 'boolean?'
  | 'point?';

const isPoint = (v: unknown) => Array.isArray(v) && v.length === 2 && v.every((n) => Number.isFinite(n));
const isLine = (v: unknown) => Array.isArray(v) && v.every(isPoint);
const isKind: Record<Kind, (v: unknown) => boolean> = {
  number: (v) => Number.isFinite(v),
  string: (v) => typeof v === 'string' && v !== '',
  boolean: (v) => typeof v === 'boolean',
  point: isPoint,
  line: isLine,
  rings: (v) => Array.isArray(v) && v.every(isLine),
  strings: (v) => Array.isArray(v) && v.every((s) => typeof s === 'string'),
  'number?': (v) => v === null || Number.isFinite(v),
  'boolean?': (v) => v === null || typeof v === 'boolean',
  'point?': (v) => v === null || isPoint(v),
};

const fields: Record<'bays' | 'joints' | 'edges' | 'findings', Record<string, Kind>> = {
  bays: {
    id: 'string',
    key: 'string',
    rooms: 'strings',
    outline: 'line',
    measured: 'line',
    holes: 'rings',
    areaM2: 'number',
    lengthM: 'number',
    widthM: 'number',
    aspect: 'number',
    perimeterM: 'number',
    stillPoint: 'point',
    within: 'boolean',
  },
  joints: {
    id: 'string',
    key: 'string',
    kind: 'string',
    line: 'line',
    run: 'string',
    lengthM: 'number',
    bays: 'strings',
    reasons: 'strings',
    closingMm: 'number',
    openingMm: 'number',
    slidingMm: 'number',
    worstClosingMm: 'number',
    profileMm: 'number',
    profileTakesMm: 'number',
    sealantNeedsMm: 'number',
    onGroutLine: 'boolean?',
    offGroutMm: 'number?',
  },
  edges: {
    id: 'string',
    along: 'string',
    bay: 'string',
    room: 'string',
    line: 'line',
    lengthM: 'number',
    movementMm: 'number',
  },
  findings: { code: 'string', severity: 'string', message: 'string', at: 'point?', refs: 'strings', source: 'string' },
};

const jointKinds = ['doorway', 'neck', 'field', 'structural', 'zone', 'drawn'];
const alongs = ['wall', 'column', 'pipe', 'joinery'];
const severities = ['fault', 'caution', 'note'];

export function shapeFaults(plan: Plan, analysis: Analysis): string[] {
  const faults: string[] = [];
  const printed = JSON.parse(JSON.stringify(analysis)) as Record<string, unknown>;
  if (printed.format !== 'screed-bays/analysis' || printed.version !== 1) faults.push('wrong format or version');
  if (printed.plan !== plan.name) faults.push('the plan is not named');
  for (const [list, kinds] of Object.entries(fields)) {
    const items = printed[list];
    if (!Array.isArray(items)) {
      faults.push(`${list} is no list`);
      continue;
    }
    for (const [i, item] of (items as Record<string, unknown>[]).entries()) {
      for (const [field, kind] of Object.entries(kinds)) {
        if (!isKind[kind](item[field]))
          faults.push(`${list}[${i}].${field} is no ${kind}: ${JSON.stringify(item[field])}`);
      }
    }
  }
  if (faults.length > 0) return faults;
  return [...wordFaults(analysis), ...nameFaults(plan, analysis), ...totalsShapeFaults(analysis)];
}

function wordFaults(analysis: Analysis): string[] {
  const faults: string[] = [];
  for (const joint of analysis.joints) {
    if (!jointKinds.includes(joint.kind)) faults.push(`${joint.id} is of unknown kind ${joint.kind}`);
    if (joint.bays.length !== 2 || joint.bays[0] === joint.bays[1]) faults.push(`${joint.id} is not between two bays`);
    if (joint.reasons.length === 0) faults.push(`${joint.id} gives no reason`);
    if (joint.line.length < 2) faults.push(`${joint.id} has no line`);
  }
  for (const edge of analysis.edges) {
    if (!alongs.includes(edge.along)) faults.push(`${edge.id} runs along unknown ${edge.along}`);
  }
  for (const finding of analysis.findings) {
    if (!severities.includes(finding.severity)) faults.push(`${finding.code} has unknown severity ${finding.severity}`);
  }
  return faults;
}

/** Ids and keys used once, and every reference leads somewhere. */
function nameFaults(plan: Plan, analysis: Analysis): string[] {
  const faults: string[] = [];
  for (const [what, list] of [
    ['bay', analysis.bays],
    ['joint', analysis.joints],
    ['edge', analysis.edges],
  ] as const) {
    for (const field of ['id', 'key'] as const) {
      const values = list.flatMap((item) =>
        field in item ? [(item as unknown as Record<string, string>)[field]] : [],
      );
      if (new Set(values).size !== values.length) faults.push(`a ${what} ${field} is used twice`);
    }
  }
  const bays = new Set(analysis.bays.map((b) => b.id));
  const rooms = new Set(plan.rooms.map((r) => r.id));
  for (const joint of analysis.joints) {
    for (const bay of joint.bays) if (!bays.has(bay)) faults.push(`${joint.id} names a bay ${bay} that is not there`);
  }
  for (const edge of analysis.edges) {
    if (!bays.has(edge.bay)) faults.push(`${edge.id} names a bay ${edge.bay} that is not there`);
    if (!rooms.has(edge.room)) faults.push(`${edge.id} names a room ${edge.room} that is not there`);
  }
  for (const bay of analysis.bays) {
    if (bay.rooms.length === 0) faults.push(`${bay.id} names no room`);
    for (const room of bay.rooms) if (!rooms.has(room)) faults.push(`${bay.id} names a room ${room} that is not there`);
  }
  const known = knownIds(plan, analysis);
  for (const finding of analysis.findings) {
    for (const ref of finding.refs)
      if (!known.has(ref)) faults.push(`finding ${finding.code} names ${ref}, which is not there`);
  }
  return faults;
}

function knownIds(plan: Plan, analysis: Analysis): Set<string> {
  const objects = [
    plan.rooms,
    plan.doorways,
    plan.columns,
    plan.pipes,
    plan.joinery,
    plan.slabContacts,
    plan.structuralJoints,
    plan.sunZones,
    plan.drawnJoints,
    plan.noJoint,
    plan.keepClear,
    plan.tileFields,
    analysis.bays,
    analysis.joints,
    analysis.edges,
  ];
  return new Set(objects.flatMap((list) => list.map((item) => item.id)));
}

function totalsShapeFaults(analysis: Analysis): string[] {
  const q = analysis.quantities as unknown as Record<string, unknown>;
  const names = ['edgeStripM', 'sealantLitres', 'screedM3', 'screedKg', 'insulationM2', 'slabContactM2', 'floorM2'];
  const faults = names.filter((n) => !Number.isFinite(q[n])).map((n) => `quantities.${n} is no number`);
  for (const kind of jointKinds) {
    if (!Number.isFinite((q.jointM as Record<string, unknown>)[kind]))
      faults.push(`quantities.jointM.${kind} is no number`);
  }
  if (!isKind['number?'](analysis.proof.atLeastM)) faults.push('proof.atLeastM is neither number nor null');
  return faults;
}
