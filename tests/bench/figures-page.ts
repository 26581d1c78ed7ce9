import type { DragFigures } from './drag.ts';
import type { HostileRow } from './hostile.ts';
import type { LeastJointRow } from './least-joint.ts';
import type { PanFigures } from './pan.ts';
import type { PapersRow } from './papers.ts';
import type { PlacementRow } from './placement.ts';
import type { SpeedResult } from './speed.ts';
import type { TilesRow } from './tiles.ts';

/** The results as tables, for the screen and for docs/figures.md. */

export interface Figures {
  readonly leastJoint?: readonly LeastJointRow[];
  readonly turned?: readonly PlacementRow[];
  readonly shaken?: readonly PlacementRow[];
  readonly speed?: SpeedResult;
  readonly hostile?: readonly HostileRow[];
  readonly drag?: DragFigures;
  readonly tiles?: readonly TilesRow[];
  readonly papers?: readonly PapersRow[];
  readonly pan?: readonly PanFigures[];
}

/** The first few, and how many more. */
function listed(keys: readonly string[]): string {
  if (keys.length === 0) return 'none';
  const more = keys.length > 3 ? ` and ${keys.length - 3} more` : '';
  return `${keys.slice(0, 3).join('; ')}${more}`;
}
const percent = (share: number) => `${(share * 100).toFixed(2)} %`;

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

export function figuresPage(figures: Figures): string {
  return [
    '# Figures',
    'Written by `npm run bench -- --write`; not edited by hand. Random floors are named by limits, core and seed.',
    ...leastJointPart(figures.leastJoint),
    ...placementPart(figures),
    ...speedPart(figures.speed),
    ...tilesPart(figures.tiles),
    ...papersPart(figures.papers),
    ...dragPart(figures.drag),
    ...panPart(figures.pan),
    ...hostilePart(figures.hostile),
  ].join('\n\n');
}

function papersPart(rows: readonly PapersRow[] | undefined): string[] {
  if (rows === undefined) return [];
  const cells = ({ name, analysisMs, papersMs, files, megabytes, slowest }: PapersRow) => [
    name,
    `${(analysisMs / 1000).toFixed(2)} s`,
    `${(papersMs / 1000).toFixed(2)} s`,
    (papersMs / analysisMs).toFixed(1),
    String(files),
    `${megabytes.toFixed(1)} MB`,
    slowest,
  ];
  return [
    '## Papers',
    'All papers of a floor, made one after the other from a cold start, beside its first analysis in the same run. Target: those of 1,000 rooms in under 10 s.',
    table(['floor', 'analysis', 'papers', 'papers over analysis', 'files', 'size', 'slowest'], rows.map(cells)),
  ];
}

function tilesPart(rows: readonly TilesRow[] | undefined): string[] {
  if (rows === undefined) return [];
  const cells = ({ name, tile, ways, layMs, waysMs }: TilesRow) => {
    const of = (way: string) => ways.find((each) => each.way === way);
    const share = (way: string) => {
      const found = of(way)?.onGroutShare ?? null;
      return found === null ? '-' : `${(found * 100).toFixed(0)} %`;
    };
    const joints = (way: string) => (of(way)?.price.jointM ?? 0).toFixed(1);
    const cuts = (way: string) => `${of(way)?.price.cutTiles} / ${of(way)?.price.slivers}`;
    return [
      name,
      tile,
      `${joints('as-is')} m`,
      share('as-is'),
      `${share('joints')}, ${joints('joints')} m`,
      share('set-out'),
      `${share('both')}, ${joints('both')} m`,
      cuts('as-is'),
      cuts('both'),
      `${layMs.toFixed(1)} ms`,
      `${(waysMs / 1000).toFixed(1)} s`,
    ];
  };
  return [
    '## Joints and tiles',
    'Share of the length of intermediate joints that lies on grout lines, as it is and by each way to bring joints and tiles together, with the length of joint that it takes. Real floors are given square tiles along their main walls, set out from the corner of the sheet; westport and duplex floors are as irregular as houses are. Target: at least 95 % where the tile module allows the limits. Laying: all tile fields on the floor as split, median of 15 (target: under 50 ms for a dwelling).',
    table(
      [
        'floor',
        'tile, mm',
        'joints',
        'on grout as it is',
        'joints moved',
        'set-out moved',
        'both moved',
        'cut / slivers as it is',
        'both moved',
        'laying',
        'all ways',
      ],
      rows.map(cells),
    ),
  ];
}

