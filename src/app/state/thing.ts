import type { DrawingRef } from '../../documents/drawing.ts';
import type { Analysis, Bay, Edge, Finding, Joint } from '../../plan/analysis.ts';

/** What is chosen or hovered. Bays and joints are held by the key that survives edits, so that a choice outlives
 *  the numbers on the sheet; the drawing and the lists speak of the present analysis by `DrawingRef`. */
export interface Thing {
  readonly kind: DrawingRef['kind'];
  readonly key: string;
}

/** The card of what is chosen, in the page. */
export const cardId = 'card';

export function thingEquals(a: Thing | null, b: Thing | null): boolean {
  return a === b || (a !== null && b !== null && a.kind === b.kind && a.key === b.key);
}

/** Whether the plan itself has such things; the rest the analysis finds. */
export function thingIsPlanned({ kind }: Thing): boolean {
  return kind === 'room' || kind === 'object';
}

/** Ids of those things that the plan itself has, or had before an undo. */
export function planIds(things: readonly Thing[]): readonly string[] {
  return things.filter(thingIsPlanned).map(({ key }) => key);
}

export const bayThing = (bay: Bay): Thing => ({ kind: 'bay', key: bay.key });
export const jointThing = (joint: Joint): Thing => ({ kind: 'joint', key: joint.key });
export const edgeThing = (edge: Edge): Thing => ({ kind: 'edge', key: edge.id });
export const findingThing = (finding: Finding): Thing => ({ kind: 'finding', key: findingKey(finding) });

/** Findings have no key of their own: the code with what and where it is about tells them apart; the words do where it
 *  is about the whole plan. */
export function findingKey(finding: Finding): string {
  return [finding.code, ...finding.refs, ...(finding.at ?? [finding.message])].join(' ');
}

/** The thing that an item of the drawing stands for; null where the analysis knows none of that name. */
export function thingOf(ref: DrawingRef, analysis: Analysis): Thing | null {
  switch (ref.kind) {
    case 'bay': {
      const bay = analysis.bays.find((each) => each.id === ref.id);
      return bay === undefined ? null : bayThing(bay);
    }
    case 'joint': {
      const joint = analysis.joints.find((each) => each.id === ref.id);
      return joint === undefined ? null : jointThing(joint);
    }
    case 'finding': {
      const finding = analysis.findings[Number(ref.id)];
      return finding === undefined ? null : findingThing(finding);
    }
    case 'edge':
    case 'room':
    case 'object':
      return { kind: ref.kind, key: ref.id };
  }
}

/** What the drawing calls the thing; null where it is no longer there. */
export function thingRef(thing: Thing, analysis: Analysis): DrawingRef | null {
  switch (thing.kind) {
    case 'bay': {
      const bay = analysis.bays.find((each) => each.key === thing.key);
      return bay === undefined ? null : { kind: 'bay', id: bay.id };
    }
    case 'joint': {
      const joint = analysis.joints.find((each) => each.key === thing.key);
      return joint === undefined ? null : { kind: 'joint', id: joint.id };
    }
    case 'finding': {
      const index = analysis.findings.findIndex((each) => findingKey(each) === thing.key);
      return index < 0 ? null : { kind: 'finding', id: String(index) };
    }
    case 'edge':
    case 'room':
    case 'object':
      return { kind: thing.kind, id: thing.key };
  }
}

const refKinds = ['bay', 'joint', 'edge', 'room', 'object'] as const;

/** What a finding is about, as the drawing may call it: a finding gives ids without their kind. */
export function findingRefs(thing: Thing, analysis: Analysis): readonly DrawingRef[] {
  if (thing.kind !== 'finding') return [];
  const finding = analysis.findings.find((each) => findingKey(each) === thing.key);
  return (finding?.refs ?? []).flatMap((id) => refKinds.map((kind) => ({ kind, id })));
}
