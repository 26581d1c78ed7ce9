import { oneLine } from '../../documents/words.ts';
import { pointDistance } from '../../geometry/point.ts';
import {
  type DoorwayWall,
  doorwayDepthSet,
  doorwayPlace,
  doorwaySlid,
  doorwayWidened,
} from '../../plan/edits/doorways.ts';
import { objectChanged } from '../../plan/edits/objects.ts';
import type { DoorwayPlace } from '../../plan/edits/wall-places.ts';
import type { Doorway } from '../../plan/plan.ts';
import { doorwayWidthsMm } from '../../plan/reference.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { coordinateSnapped } from '../../plan/snap.ts';
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { nameText } from '../parts/format.ts';
import { TickField } from '../parts/TickField.tsx';
import { commit } from '../state/planStore.ts';
import { wallsKnown } from '../tools/walls.ts';
import { FieldPair, LengthField } from './LengthField.tsx';
import { useLengthWords } from './length-words.ts';
import type { Tried } from './put.ts';

interface DoorwayFieldsProps {
  readonly file: PlanFile;
  readonly doorway: Doorway;
  /** What undo calls it: "doorway d1". */
  readonly of: string;
}

/** A doorway: its width and leaf, and where it stands in its wall. */
export function DoorwayFields({ file, doorway, of }: DoorwayFieldsProps) {
  const { id, line, wallMm, leaf } = doorway;
  const place = doorwayPlace(wallsKnown(file), doorway);
  const widthMm = coordinateSnapped(pointDistance(line[0], line[1]));
  return (
    <>
      <Joins file={file} place={place} />
      <FieldPair>
        <UsualWidth id={id} of={of} widthMm={widthMm} />
        <LengthField label="Width" of={of} valueMm={widthMm} edit={(plan, mm) => widened(plan, id, mm)} />
      </FieldPair>
      <FieldPair>
        <LengthField
          label="Depth of opening"
          name="Depth of the opening"
          of={of}
          valueMm={wallMm}
          leastMm={0}
          edit={(plan, mm) => objectChanged(plan, id, { wallMm: mm })}
        />
        <TickField
          label="Door leaf"
          value={leaf}
          onChange={(next) =>
            commit(next ? `Door leaf in ${of}` : `No door leaf in ${of}`, (plan) =>
              objectChanged(plan, id, { leaf: next ? undefined : false }),
            )
          }
        />
      </FieldPair>
      {place !== null && <PlaceInWall {...{ file, id, of, place }} />}
    </>
  );
}

function roomName(file: PlanFile, id: string): string {
  const name = oneLine(file.rooms.find((room) => room.id === id)?.name ?? '');
  return nameText(name === '' ? id : name);
}

function Joins({ file, place }: { readonly file: PlanFile; readonly place: DoorwayPlace | null }) {
  if (place === null) return <p>Stands in no wall between two rooms. Drag it into one.</p>;
  const [one, other] = place.wall.faces.map(({ roomId }) => roomName(file, roomId));
  return <p>{one === other ? `In a wall within ${one}` : `Joins ${one} and ${other}`}</p>;
}

const otherWidth = 'other';

function UsualWidth({ id, of, widthMm }: { readonly id: string; readonly of: string; readonly widthMm: number }) {
  const write = useLengthWords();
  const isUsual = doorwayWidthsMm.includes(widthMm);
  const usual = doorwayWidthsMm.map((mm) => ({ value: String(mm), words: write(mm) }));
  return (
    <ChoiceField
      label="Usual width"
      wide
      value={isUsual ? String(widthMm) : otherWidth}
      choices={isUsual ? usual : [{ value: otherWidth, words: 'Another' }, ...usual]}
      onChange={(value) => {
        if (value === otherWidth) return;
        commit(`Width of ${of} ${write(Number(value))}`, (plan) => doorwayWidened(plan, id, Number(value)));
      }}
    />
  );
}

function widened(file: PlanFile, id: string, widthMm: number): Tried {
  const after = doorwayWidened(file, id, widthMm);
  const doorway = file.doorways?.find((each) => each.id === id);
  if (after !== file || doorway === undefined) return after;
  const place = doorwayPlace(wallsKnown(file), doorway);
  return place !== null && widthMm > place.wall.lengthMm ? 'The wall is too short for this width.' : file;
}

interface PlaceInWallProps {
  readonly file: PlanFile;
  readonly id: string;
  readonly of: string;
  readonly place: DoorwayPlace;
}

/** How far the jambs stand from the ends of the wall, and where in its depth the line of the leaf lies. */
function PlaceInWall({ file, id, of, place }: PlaceInWallProps) {
  const { wall, startMm, endMm, widthMm, depthMm } = place;
  const mostMm = Math.max(0, coordinateSnapped(wall.lengthMm - widthMm));
  return (
    <>
      <FieldPair>
        {endsOf(wall).map(({ words, end }) => {
          const valueMm = coordinateSnapped(end === 'start' ? startMm : endMm);
          return (
            <LengthField
              key={end}
              label={`Wall ${words}`}
              of={of}
              valueMm={valueMm}
              leastMm={Math.min(0, valueMm)}
              mostMm={mostMm}
              edit={(plan, mm) => slid(plan, id, end, mm)}
            />
          );
        })}
      </FieldPair>
      <LengthField
        label={`Line of the leaf from ${roomName(file, wall.faces[0].roomId)}`}
        name={`Line of the leaf from the face of ${roomName(file, wall.faces[0].roomId)}`}
        of={of}
        valueMm={coordinateSnapped(depthMm)}
        leastMm={Math.min(0, coordinateSnapped(depthMm))}
        mostMm={Math.max(coordinateSnapped(wall.depthMm), coordinateSnapped(depthMm))}
        edit={(plan, mm) => doorwayDepthSet(plan, id, mm)}
      />
    </>
  );
}

type WallEnd = 'start' | 'end';

/** Slides the doorway until so much wall is left between it and an end. */
function slid(file: PlanFile, id: string, end: WallEnd, leftMm: number): Tried {
  const doorway = file.doorways?.find((each) => each.id === id);
  const place = doorway === undefined ? null : doorwayPlace(wallsKnown(file), doorway);
  if (place === null) return 'It stands in no wall.';
  const fromEndMm = leftMm + place.widthMm / 2;
  return doorwaySlid(file, id, end === 'start' ? fromEndMm : place.wall.lengthMm - fromEndMm);
}

/** The ends of a wall as they lie on the sheet: the left or upper one first. */
function endsOf({ faces: [{ from, to }] }: DoorwayWall): readonly { readonly words: string; readonly end: WallEnd }[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const isLevel = Math.abs(dx) >= Math.abs(dy);
  const [first, last] = isLevel ? ['on its left', 'on its right'] : ['above it', 'below it'];
  const ends: readonly WallEnd[] = (isLevel ? dx : dy) > 0 ? ['start', 'end'] : ['end', 'start'];
  return ends.map((end, i) => ({ words: (i === 0 ? first : last) ?? '', end }));
}
