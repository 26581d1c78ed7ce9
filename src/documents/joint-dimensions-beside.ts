import { type Point, pointDirection } from '../geometry/point.ts';
import { doorwayPlaces } from './doorway-places.ts';
import type { DrawingItem, LabelForm, LabelItem } from './drawing.ts';
import type { Strings } from './joint-dimensions-outside.ts';
import { besideWords, doorwayWords } from './joint-dimensions-words.ts';
import { lineAt, lineLength } from './label-seats.ts';
import type { PaperSource } from './paper-source.ts';
import { isInWall, type JointSetting } from './setting-out.ts';
import type { SetOutFrame } from './setting-out-frame.ts';
import { figureText } from './words.ts';

/** Figures beside joints that no string of running dimensions reaches. */

/** Behind the names of joints, before those of bays. */
const besidePriority = 2.95e6;

export interface BesideLabels {
  readonly labels: readonly LabelItem[];
  /** Those that figures are measured in. */
  readonly frames: ReadonlySet<SetOutFrame>;
}

/** Of joints that no thin line joins to a figure: one for each line of joints, at its longest; of a joint in a doorway its distance from a face of the wall
 *  that it stands in. */
export function besideLabels(
  source: PaperSource,
  settings: readonly JointSetting[],
  { joined, onString }: Strings,
): BesideLabels {
  const lines = new Map<string, { readonly setting: JointSetting; readonly words: string }>();
  const labels: LabelItem[] = [];
  const frames = new Set<SetOutFrame>();
  const faces = doorwayWords(settings.some(isInWall) ? doorwayPlaces(source) : []);
  for (const setting of settings) {
    const { frame, joint } = setting;
    if (frame === null || joined.has(setting)) continue;
    const fromFace = isInWall(setting) ? faces.get(joint.id) : undefined;
    const words = fromFace ?? besideWords(setting);
    if (fromFace === undefined) frames.add(frame);
    if (words === null) {
      labels.push(...endLabels(setting));
      continue;
    }
    // doors in one line are apart, and each is read by itself
    const key = `${joint.kind === 'doorway' ? joint.id : joint.run} ${words}`;
    const known = lines.get(key);
    if (known === undefined || known.setting.joint.lengthM < joint.lengthM) lines.set(key, { setting, words });
  }
  const beside = [...lines.values()].map(({ setting, words }) => besideLabel(setting, words, onString));
  return { labels: [...labels, ...beside], frames };
}

/** A leader to a joint begins at one of these shares of its length. */
const leaderShares = [0.5, 0.2, 0.8];

function leaderPoints(line: readonly Point[]): readonly Point[] {
  const lengthMm = lineLength(line);
  return leaderShares.map((share) => lineAt(line, share * lengthMm).point);
}

/** The figure and, where its own line is too short for it, in small. Its name is said again: beside a door the figures of the next one may stand as near. */
function besideLabel(setting: JointSetting, words: string, onString: ReadonlySet<JointSetting>): LabelItem {
  const { joint } = setting;
  const inOpening = joint.kind === 'doorway' || joint.kind === 'neck';
  const text = `${joint.id} ${words}`;
  return {
    shape: 'label',
    layer: 'labels',
    ref: { kind: 'joint', id: joint.id },
    seat: { kind: 'beside', line: joint.line, inOpening },
    forms: [[{ text, style: `joint-${joint.kind}` }], small(text)],
    led: { from: leaderPoints(joint.line), forms: smallForms(joint.id, words), fromName: true },
    priority: besidePriority + joint.lengthM,
    ...(onString.has(setting) && { saidAgain: true }),
  };
}

function small(...lines: readonly string[]): LabelForm {
  return lines.map((text) => ({ text, style: 'figure-small' }));
}

/** In one line, and broken in two, the figure in one piece. Examples: "J12 111" over "from each face", "J7 x 120" over "y 450", "J7" over "x 120 / 122" */
function smallForms(id: string, words: string): readonly LabelForm[] {
  const text = `${id} ${words}`;
  const at = Math.max(words.indexOf(' from '), words.indexOf(' y '));
  const lines = at < 0 ? [id, words] : [`${id} ${words.slice(0, at)}`, words.slice(at + 1)];
  return [small(text), small(...lines)];
}

/** x and y of both ends and of every bend, each at a leader whose dot is that place and no other: beside the joint they would be read as those of its
 *  nearer end, or of the next joint. Their seat is the place itself, where the joint leaves room for no text. */
function endLabels({ joint, points, places }: JointSetting): readonly LabelItem[] {
  return places.map((place, i): LabelItem => {
    const [x, y] = (points[i] ?? [0, 0]) as Point;
    const forms = smallForms(joint.id, `x ${figureText(x, 0)} y ${figureText(y, 0)}`);
    const along = [places[i - 1], places[i + 1]].flatMap((next) => (next ? [pointDirection(place, next)] : []));
    return {
      shape: 'label',
      layer: 'labels',
      ref: { kind: 'joint', id: joint.id },
      seat: { kind: 'beside', line: joint.line, inOpening: true, places: [{ at: place, direction: [1, 0] }] },
      forms: forms.slice(0, 1),
      led: { from: [place], along, forms },
      priority: besidePriority + joint.lengthM,
    };
  });
}

/** Names of joints and bays as they stand further off where they find no room in their place: whatever is in the lists is found on the drawing. */
export function namesLed(items: readonly DrawingItem[]): readonly DrawingItem[] {
  return items.map((item) => {
    if (item.shape !== 'label' || (item.ref.kind !== 'joint' && item.ref.kind !== 'bay')) return item;
    const from = item.seat.kind === 'beside' ? leaderPoints(item.seat.line) : [item.seat.at];
    return { ...item, led: { from, forms: [small(item.ref.id)] } };
  });
}
