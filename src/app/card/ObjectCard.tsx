import { useMemo } from 'react';
import type { Joint } from '../../plan/analysis.ts';
import { objectChanged, objectFind, type PlanObject } from '../../plan/edits/objects.ts';
import type { Joinery, Pipe, Plan, StructuralJoint, SunZone } from '../../plan/plan.ts';
import { planResolve } from '../../plan/resolve.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { underChoices } from '../panels/ToolOptions.tsx';
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { movement } from '../parts/format.ts';
import { groutWords } from '../parts/grout.ts';
import { NumberField } from '../parts/NumberField.tsx';
import { widthRanges } from '../parts/ranges.ts';
import { TextField } from '../parts/TextField.tsx';
import { TickField } from '../parts/TickField.tsx';
import type { Result } from '../state/analysisStore.ts';
import { commit } from '../state/planStore.ts';
import { drawnTakeAway, jointsFindAgain } from '../tools/actions.ts';
import { CardFindings } from './CardFindings.tsx';
import { Corners } from './CornersTable.tsx';
import { DoorwayFields } from './DoorwayFields.tsx';
import { type FigureRow, FiguresTable } from './FiguresTable.tsx';
import { GroutDeed } from './GroutDeed.tsx';
import { JointRegister } from './JointRegister.tsx';
import { LengthField } from './LengthField.tsx';
import { PlaceFields, SizeFields } from './OutlineFields.tsx';
import { RepeatFold } from './RepeatFold.tsx';
import { ThingActions, TurnFold } from './ThingActions.tsx';

interface ObjectCardProps {
  readonly file: PlanFile;
  readonly id: string;
  /** What undo calls it. */
  readonly of: string;
  /** Null until there is one. */
  readonly result: Result | null;
}

/** A thing of the plan that is no room: its figures to be typed, what the floor makes of it, and what is done with it. */
export function ObjectCard(props: ObjectCardProps) {
  const { file, id, of, result } = props;
  const plan = useMemo(() => planResolve({ ...file, rooms: [] }), [file]);
  const found = objectFind(file, id);
  if (found === null) return null;
  const joints = result?.analysis.joints.filter((joint) => joint.sources.includes(id)) ?? [];
  const isDrawn = found.list === 'drawnJoints';
  return (
    <>
      <Fields {...props} found={found} plan={plan} />
      {joints.length > 0 && <FiguresTable rows={joints.flatMap(jointRows)} />}
      {joints.map((joint) => (
        <GroutDeed key={joint.key} joint={joint} />
      ))}
      {result !== null &&
        joints.map((joint) => (
          <JointRegister
            key={joint.key}
            joint={joint}
            result={result}
            {...(joints.length > 1 ? { summary: `${joint.id} in the joint register` } : {})}
          />
        ))}
      {result !== null && (
        <CardFindings id={id} also={isDrawn ? joints.map((joint) => joint.id) : []} result={result} />
      )}
      {found.list === 'columns' && <RepeatFold id={id} />}
      {found.list === 'doorways' || found.list === 'pipes' ? null : <Corners file={file} id={id} of={of} />}
      {found.list === 'pipes' || found.list === 'noJoint' ? null : <TurnFold />}
      {found.list === 'noJoint' ? null : <ThingActions />}
    </>
  );
}

/** What the joints along it must take, and how they lie in the tiles. */
function jointRows(joint: Joint): readonly FigureRow[] {
  const grout = groutWords(joint);
  return [
    { name: `Joint ${joint.id} closes`, value: movement(joint.closingMm) },
    ...(grout === null ? [] : [{ name: `Grout line of ${joint.id}`, value: grout.place, limit: grout.more || null }]),
  ];
}

interface FieldsProps extends ObjectCardProps {
  readonly found: PlanObject;
  /** With every default filled in, without its rooms. */
  readonly plan: Plan;
}

