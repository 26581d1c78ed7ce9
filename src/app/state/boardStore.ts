import { createStore } from 'zustand/vanilla';
import type { Theme } from '../../documents/styles.ts';
import type { SizePx, Viewport } from '../canvas/viewport.ts';
import { planStore } from './planStore.ts';
import { type Thing, thingEquals } from './thing.ts';

/** The steps of the work, in its order. */
export const workSteps = ['floor', 'openings', 'obstacles', 'joints', 'coverings', 'papers'] as const;
export type WorkStep = (typeof workSteps)[number];

/** A word to the user: what a change did, which goes away by itself; what to know of the sheet, or why a file was not
 *  opened, which stay until they are put away. */
export interface Notice {
  readonly tone: 'told' | 'noted' | 'refused';
  readonly text: string;
  readonly details: readonly NoticeDetail[];
  /** What came of a change stands in it already. */
  readonly more?: true;
}

export interface NoticeDetail {
  /** Such as `rooms[2].outline[5]`; empty where it is about the whole. */
  readonly at: string;
  readonly says: string;
}

/** The passing state: what is looked at and pointed at. Nothing here is saved or undone. */
export interface BoardState {
  /** What is chosen, in the order of choosing. */
  readonly chosen: readonly Thing[];
  /** The findings under a pin that was pressed and stands for several: listed beside it until one is chosen. */
  readonly opened: readonly Thing[];
  readonly hovered: Thing | null;
  /** Null until the board has a size and a drawing to fit. */
  readonly view: Viewport | null;
  /** Whether the view is the user's own: not moved since, a fitted drawing is fitted again to a board of another size. */
  readonly moved: boolean;
  readonly size: SizePx | null;
  readonly step: WorkStep;
  readonly trayOpen: boolean;
  readonly findingsOpen: boolean;
  readonly keyOpen: boolean;
  readonly theme: Theme;
  readonly notice: Notice | null;
  readonly tilesShown: boolean;
  /** Which narrow cuts of tiles are lit. */
  readonly cutsLit: CutsLit | null;
}

export interface CutsLit {
  /** Under half a tile, or slivers. */
  readonly cuts: 'half' | 'sliver';
  /** Of a tile field by its id, of the tiles of the floor (null), or of all. */
  readonly of: string | null | undefined;
}

/** At most this wide, the tray slides over the board and starts folded, as the styles have it. */
const slideOverPx = 900;
/** So much of the board it takes then. */
const slidPx = 360;

export const boardStore = createStore<BoardState>(() => ({
  chosen: [],
  opened: [],
  hovered: null,
  view: null,
  moved: false,
  size: null,
  step: 'joints',
  trayOpen: window.innerWidth > slideOverPx,
  findingsOpen: true,
  keyOpen: false,
  theme: 'light',
  notice: null,
  tilesShown: true,
  cutsLit: null,
}));

export function boardHover(thing: Thing | null): void {
  if (!thingEquals(boardStore.getState().hovered, thing)) boardStore.setState({ hovered: thing });
}

/** Lets go of what is chosen and of the pin that is open. */
export function boardLetGo(): void {
  boardStore.setState({ chosen: [], opened: [] });
}

/** Opens the tray at a step of the work; folds it where it stands open there. */
export function boardStep(step: WorkStep): void {
  const { step: present, trayOpen } = boardStore.getState();
  boardStore.setState({ step, trayOpen: !(trayOpen && present === step) });
}

export function boardTell(text: string): void {
  boardStore.setState({ notice: { tone: 'told', text, details: [] } });
}

export function boardNote(text: string): void {
  boardStore.setState({ notice: { tone: 'noted', text, details: [] } });
}

/** What was told of the step before goes with the next one, and so does why that was not done: what is wrong with a file stays. */
export function noticesFollow(): void {
  planStore.subscribe((state, before) => {
    const { notice } = boardStore.getState();
    const isPast = notice?.tone === 'told' || (notice?.tone === 'refused' && notice.details.length === 0);
    if (isPast && state.history !== before.history) boardStore.setState({ notice: null });
  });
}

/** Adds to what was told a moment ago, such as what came of it. */
export function boardTellMore(text: string): void {
  const { notice } = boardStore.getState();
  const before = notice?.tone === 'told' && notice.more !== true ? `${notice.text} ` : '';
  if (notice?.tone === 'refused') return;
  boardStore.setState({ notice: { tone: 'told', text: before + text, details: [], more: true } });
}

export function boardRefuse(text: string, details: readonly NoticeDetail[]): void {
  boardStore.setState({ notice: { tone: 'refused', text, details } });
}

export function errorWords(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** The board as far as no tray lies over it; null until it has a size. */
export function boardFree({ size, trayOpen }: Pick<BoardState, 'size' | 'trayOpen'>): SizePx | null {
  if (size === null || !trayOpen || window.innerWidth > slideOverPx) return size;
  return { ...size, widthPx: Math.max(size.widthPx - slidPx, size.widthPx / 2) };
}