function dragPart(drag: DragFigures | undefined): string[] {
  if (drag === undefined) return [];
  const row = (name: string, values: readonly number[], targets: string) => [name, ...spread(values), targets];
  return [
    '## A corner under the hand',
    `A corner of the largest room of the library (${drag.floorM2.toFixed(0)} m2) is dragged for 6 s with a move every 16 ms while the analysis follows, in headless Chromium without a graphics card, 1440 x 900. Work is the processor time of the page's own thread from one frame to the next; its tasks also wait for the compositor, which has no graphics card here, and for one of two processors. ${drag.results} results of the analysis came meanwhile.`,
    table(
      ['', 'median', '95 %', 'most', 'frames', 'targets'],
      [
        row('from frame to frame', drag.intervalsMs, 'median at most 17 ms, 95 % at most 34 ms'),
        row('work in a frame', drag.workMs, 'median at most 8 ms'),
        row('tasks in a frame, waits included', drag.tasksMs, '-'),
      ],
    ),
  ];
}

/** Median, 95 % and most of some times, and how many there are. */
function spread(values: readonly number[]): string[] {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => `${(sorted[Math.floor((sorted.length - 1) * share)] ?? Number.NaN).toFixed(1)} ms`;
  return [at(0.5), at(0.95), at(1), String(values.length)];
}

function panPart(pan: readonly PanFigures[] | undefined): string[] {
  if (pan === undefined) return [];
  return [
    '## Tiles panned',
    'The hall of 10,000 m2 with its tiles is panned for 4 s with a move every 16 ms, on the same screen. Whole: all of it in view; near: zoomed in four steps. Target: 60 frames a second, median from frame to frame at most 17 ms.',
    table(
      ['bond, tiles, view', 'frame to frame', '95 %', 'most', 'frames', 'work in a frame', '95 %', 'most'],
      pan.map(({ bond, tiles, view, intervalsMs, workMs }) => [
        `${bond}, ${(Math.round(tiles / 100) * 100).toLocaleString('en')}, ${view}`,
        ...spread(intervalsMs),
        ...spread(workMs).slice(0, 3),
      ]),
    ),
  ];
}

function leastJointPart(rows: readonly LeastJointRow[] | undefined): string[] {
  if (rows === undefined) return [];
  return [
    '## Least joint',
    'Length of field and neck joints over the best layout of a lattice of at most 0.5 m (set partition, solved by a general solver; anything better counts as 1). Random rectilinear floors of 4 to 16 corners, pockets and cores of 50 mm refused, no necks. Targets: mean at most 1.005, worst at most 1.04, no bay over a limit where the reference has a layout within them.',
    table(
      [
        'limits',
        'floors',
        'proven references',
        'mean',
        'worst',
        'worst floor',
        'bay over a limit',
        'refused by the checker',
      ],
      rows.map((r) => [
        r.name,
        String(r.floors),
        String(r.proven),
        r.mean.toFixed(4),
        r.worst.toFixed(4),
        r.worstFloor,
        listed(r.over),
        listed(r.wrong),
      ]),
    ),
  ];
}

function placementPart({ turned, shaken }: Figures): string[] {
  const rows = [...(turned ?? []), ...(shaken ?? [])];
  if (rows.length === 0) return [];
  return [
    '## The same floor elsewhere',
    'Change of joint length. Shaken corners: every limit raised by 1 % in both runs.',
    table(
      ['floor', 'runs', 'mean', 'worst', 'target under', 'runs over it', 'worst floor'],
      rows.map((r) => [
        r.name,
        String(r.runs),
        percent(r.mean),
        percent(r.worst),
        percent(r.limit),
        String(r.overLimit),
        r.worstFloor,
      ]),
    ),
  ];
}

function speedPart(speed: SpeedResult | undefined): string[] {
  if (speed === undefined) return [];
  return [
    '## Speed',
    `One analysis, warm, by an analyser that remembers nothing; median. The calibration loop took ${speed.calibrationMs.toFixed(1)} ms.`,
    table(
      ['plan', 'median', 'target under', 'fastest', 'runs', 'median over the calibration loop', 'peak memory'],
      speed.rows.map((r) => [
        r.name,
        `${r.medianMs.toFixed(1)} ms`,
        r.targetMs === null ? '-' : `${r.targetMs} ms`,
        `${r.fastestMs.toFixed(1)} ms`,
        String(r.runs),
        r.ratio.toFixed(2),
        `${r.peakMb.toFixed(0)} MB`,
      ]),
    ),
    table(
      ['rooms', ...speed.growthRows.map((r) => r.rooms.toLocaleString('en'))],
      [['median', ...speed.growthRows.map((r) => `${r.medianMs.toFixed(0)} ms`)]],
    ),
    `Time grows as rooms^${speed.growth.toFixed(2)} (target: no faster than 1.2). Peak memory: resident, of a process of its own that analyses the plan five times, the program itself included (target: under 300 MB).`,
  ];
}

function hostilePart(rows: readonly HostileRow[] | undefined): string[] {
  if (rows === undefined) return [];
  return [
    '## Input that no floor needs',
    'Reading and analysis together, cold. Target: within 5 s.',
    table(
      ['input', 'time', 'outcome'],
      rows.map((r) => [r.name, `${r.seconds.toFixed(1)} s`, r.outcome]),
    ),
  ];
}