function Fields({ found, plan, file, id, of }: FieldsProps) {
  const thing = { file, id, of };
  const is = (object: { readonly id: string }) => object.id === id;
  switch (found.list) {
    case 'rooms':
      return null;
    case 'doorways': {
      const doorway = plan.doorways.find(is);
      return doorway === undefined ? null : <DoorwayFields file={file} doorway={doorway} of={of} />;
    }
    case 'columns':
      return (
        <>
          <SizeFields {...thing} words={['Width', 'Depth']} about="middle" />
          <PlaceFields {...thing} by="middle" />
        </>
      );
    case 'pipes':
      return <PipeFields {...thing} pipe={found.object} />;
    case 'joinery': {
      const joinery = plan.joinery.find(is);
      return joinery === undefined ? null : <JoineryFields {...thing} joinery={joinery} named={found.object.name} />;
    }
    case 'sunZones':
      return <SunFields {...thing} sun={found.object} />;
    case 'structuralJoints': {
      const joint = plan.structuralJoints.find(is);
      return joint === undefined ? null : <StructuralFields id={id} of={of} joint={joint} />;
    }
    case 'slabContacts':
    case 'keepClear':
      return <OutlineFields {...thing} />;
    case 'drawnJoints':
    case 'noJoint':
      return <HandJoint id={id} taken={found.list === 'noJoint'} />;
  }
}

type ThingProps = Pick<ObjectCardProps, 'file' | 'id' | 'of'>;

function OutlineFields(thing: ThingProps) {
  return (
    <>
      <SizeFields {...thing} words={['Length, across', 'Width, down']} />
      <PlaceFields {...thing} by="corner" />
    </>
  );
}

function PipeFields({ pipe, ...thing }: ThingProps & { readonly pipe: Pipe }) {
  return (
    <>
      <LengthField
        label="Diameter"
        of={thing.of}
        valueMm={pipe.diameterMm}
        edit={(plan, diameterMm) => objectChanged(plan, thing.id, { diameterMm })}
      />
      <PlaceFields {...thing} by="middle" />
    </>
  );
}

interface JoineryFieldsProps extends ThingProps {
  readonly joinery: Joinery;
  /** As it stands in the file. */
  readonly named: string | undefined;
}

function JoineryFields({ joinery, named, ...thing }: JoineryFieldsProps) {
  const { id, of } = thing;
  const underWords = (value: Joinery['under']) => underChoices.find((each) => each.value === value)?.words ?? value;
  return (
    <>
      <TextField
        label="Name"
        value={named ?? ''}
        placeholder={id}
        onChange={(next) =>
          commit(`Rename ${of}`, (plan) => objectChanged(plan, id, { name: next === '' ? undefined : next }))
        }
      />
      <ChoiceField
        label="Below it"
        wide
        value={joinery.under}
        choices={underChoices}
        onChange={(under) =>
          commit(`Below ${of}: ${underWords(under).toLowerCase()}`, (plan) => objectChanged(plan, id, { under }))
        }
      />
      <TickField
        label="Bolted through to the slab"
        value={joinery.fixedThrough}
        onChange={(ticked) =>
          commit(`${of} ${ticked ? 'bolted through' : 'not bolted through'}`, (plan) =>
            objectChanged(plan, id, { fixedThrough: ticked ? true : undefined }),
          )
        }
      />
      <OutlineFields {...thing} />
    </>
  );
}

function SunFields({ sun, ...thing }: ThingProps & { readonly sun: Pick<SunZone, 'highestC'> }) {
  const { id, of } = thing;
  return (
    <>
      <NumberField
        label="Highest temperature"
        unit="°C"
        source="drawing-start"
        range={null}
        value={sun.highestC}
        least={-40}
        most={100}
        step={1}
        decimals={1}
        onChange={(highestC, gesture) =>
          commit(
            `Highest temperature of ${of} ${highestC} °C`,
            (plan) => objectChanged(plan, id, { highestC }),
            gesture,
          )
        }
      />
      <OutlineFields {...thing} />
    </>
  );
}

function StructuralFields({ id, of, joint }: Pick<ThingProps, 'id' | 'of'> & { readonly joint: StructuralJoint }) {
  return (
    <LengthField
      label="Width"
      of={of}
      valueMm={joint.widthMm}
      leastMm={widthRanges.structuralJoint.least}
      mostMm={widthRanges.structuralJoint.most}
      edit={(plan, widthMm) => objectChanged(plan, id, { widthMm })}
    />
  );
}

/** A joint that is the user's own word: drawn, or taken away. */
function HandJoint({ id, taken }: { readonly id: string; readonly taken: boolean }) {
  return (
    <>
      <p>
        {taken ? 'The tool puts no joint along this line.' : 'The tool keeps this joint and finds the rest round it.'}
      </p>
      <div className="deeds">
        <button type="button" className="button framed" onClick={() => jointsFindAgain([id])}>
          Let the tool find it again
        </button>
        {!taken && (
          <button type="button" className="button framed" onClick={() => drawnTakeAway(id)}>
            Take it away
          </button>
        )}
      </div>
    </>
  );
}
