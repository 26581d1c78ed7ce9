import {
  type CSSProperties,
  type KeyboardEvent,
  memo,
  useDeferredValue,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { Box } from '../../geometry/ring.ts';
import { boardFree, boardHover, boardRefuse, boardStore } from '../state/boardStore.ts';
import { cardEnter } from '../state/cardEnter.ts';
import { useBoard, usePlan } from '../state/hooks.ts';
import { type Thing, thingEquals } from '../state/thing.ts';
import { toolPutDown } from '../tools/hand.ts';
import { toolStore } from '../tools/toolStore.ts';
import { boardKey } from './boardKeys.ts';
import { boardReveal } from './boardView.ts';
import type { BoardDrawing } from './drawing.ts';
import { type ReadThing, readingName, readingOf } from './reading.ts';
import { footId } from './surface.ts';
import { viewportBoxToScreen } from './viewport.ts';

/** The things of the plan as stops of the Tab key, in the order in which a drawing is read. Each is a button that nobody
 *  sees until it has the focus; then it lies round its thing on the board, and its ring with it. Of a large plan only the
 *  first, the last and those beside the focus are in the page: going on from one brings the next. */
export function Objects({ drawing }: { readonly drawing: BoardDrawing }) {
  const [at, setAt] = useState<string | null>(null);
  const list = useRef<HTMLUListElement>(null);
  const reads = useReading(list);
  const chosen = useBoard((state) => state.chosen);
  const index = at === null ? -1 : reads.findIndex(({ thing }) => thing.key === at);
  useFocusKept(list, reads, at);
  if (reads.length === 0) return null;
  return (
    <ul
      ref={list}
      className="things"
      aria-label="Things of the plan"
      onKeyDown={(event) => thingKey(event, reads[index] ?? null, drawing)}
      onBlur={() => boardHover(null)}
    >
      <li>
        <a href={`#${footId}`} className="button framed skip" onClick={skip} onFocus={() => boardHover(null)}>
          Past the things of the plan
        </a>
      </li>
      {stopsOf(reads.length, index).map((i) => {
        const read = reads[i];
        if (read === undefined) return null;
        return (
          <Stop
            key={read.thing.key}
            read={read}
            place={i + 1}
            of={reads.length}
            chosen={chosen.some((each) => thingEquals(each, read.thing))}
            onAt={setAt}
          />
        );
      })}
    </ul>
  );
}

/** In the page are so many from either end, and so many on either side of the focus. */
const atEnds = 8;
const beside = 8;

/** Places of the stops that are in the page, in their order. */
function stopsOf(count: number, index: number): readonly number[] {
  const isStop = (i: number) =>
    i < atEnds || i >= count - atEnds || (index >= 0 && i >= index - beside && i <= index + beside);
  const stops: number[] = [];
  for (let i = 0; i < count; i++) if (isStop(i)) stops.push(i);
  return stops;
}

/** The things in reading order, anew when a gesture has ended. While the focus is among them none changes its place: a
 *  thing that is moved by keys would take the focus out of the page with it. */
function useReading(list: React.RefObject<HTMLUListElement | null>): readonly ReadThing[] {
  const file = useDeferredValue(usePlan((state) => state.history.present.file));
  const before = useRef<readonly ReadThing[]>([]);
  return useMemo(() => {
    const reads = readingOf(file);
    const isWithin = list.current?.contains(document.activeElement) ?? false;
    before.current = isWithin ? inPlace(reads, before.current) : reads;
    return before.current;
  }, [file, list]);
}

/** The things as they are now, those that were there before in the order of before. */
function inPlace(reads: readonly ReadThing[], before: readonly ReadThing[]): readonly ReadThing[] {
  const now = new Map(reads.map((read) => [read.thing.key, read]));
  const kept = before.flatMap(({ thing }) => now.get(thing.key) ?? []);
  const known = new Set(kept);
  return [...kept, ...reads.filter((read) => !known.has(read))];
}

/** A thing that goes while it has the focus leaves it to the one that stands in its place. */
function useFocusKept(
  list: React.RefObject<HTMLUListElement | null>,
  reads: readonly ReadThing[],
  at: string | null,
): void {
  const last = useRef<readonly ReadThing[]>(reads);
  useEffect(() => {
    const before = last.current;
    last.current = reads;
    const index = before.findIndex(({ thing }) => thing.key === at);
    const isGone = index >= 0 && !reads.some(({ thing }) => thing.key === at);
    if (!isGone || document.activeElement !== document.body) return;
    const next = reads[Math.min(index, reads.length - 1)]?.thing.key;
    const stop = [...(list.current?.querySelectorAll<HTMLElement>('button') ?? [])].find(
      ({ dataset }) => dataset.key === next,
    );
    stop?.focus();
  }, [list, reads, at]);
}

function skip(event: React.MouseEvent): void {
  event.preventDefault();
  document.querySelector<HTMLElement>(`#${footId} button`)?.focus();
}

/** Enter and Space choose, with Shift added to what is chosen; Enter on what alone is chosen goes into its card. All other
 *  keys are those of the board. */
function thingKey(event: KeyboardEvent, read: ReadThing | null, drawing: BoardDrawing): void {
  const onSkip = event.target instanceof HTMLAnchorElement;
  if (onSkip || read === null || (event.key !== 'Enter' && event.key !== ' ')) {
    if (read !== null && actsOnThing.test(event.key)) thingMeant(read.thing);
    if (!onSkip) boardKey(event, drawing);
    return;
  }
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  event.preventDefault();
  thingPress(read.thing, { adds: event.shiftKey, enters: event.key === 'Enter' });
}

/** Keys that do something to what is chosen. */
const actsOnThing = /^(Arrow.*|Delete|Backspace)$/;

/** A key is meant for the thing that has the focus, whatever was chosen before. */
function thingMeant(thing: Thing): void {
  const { chosen } = boardStore.getState();
  if (toolStore.getState().stance.tool !== 'choose' || chosen.some((each) => thingEquals(each, thing))) return;
  boardStore.setState({ chosen: [thing], opened: [] });
}

function thingPress(thing: Thing, { adds, enters }: { readonly adds: boolean; readonly enters: boolean }): void {
  const { tool, underway } = toolStore.getState().stance;
  if (tool !== 'choose' && underway) {
    boardRefuse('Something is being drawn: Enter on the drawing ends it, Escape gives it up.', []);
    return;
  }
  // What is in hand would draw over what is chosen.
  if (tool !== 'choose') toolPutDown();
  const { chosen } = boardStore.getState();
  const others = chosen.filter((each) => !thingEquals(each, thing));
  const isChosen = others.length < chosen.length;
  if (adds) boardStore.setState({ chosen: isChosen ? others : [...chosen, thing], opened: [] });
  else if (isChosen && enters) cardEnter();
  else boardStore.setState({ chosen: [thing], opened: [] });
}

interface StopProps {
  readonly read: ReadThing;
  readonly place: number;
  readonly of: number;
  readonly chosen: boolean;
  readonly onAt: (key: string) => void;
}

const Stop = memo(function Stop({ read, place, of, chosen, onAt }: StopProps) {
  const { thing } = read;
  const [focused, setFocused] = useState(false);
  const name = useMemo(() => readingName(read), [read]);
  const style = useRing(focused ? read.box : null);
  const onFocus = () => {
    onAt(thing.key);
    setFocused(true);
    boardHover(thing);
    boardReveal(read.box);
  };
  return (
    <li aria-posinset={place} aria-setsize={of}>
      <button
        type="button"
        className="thing"
        style={style}
        data-key={thing.key}
        aria-pressed={chosen}
        onFocus={onFocus}
        onBlur={() => setFocused(false)}
        // A screen reader presses without a key.
        onClick={(event) => thingPress(thing, { adds: event.shiftKey, enters: true })}
      >
        <span className="unseen">{name}</span>
      </button>
    </li>
  );
});

/** Distance of the ring from its thing, and from the edge of the board where the thing reaches beyond; its least side, px. */
const ringGapPx = 5;
const ringEdgePx = 6;
const ringLeastPx = 24;

/** Where the ring of the focus lies: round the thing, as far as it can be seen. */
function useRing(box: Box | null): CSSProperties | undefined {
  const view = useBoard((state) => (box === null ? null : state.view));
  const size = useBoard((state) => (box === null ? null : state.size));
  const trayOpen = useBoard((state) => state.trayOpen);
  const free = boardFree({ size, trayOpen });
  if (box === null || view === null || free === null) return undefined;
  const { leftPx, rightPx, topPx, bottomPx } = viewportBoxToScreen(view, box);
  const [left, width] = ringSpan(leftPx, rightPx, free.widthPx);
  const [top, height] = ringSpan(topPx, bottomPx, free.heightPx);
  return { left, top, width, height };
}

function ringSpan(from: number, to: number, boardPx: number): readonly [start: number, length: number] {
  const most = boardPx - ringEdgePx;
  const gap = Math.max(ringGapPx, (ringLeastPx - (to - from)) / 2);
  const start = Math.min(Math.max(from - gap, ringEdgePx), most - ringLeastPx);
  const end = Math.max(Math.min(to + gap, most), start + ringLeastPx);
  return [start, end - start];
}
