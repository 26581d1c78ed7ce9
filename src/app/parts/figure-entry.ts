import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { usePlan } from '../state/hooks.ts';
import { gestureRetract } from '../state/planStore.ts';
import { digitsGrouped, figureRead, figureShort } from './format.ts';

/** A figure that is typed: what it is, its bounds and where it goes. */
export interface FigureEntry {
  readonly unit: string;
  /** Null: not known yet. */
  readonly value: number | null;
  readonly least: number;
  readonly most: number;
  /** What an arrow key adds or takes. */
  readonly step: number;
  readonly decimals: number;
  /** `gesture` is the same for all changes of one typing, and for those of the arrow keys until the field is left. */
  readonly onChange: (value: number, gesture: string) => void;
  /** Why a figure within its bounds cannot be, where that hangs on the rest of the plan; null where it can. */
  readonly refusal?: (value: number, gesture: string) => string | null;
  /** What an empty field is; left out where there has to be a figure. */
  readonly onClear?: (gesture: string) => void;
  /** How the figure is read and written, where that is not as a plain number. */
  readonly read?: (text: string) => number | null;
  readonly write?: (value: number) => string;
  /** The bounds in words, where they are wider than a figure is ever meant to be. */
  readonly bounds?: string;
}

/** Typing that has rested for so long is put in, ms: the floor follows the figure, not each digit on the way to it. */
const restMs = 350;

/** A figure is put in as soon as typing rests, by Enter, by leaving the field or by an arrow key. Escape brings back what
 *  stood there before. Only a figure that is left, or entered, is told to be wrong. */
export function useFigureEntry(entry: FigureEntry) {
  const { unit, value, least, most, step, decimals, onChange, onClear, refusal, bounds, read = figureRead } = entry;
  const write = entry.write ?? ((figure: number) => figureShort(figure, decimals));
  const id = useId();
  const count = useRef(0);
  const rest = useRef<ReturnType<typeof setTimeout>>(undefined);
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  useEffect(() => () => clearTimeout(rest.current), []);
  // Not the preview: a field is not drawn anew with every move of a hand.
  const revision = usePlan((state) => state.history);
  const [seen, setSeen] = useState(revision);
  if (seen !== revision) {
    setSeen(revision);
    // The plan went on, by undo or in another field: what was refused here is past.
    if (wrong !== null) {
      setTyped(null);
      setWrong(null);
    }
  }

  const inRange = (next: number | null): next is number => next !== null && next >= least && next <= most;
  const gesture = () => `${id} ${count.current}`;
  const why = (next: number) => (next === value ? null : (refusal?.(next, gesture()) ?? null));
  const change = (next: number) => {
    setWrong(null);
    if (next !== value) onChange(next, gesture());
  };
  const put = (next: number | null) => {
    clearTimeout(rest.current);
    if (!inRange(next)) {
      const told = (figure: number) => digitsGrouped(write(figure));
      setWrong(`Enter a number from ${bounds ?? `${told(least)} to ${told(most)} ${unit}`.trim()}.`);
      return;
    }
    const refused = why(next);
    if (refused !== null) {
      setWrong(refused);
      return;
    }
    setTyped(null);
    change(next);
  };
  const putText = (text: string) => {
    if (onClear === undefined || text.trim() !== '') {
      put(read(text));
      return;
    }
    clearTimeout(rest.current);
    setTyped(null);
    setWrong(null);
    if (value !== null) onClear(gesture());
  };
  const restore = () => {
    clearTimeout(rest.current);
    setTyped(null);
    setWrong(null);
    gestureRetract(gesture());
  };
  const onChangeText = (text: string) => {
    if (typed === null) count.current += 1;
    setTyped(text);
    clearTimeout(rest.current);
    const next = read(text);
    if (inRange(next) && why(next) === null) rest.current = setTimeout(() => change(next), restMs);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && typed !== null) putText(typed);
    if (event.key === 'Escape' && typed !== null) {
      event.stopPropagation();
      restore();
    }
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();
    const from = (typed === null ? null : read(typed)) ?? value ?? least - step;
    const next = from + (event.key === 'ArrowUp' ? step : -step);
    put(Number(Math.min(most, Math.max(least, next)).toFixed(decimals)));
  };
  const onFocus = () => {
    count.current += 1;
  };
  const onBlur = () => typed !== null && putText(typed);
  const text = typed ?? (value === null ? '' : write(value));
  return { id, text, typing: typed !== null, wrong, onChangeText, onKeyDown, onFocus, onBlur };
}
