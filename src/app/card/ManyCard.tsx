import { useMemo } from 'react';
import { jointIsFound } from '../../plan/analysis.ts';
import type { AlignSide } from '../../plan/edits/arrange.ts';
import { objectsFound, type PlanObject } from '../../plan/edits/objects.ts';
import { planCoveringLaid, planRoomsChanged } from '../../plan/edits/settings.ts';
import type { Covering, Room } from '../../plan/plan.ts';
import { planResolve } from '../../plan/resolve.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { coveringWords } from '../panels/CoveringsPanel.tsx';
import { type Choice, ChoiceField } from '../parts/ChoiceField.tsx';
import { Fold } from '../parts/Fold.tsx';
import { countOf, nameText } from '../parts/format.ts';
import { TextField } from '../parts/TextField.tsx';
import type { Result } from '../state/analysisStore.ts';
import { commit } from '../state/planStore.ts';
import { jointThing, planIds, type Thing, thingEquals } from '../state/thing.ts';
import { chosenAlign, chosenDistribute, jointsKeep, jointsTakeAway } from '../tools/actions.ts';
import { objectNoun } from '../tools/nouns.ts';
import { countsWords } from './counts.ts';
import { zonesOf } from './RoomCard.tsx';
import { ThingActions, TurnFold } from './ThingActions.tsx';

interface ManyCardProps {
  readonly file: PlanFile;
  readonly things: readonly Thing[];
  readonly result: Result | null;
  readonly onChoose: (thing: Thing) => void;
}

/** Several things: what they are, and what is done with them together. */
export function ManyCard({ file, things, result, onChoose }: ManyCardProps) {
  const found = useMemo(() => objectsFound(file, planIds(things)), [file, things]);
  const rooms = useMemo(() => found.filter(({ list }) => list === 'rooms').map(({ object }) => object.id), [found]);
  return (
    <>
      <p>{countsWords(found, things.length)}</p>
      {found.length > 0 && rooms.length === found.length && <RoomsTogether file={file} ids={rooms} />}
      {found.length > 1 && <Arrange count={found.length} />}
      <JointsTogether things={things} result={result} />
      {found.length > 0 && <TurnFold />}
      {found.length > 0 && <WhichFold file={file} found={found} onChoose={onChoose} />}
      {found.length > 0 && <ThingActions />}
    </>
  );
}

/** So many are named; of more the rest is counted. */
const mostNamed = 40;

function WhichFold({
  file,
  found,
  onChoose,
}: Pick<ManyCardProps, 'file' | 'onChoose'> & { found: readonly PlanObject[] }) {
  const rest = found.length - mostNamed;
  return (
    <Fold summary="Which they are">
      <ul className="which">
        {found.slice(0, mostNamed).map(({ list, object }) => (
          <li key={object.id}>
            <button
              type="button"
              className="button"
              title="Choose this alone"
              onClick={() => onChoose({ kind: list === 'rooms' ? 'room' : 'object', key: object.id })}
            >
              {nameText(objectNoun(file, object.id))}
            </button>
          </li>
        ))}
      </ul>
      {rest > 0 && <p className="small quiet">and {rest} more</p>}
    </Fold>
  );
}

interface Deed<Value> {
  readonly words: string;
  /** As it is heard alone. */
  readonly name: string;
  readonly value: Value;
}

const aligns: readonly Deed<AlignSide>[] = [
  { words: 'Left', name: 'Align left sides', value: 'left' },
  { words: 'Middle', name: 'Align middles on an upright line', value: 'middle-x' },
  { words: 'Right', name: 'Align right sides', value: 'right' },
  { words: 'Top', name: 'Align top sides', value: 'top' },
  { words: 'Middle', name: 'Align middles on a level line', value: 'middle-y' },
  { words: 'Bottom', name: 'Align bottom sides', value: 'bottom' },
];

const distributes: readonly Deed<'x' | 'y'>[] = [
  { words: 'Across', name: 'Distribute across', value: 'x' },
  { words: 'Down', name: 'Distribute down', value: 'y' },
];

/** Fewer have nothing between them to space. */
const leastDistributed = 3;

function Arrange({ count }: { readonly count: number }) {
  return (
    <>
      <Deeds heading="Align" deeds={aligns} onAct={chosenAlign} />
      {count >= leastDistributed && <Deeds heading="Distribute" deeds={distributes} onAct={chosenDistribute} />}
    </>
  );
}

