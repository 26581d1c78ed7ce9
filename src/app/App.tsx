import { memo, useCallback, useEffect, useRef, useState } from 'react';
import { cautionLines } from '../documents/words.ts';
import { Board } from './canvas/Board.tsx';
import { boardChoose } from './canvas/boardView.ts';
import { thingBox } from './canvas/thingItems.ts';
import { useBoardDrawing } from './canvas/useBoardDrawing.ts';
import { Head } from './panels/Head.tsx';
import { Rail } from './panels/Rail.tsx';
import { Tray } from './panels/Tray.tsx';
import { nameText } from './parts/format.ts';
import type { Result } from './state/analysisStore.ts';
import { boardTellMore } from './state/boardStore.ts';
import { changesOf } from './state/changes.ts';
import { useAnalysis, usePlan } from './state/hooks.ts';
import type { Thing } from './state/thing.ts';

/** Head above, board with the tray at its edge, rail of the work's steps outermost. */
export function App() {
  const result = useAnalysis((state) => state.result);
  const name = usePlan((state) => state.history.present.file.name);
  const drawing = useBoardDrawing(result);
  useEffect(() => {
    document.title = `${nameText(name)}: screed bays`;
  }, [name]);
  const changed = useChanged(result);
  const rested = useRested(result);
  const latest = useRef({ result, drawing });
  latest.current = { result, drawing };
  // The same for good: what hangs on it is not drawn anew with each result.
  const choose = useCallback((thing: Thing) => {
    const now = latest.current;
    boardChoose(thing, now.result === null ? null : thingBox(thing, now.result, now.drawing.items));
  }, []);
  return (
    <div className="app">
      <SteadyHead />
      <SteadyRail />
      <Board drawing={drawing} changed={changed} cautions={cautionLines} onChoose={choose} />
      <SteadyTray result={rested} onChoose={choose} />
    </div>
  );
}

/** Not drawn anew where nothing of theirs has changed: in a drag a result comes every few frames. */
const SteadyHead = memo(Head);
const SteadyTray = memo(Tray);
const SteadyRail = memo(Rail);

/** A hand that has not changed anything for so long rests, ms. */
const restMs = 120;

/** The result for the lists: in a gesture they follow when the hand rests, so that the drawing can follow at once. */
function useRested(result: Result | null): Result | null {
  const held = usePlan((state) => state.preview !== null);
  const [rested, setRested] = useState(result);
  useEffect(() => {
    if (!held) {
      setRested(result);
      return;
    }
    const timer = setTimeout(() => setRested(result), restMs);
    return () => clearTimeout(timer);
  }, [result, held]);
  return held ? rested : result;
}

/** So long what a change brought is lit, ms. */
const changedMs = 1200;
const nothing: readonly Thing[] = [];

/** What the last change brought, for a moment. Another sheet is no change. */
function useChanged(result: Result | null): readonly Thing[] {
  const before = useRef<Result | null>(null);
  const [changed, setChanged] = useState(nothing);
  const held = usePlan((state) => state.preview !== null);
  useEffect(() => {
    // A gesture is told when it ends, not at each of its steps.
    if (held) return;
    const last = before.current;
    before.current = result;
    if (last === null || result === null || last === result || last.sheet !== result.sheet) return;
    const { things, words } = changesOf(last.analysis, result.analysis);
    if (words !== '') boardTellMore(words);
    setChanged(things);
    const timer = setTimeout(() => setChanged(nothing), changedMs);
    return () => {
      clearTimeout(timer);
      setChanged(nothing);
    };
  }, [result, held]);
  return changed;
}
