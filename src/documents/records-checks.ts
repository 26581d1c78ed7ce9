import type { Joint } from '../plan/analysis.ts';
import { roundedText } from '../plan/figure-words.ts';
import { papersOf } from '../plan/papers.ts';
import { planIsHeated } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import type { Form, FormBlock } from './form.ts';
import type { PaperSource } from './paper-source.ts';
import { aboutFields, checks, head, signatures, text, toFill } from './records-parts.ts';
import { type ColumnOf, columnFigure, columnText, tableOf } from './table.ts';
import { findingText, jointKindNames, namesOf, oneLine } from './words.ts';

/** What is looked at before and after the pour. Common practice where no figure stands; figures are those of the rules. */

export function beforePourForm(source: PaperSource): Form {
  const { sleeveMm, stripOverlapMm } = rules;
  const { plan } = source;
  const isHeated = planIsHeated(plan);
  const ifHeated = (item: string) => (isHeated ? [item] : []);
  return {
    title: 'Check list before the pour',
    subject: oneLine(plan.name),
    blocks: [
      aboutFields(source),
      head('Edges'),
      checks(
        `Edge strip stands everywhere along walls, columns, pipes, door frames and joinery, from the slab to above the finished floor`,
        `Ends of the strip overlap by ${roundedText(stripOverlapMm.value, 0)} mm; in corners it runs through without a splice and lies close`,
        'The foil of the strip lies on the insulation, so that no screed runs behind it',
      ),
      ...heldBlocks(source),
      head('Joints'),
      checks(
        'Each joint of the joint plan is there and in its place; none was added',
        'Profiles stand plumb over the full depth of the screed, down to the insulation, from edge to edge, and cannot be pushed over',
        ...ifHeated(
          `Each pipe that crosses a joint has a sleeve, ${roundedText(sleeveMm.value, 0)} mm long or more, centred on it; only supply and return cross`,
        ),
        `Mesh is cut at joints; no mesh${isHeated ? ', pipe clip or rail' : ''} bridges one`,
        'Joints of the building are carried through at their place and width',
      ),
      ...doorwayBlocks(source),
      head(isHeated ? 'Heating, insulation and height' : 'Insulation and height'),
      checks(
        'The insulation is closed, two layers staggered where there are two, no gap, no loose board',
        'The membrane is closed and lapped; for flowing screed it is sealed like a tub',
        ...ifHeated('Pipes are fixed, none floats, and are under test pressure; the pressure test is signed'),
        `Heights are checked over ${isHeated ? 'pipes and ' : ''}high spots: the screed is ${roundedText(plan.screed.thicknessMm, 1)} mm thick, at its thinnest as well`,
        `The test points for dryness are marked${isHeated ? ', clear of pipes' : ''}`,
      ),
      signatures(...ifHeated('Heating'), 'Screed', 'Tiling'),
    ],
  };
}

const heldCodes: ReadonlySet<string> = new Set(['slab-contact', 'held-twice']);

/** Places at which the analysis found the screed held to the slab, by name and room. */
function heldBlocks({ plan, analysis }: PaperSource): readonly FormBlock[] {
  const names = namesOf(plan, analysis);
  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const held = analysis.findings.filter(({ code }) => heldCodes.has(code));
  const where = (refs: readonly string[]) => {
    const bay = refs.map((id) => bays.get(id)).find((each) => each !== undefined);
    return bay === undefined ? '' : `${names.bay(bay)}: `;
  };
  return [
    head('No contact with the slab'),
    checks(
      'No screed reaches the slab: not under joinery, not at walls, not at drains or bolts',
      'Nothing is to be bolted through the screed; feet of partitions and balustrades stand free of it',
      ...held.map((finding) => `${where(finding.refs)}${findingText(finding)} Insulated, or decided by the designer.`),
    ),
  ];
}

interface DoorwayRow {
  readonly joint: Joint;
  readonly leaf: string;
}

function doorwayBlocks({ plan, analysis }: PaperSource): readonly FormBlock[] {
  const names = namesOf(plan, analysis);
  const leaves = new Map(plan.doorways.map(({ id, leaf }) => [id, leaf]));
  const rows = analysis.joints
    .filter(({ sources }) => sources.some((id) => leaves.has(id)))
    .map(
      (joint): DoorwayRow => ({
        joint,
        leaf: joint.sources.some((id) => leaves.get(id) === true) ? 'under the leaf' : 'no leaf: jamb to jamb',
      }),
    );
  if (rows.length === 0) return [];
  const columns: ColumnOf<DoorwayRow>[] = [
    columnText('Joint', ({ joint }) => joint.id),
    columnText('Between', ({ joint }) => names.joint(joint)),
    columnText('Kind', ({ joint }) => jointKindNames[joint.kind]),
    columnText('Line', ({ leaf }) => leaf),
    columnFigure('Length', 'm', 2, ({ joint }) => joint.lengthM),
    toFill('Checked'),
  ];
  const refs = ({ joint: { id } }: DoorwayRow) => [{ kind: 'joint', id } as const];
  return [
    { kind: 'table', table: tableOf({ name: 'doorway-checks', title: 'Joints in doorways' }, columns, rows, refs) },
    checks('Each lies where its line says: under the closed leaf it does not show'),
  ];
}

export function afterPourForm(source: PaperSource): Form {
  const { designer } = papersOf(source.file);
  const isHeated = planIsHeated(source.plan);
  return {
    title: 'Check list before the covering',
    subject: oneLine(source.plan.name),
    blocks: [
      aboutFields(source, [['Responsible for the joint plan', oneLine(designer)]]),
      head('After the pour'),
      checks(
        'The screed is kept from draught, sun, frost and rain as its data sheet says',
        'No joint is bridged: profiles show along their whole length and stand plumb still',
        'Cracks, lifted edges and hollow places are marked on the plan, and the designer knows',
        'Nothing is bolted through the screed',
      ),
      head('Before the covering'),
      checks(
        ...(isHeated ? ['First heating is done and its record is signed'] : []),
        'The dryness record releases every room that is covered',
        'Cracks are closed as the designer says; no movement joint is filled rigidly',
        'The edge strip stands untrimmed',
      ),
      head('Covering'),
      checks(
        'Each joint in the covering lies exactly over its joint in the screed, as wide or wider; none is left out, none tiled over',
        'No adhesive or grout bridges a joint or the edge strip',
        'The edge strip is trimmed only after the covering is grouted',
        'Edges and joints are closed with sealant or a profile, not with grout',
      ),
      text('A joint that cannot be met by the covering is a question for the designer before the first tile is laid.'),
      signatures('Screed', 'Tiling', 'Site manager'),
    ],
  };
}
