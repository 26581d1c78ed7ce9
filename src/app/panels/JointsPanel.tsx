import { jointKindNames, namesOf } from '../../documents/words.ts';
import { stripTakes } from '../../movement/strip.ts';
import { type Bay, jointKinds, type Severity } from '../../plan/analysis.ts';
import { planSectionChanged } from '../../plan/edits/settings.ts';
import { defaults } from '../../plan/reference.ts';
import { HandGroup } from '../later.tsx';
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { area, figureShort, movement, sides } from '../parts/format.ts';
import { Icon } from '../parts/Icon.tsx';
import { PlanNumber } from '../parts/PlanNumber.tsx';
import { widthRanges } from '../parts/ranges.ts';
import { Sample } from '../parts/Sample.tsx';
import { SourceText } from '../parts/SourceNote.tsx';
import { ThingList, type ThingRow } from '../parts/ThingList.tsx';
import { Toned } from '../parts/Toned.tsx';
import { usePlan, usePlanResolved } from '../state/hooks.ts';
import { commit, planShown } from '../state/planStore.ts';
import { bayThing, jointThing } from '../state/thing.ts';
import { isGrave, worstOf } from '../state/worst.ts';
import type { PanelProps } from './panel.ts';

/** Joints that the user drew or took away. */
const handLists = ['drawnJoints', 'noJoint'] as const;

/** Profile and sealant; then the bays that the joints make, and the joints by kind with what they must take. */
export function JointsPanel({ result: last, onChoose }: PanelProps) {
  const isByHand = usePlan((state) => handLists.some((list) => planShown(state)[list] !== undefined));
  const result = last !== null && last.analysis.bays.length > 0 ? last : null;
  return (
    <>
      <LayoutGroup />
      <ProfileGroup />
      <SealantGroup />
      {isByHand && <HandGroup onChoose={onChoose} />}
      {result !== null && (
        <section className="group">
          <h3>
            Bays <span className="quiet">{result.analysis.bays.length}</span>
          </h3>
          <ThingList label="Bays" rows={bayRows(result)} onChoose={onChoose} />
        </section>
      )}
      {result !== null && (
        <section className="group">
          <h3>
            Joints, closing <span className="quiet">{result.analysis.joints.length}</span>
          </h3>
          <ThingList label="Joints" rows={jointRows(result)} onChoose={onChoose} />
        </section>
      )}
    </>
  );
}

const aims = [
  { value: 'least-joint', words: 'Least joint' },
  { value: 'even-bays', words: 'Even bays' },
  { value: 'grout-lines', words: 'Grout lines' },
] as const;

/** What the joints that the tool finds aim at, within the limits. */
function LayoutGroup() {
  const { layout } = usePlanResolved();
  return (
    <section className="group">
      <ChoiceField
        label="Layout aims at"
        value={layout.aim}
        choices={aims}
        onChange={(aim) =>
          commit(`Layout aims at ${aims.find(({ value }) => value === aim)?.words.toLowerCase()}`, (file) =>
            planSectionChanged(file, 'layout', { aim }),
          )
        }
      />
    </section>
  );
}

function ProfileGroup() {
  const { jointProfile } = usePlanResolved();
  return (
    <section className="group">
      <h3>Joint profile in the screed</h3>
      <PlanNumber
        figure="profileWidthMm"
        label="Width"
        name="Joint profile width"
        value={jointProfile.widthMm}
        {...widthRanges.jointProfile}
        step={1}
        decimals={1}
        edit={(file, widthMm) => planSectionChanged(file, 'jointProfile', { widthMm })}
      />
      <PlanNumber
        figure="profileTravel"
        label="Usable travel"
        name="Joint profile travel"
        value={jointProfile.usableTravel}
        least={0.05}
        most={1}
        step={0.05}
        decimals={2}
        edit={(file, usableTravel) => planSectionChanged(file, 'jointProfile', { usableTravel })}
      />
      <p className="small quiet">Takes {movement(stripTakes(jointProfile.widthMm, jointProfile.usableTravel))}.</p>
    </section>
  );
}

/** ISO 11600: movement as a share of the width. */
const sealantClasses = ['0.25', '0.2', '0.125', '0.075'] as const;

function SealantGroup() {
  const { sealant } = usePlanResolved();
  const own = String(sealant.capability);
  const classes = sealantClasses.some((each) => each === own) ? sealantClasses : [own, ...sealantClasses];
  return (
    <section className="group">
      <h3>Sealant in the covering</h3>
      <PlanNumber
        figure="sealantWidthMm"
        label="Width"
        name="Sealant width"
        value={sealant.widthMm}
        {...widthRanges.sealant}
        step={1}
        decimals={1}
        edit={(file, widthMm) => planSectionChanged(file, 'sealant', { widthMm })}
      />
      <ChoiceField
        label="Class"
        value={own}
        choices={classes.map((value) => ({ value, words: `Class ${figureShort(Number(value) * 100, 1)}` }))}
        onChange={(value) =>
          commit(`Sealant class ${figureShort(Number(value) * 100, 1)}`, (file) =>
            planSectionChanged(file, 'sealant', { capability: Number(value) }),
          )
        }
        source={<SourceText source={defaults.sealantCapability.source} />}
      />
    </section>
  );
}

function bayRows({ plan, analysis }: NonNullable<PanelProps['result']>): readonly ThingRow[] {
  const names = namesOf(plan, analysis);
  const worst = worstOf(analysis);
  return analysis.bays.map((bay) => ({
    thing: bayThing(bay),
    lead: bay.id,
    name: names.bay(bay),
    value: <Toned severity={worst.get(bay.id)}>{area(bay.areaM2)}</Toned>,
    more: <BayLine bay={bay} worst={worst.get(bay.id)} />,
  }));
}

/** Sides of a bay, and whether it keeps its limits. A tick stands only where nothing else is wrong with it. */
function BayLine({ bay, worst }: { readonly bay: Bay; readonly worst: Severity | undefined }) {
  const size = sides(bay.lengthM, bay.widthM);
  if (bay.within && isGrave(worst)) return `${size}, within its limits`;
  return (
    <span className={bay.within ? 'tone tone-within' : 'tone tone-fault'}>
      {bay.within && <Icon name="within" />}
      <span className="quiet">{size},</span> {bay.within ? 'within its limits' : 'over a limit'}
    </span>
  );
}

function jointRows({ plan, analysis }: NonNullable<PanelProps['result']>): readonly ThingRow[] {
  const names = namesOf(plan, analysis);
  const worst = worstOf(analysis);
  return jointKinds.flatMap((kind) =>
    analysis.joints
      .filter((joint) => joint.kind === kind)
      .map((joint) => ({
        thing: jointThing(joint),
        lead: <Sample of={{ shape: 'line', style: `joint-${kind}` }} />,
        name: `${joint.id} ${names.joint(joint)}`,
        value: <Toned severity={worst.get(joint.id)}>{movement(joint.closingMm)}</Toned>,
        more: jointKindNames[kind],
      })),
  );
}