interface DeedsProps<Value> {
  readonly heading: string;
  readonly deeds: readonly Deed<Value>[];
  readonly onAct: (value: Value) => void;
}

function Deeds<Value extends string>({ heading, deeds, onAct }: DeedsProps<Value>) {
  return (
    <fieldset className="arrange">
      <legend>{heading}</legend>
      {deeds.map(({ words, name, value }) => (
        <button
          key={value}
          type="button"
          className="button framed"
          aria-label={name}
          title={name}
          onClick={() => onAct(value)}
        >
          {words}
        </button>
      ))}
    </fieldset>
  );
}

const mixed = 'mixed';

/** What rooms share, or that they do not. */
function RoomsTogether({ file, ids }: { readonly file: PlanFile; readonly ids: readonly string[] }) {
  const rooms = useMemo(() => {
    const wanted = new Set(ids);
    return planResolve({ ...file, rooms: file.rooms.filter(({ id }) => wanted.has(id)) }).rooms;
  }, [file, ids]);
  const of = `${ids.length} rooms`;
  return (
    <>
      <SharedChoice
        label="Heated"
        value={shared(rooms, (room) => (room.heated ? 'yes' : 'no'))}
        choices={[
          { value: 'yes', words: 'Yes' },
          { value: 'no', words: 'No' },
        ]}
        onChange={(next) =>
          commit(next === 'yes' ? `Heat ${of}` : `No heating in ${of}`, (plan) =>
            planRoomsChanged(plan, ids, { heated: next === 'yes' ? undefined : false }),
          )
        }
      />
      <TextField
        label="Heating zone"
        value={shared(rooms, (room) => room.zone ?? '') ?? ''}
        placeholder={shared(rooms, (room) => room.zone ?? '') === null ? 'not the same' : 'none'}
        suggestions={zonesOf(file)}
        onChange={(next) =>
          commit(next === '' ? `No heating zone for ${of}` : `Heating zone ${next} for ${of}`, (plan) =>
            planRoomsChanged(plan, ids, { zone: next === '' ? undefined : next }),
          )
        }
      />
      <SharedChoice
        label="Covering"
        value={shared(rooms, (room) => room.covering)}
        choices={(Object.keys(coveringWords) as Covering[]).map((value) => ({ value, words: coveringWords[value] }))}
        onChange={(next) =>
          commit(`${of} ${coveringWords[next].toLowerCase()}`, (plan) => planCoveringLaid(plan, ids, next))
        }
      />
    </>
  );
}

/** What all of them have; null where they differ. */
function shared<Value>(rooms: readonly Room[], pick: (room: Room) => Value): Value | null {
  const [first, ...others] = new Set(rooms.map(pick));
  return first === undefined || others.length > 0 ? null : first;
}

interface SharedChoiceProps<Value extends string> {
  readonly label: string;
  readonly value: Value | null;
  readonly choices: readonly Choice<Value>[];
  readonly onChange: (value: Value) => void;
}

function SharedChoice<Value extends string>({ label, value, choices, onChange }: SharedChoiceProps<Value>) {
  const all: readonly Choice<Value | typeof mixed>[] =
    value === null ? [{ value: mixed, words: 'Not the same' }, ...choices] : choices;
  return (
    <ChoiceField<Value | typeof mixed>
      label={label}
      value={value ?? mixed}
      choices={all}
      onChange={(next) => {
        const chosen = choices.find((choice) => choice.value === next);
        if (chosen !== undefined) onChange(chosen.value);
      }}
    />
  );
}

function JointsTogether({ things, result }: Pick<ManyCardProps, 'things' | 'result'>) {
  const joints = (result?.analysis.joints ?? []).filter(
    (joint) => jointIsFound(joint) && things.some((thing) => thingEquals(thing, jointThing(joint))),
  );
  if (joints.length === 0) return null;
  return (
    <div className="deeds">
      <button type="button" className="button framed" onClick={() => jointsKeep(joints)}>
        Keep {countOf(joints.length, 'joint', 'joints')}
      </button>
      <button type="button" className="button framed" onClick={() => jointsTakeAway(joints)}>
        Take {joints.length === 1 ? 'it' : 'them'} away
      </button>
    </div>
  );
}
