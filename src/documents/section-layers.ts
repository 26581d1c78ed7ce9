import { layersMakeUp, orderingOf } from '../plan/papers.ts';
import type { BuildUp, Covering, Room } from '../plan/plan.ts';
import { defaults } from '../plan/reference.ts';
import type { PlanFile } from '../plan/schema.ts';
import type { PaperSource } from './paper-source.ts';
import type { FillStyleName } from './styles.ts';
import { wholeMmText } from './tile-words.ts';
import { figureText } from './words.ts';

/** What lies under a floor, from the covering down. */
export interface FloorLayers {
  readonly rooms: readonly Room[];
  readonly covering: Covering;
  readonly heated: boolean;
  /** How far its finished floor lies below that from which heights are measured. */
  readonly topMm: number;
  readonly layers: readonly FloorLayer[];
}

export interface FloorLayer {
  readonly part: 'covering' | 'adhesive' | 'screed' | 'insulation' | 'slab';
  /** As it is drawn: of what is not entered a usual thickness. */
  readonly drawnMm: number;
  readonly isEntered: boolean;
  /** Such as "62 mm screed CT-C25-F5". */
  readonly words: string;
  readonly fill: FillStyleName;
}

/** How much of the slab is shown. */
const slabShownMm = 30;

export const coveringNames: Readonly<Record<Covering, string>> = {
  'stone-or-ceramic': 'stone or ceramic',
  resilient: 'resilient covering',
  timber: 'timber covering',
  textile: 'textile covering',
  none: 'no covering',
};

/** The different floors of a plan, each with the rooms that have it, in the order of the rooms. */
export function floorLayers(source: PaperSource): readonly FloorLayers[] {
  const { plan, file } = source;
  const files = new Map(file.rooms.map((room) => [room.id, room]));
  const floors = new Map<string, FloorLayers>();
  for (const room of plan.rooms) {
    const layers = layersOf(source, room, files.get(room.id));
    const { covering, heated } = room;
    const key = [covering, heated, ...layers.map(({ words }) => words)].join('\n');
    const floor = floors.get(key) ?? { rooms: [], covering, heated, topMm: 0, layers };
    floors.set(key, { ...floor, rooms: [...floor.rooms, room] });
  }
  return [...floors.values()];
}

type RoomFile = PlanFile['rooms'][number];

function layersOf({ file, plan }: PaperSource, room: Room, roomFile: RoomFile | undefined): readonly FloorLayer[] {
  const entered = (field: keyof BuildUp) => roomFile?.buildUp?.[field] ?? file.buildUp?.[field] ?? null;
  const { class: screedClass, thicknessMm } = plan.screed;
  const screed = `screed ${screedClass}`;
  const covered: readonly FloorLayer[] =
    room.covering === 'none'
      ? []
      : [
          layer('covering', coveringNames[room.covering], entered('coveringMm'), defaults.coveringMm.value),
          layer('adhesive', 'adhesive or bedding', entered('adhesiveMm'), defaults.adhesiveMm.value),
        ];
  return [
    ...covered.filter(({ drawnMm }) => drawnMm > 0),
    file.screed?.thicknessMm === undefined
      ? {
          ...layer('screed', screed, null, thicknessMm),
          words: `${screed}, not entered: ${wholeMmText(thicknessMm)} taken`,
        }
      : layer('screed', screed, thicknessMm, thicknessMm),
    ...insulationLayers(file, entered('insulationMm')),
    {
      part: 'slab',
      drawnMm: slabShownMm,
      isEntered: false,
      words: 'slab, by the structural engineer',
      fill: 'section-slab',
    },
  ];
}

/** From the top down; one where the layers of the order do not make up what is entered. */
function insulationLayers(file: PlanFile, insulationMm: number | null): readonly FloorLayer[] {
  if (insulationMm === 0) return [];
  const ordered = orderingOf(file).insulationLayersMm;
  if (ordered.length < 2 || insulationMm === null || !layersMakeUp(ordered, insulationMm))
    return [layer('insulation', 'insulation', insulationMm, defaults.insulationMm.value)];
  return ordered.map((mm, i) => layer('insulation', `insulation, layer ${i + 1} from the slab`, mm, mm)).reverse();
}

function layer(part: FloorLayer['part'], name: string, mm: number | null, usualMm: number): FloorLayer {
  const words = mm === null ? `${name}, thickness not entered` : `${thicknessText(mm)} ${name}`;
  return { part, drawnMm: mm ?? usualMm, isEntered: mm !== null, words, fill: `section-${part}` };
}

export function thicknessText(mm: number): string {
  return `${figureText(mm, Number.isInteger(mm) ? 0 : 1)}\u00a0mm`;
}

export function floorLowered(floor: FloorLayers, byMm: number): FloorLayers {
  return { ...floor, topMm: floor.topMm + byMm };
}

/** From the top of the finished floor to where the slab is cut off. */
export function floorMm({ layers }: FloorLayers): number {
  return layers.reduce((sum, { drawnMm }) => sum + drawnMm, 0);
}

/** Depth of the top of a layer, mm; of the slab where there is no such layer. */
export function layerTop({ topMm, layers }: FloorLayers, part: FloorLayer['part']): number {
  let top = topMm;
  for (const each of layers) {
    if (each.part === part || each.part === 'slab') return top;
    top += each.drawnMm;
  }
  return top;
}

export function layerDepth({ layers }: FloorLayers, part: FloorLayer['part']): number {
  return layers.filter((each) => each.part === part).reduce((sum, { drawnMm }) => sum + drawnMm, 0);
}
