import { type KeyboardEvent, useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { type LengthUnit, lengthFigure, lengthShort, lengthsRead } from '../parts/lengths.ts';
import { useAnalysis, useBoard, useShown } from '../state/hooks.ts';
import { cardId } from '../state/thing.ts';
import { unitStore } from '../state/unit.ts';
import type { Dimension } from '../tools/dimensions/dimension.ts';
import { handTake } from '../tools/hand.ts';
import { toolStore } from '../tools/toolStore.ts';
import { boxesMeetPx, type PlacedDimension } from './dimensionPlace.ts';
import { dimensionsShown } from './dimensionsShown.ts';
import { surfaceFocus, surfaceWheel } from './surface.ts';
import type { BoxPx, SizePx, Viewport } from './viewport.ts';

interface DimensionsProps {
  readonly view: Viewport;
  readonly size: SizePx;
}

/** The figures of the dimensions on the board, each to be pressed and typed over. While the hand drags something they are
 *  only read. */
export function Dimensions({ size }: DimensionsProps) {
  useShown();
  useAnalysis((state) => state.result);
  useBoard((state) => state.trayOpen);
  const chosen = useBoard((state) => state.chosen);
  const unit = useStore(unitStore, (state) => state.unit);
  const underway = useStore(toolStore, ({ stance }) => stance.underway);
  const group = useRef<HTMLDivElement>(null);
  const card = useCardBox(group);
  const typing = useTyping();
  const open = typing.of === chosen ? typing.key : null;
  const shown = dimensionsShown().filter(({ box, dimension }) => {
    return dimension.key === open || card === null || !boxesMeetPx(box, card);
  });
  useFocusAfter(group, typing);
  useWheelThrough(group);
  const leave = (step: -1 | 0 | 1) => {
    const at = shown.findIndex(({ dimension }) => dimension.key === open);
    const next = step === 0 ? undefined : shown[at + step];
    if (next === undefined) typing.close(step === 0);
    else typing.open(next.dimension.key, chosen);
    return next !== undefined;
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of figures on a drawing, no set of fields
    <div className="dimensions" ref={group} role="group" aria-label="Dimensions">
      {shown.map((placed) => {
        const { dimension } = placed;
        if (underway) return <Read key={dimension.key} placed={placed} />;
        if (dimension.key !== open) {
          const begin = () => typing.open(dimension.key, chosen);
          return <Figure key={dimension.key} placed={placed} onOpen={begin} />;
        }
        return <Field key={dimension.key} {...{ placed, unit, size, leave }} />;
      })}
    </div>
  );
}

const placeOf = ({ leftPx, topPx, rightPx, bottomPx }: BoxPx) => ({
  left: Math.round(leftPx),
  top: Math.round(topPx),
  width: Math.round(rightPx - leftPx),
  height: Math.round(bottomPx - topPx),
});

function Read({ placed: { text, box } }: { readonly placed: PlacedDimension }) {
  return (
    <span className="dimension read" style={placeOf(box)}>
      <span>{text}</span>
    </span>
  );
}

interface FigureProps {
  readonly placed: PlacedDimension;
  readonly onOpen: () => void;
}

function Figure({ placed: { dimension, text, box }, onOpen }: FigureProps) {
  return (
    <button
      type="button"
      className="dimension"
      style={placeOf(box)}
      data-dimension={dimension.key}
      aria-label={`${dimension.name}: ${text}`}
      title={`${dimension.name}. Press to type another length`}
      onClick={onOpen}
      onKeyDown={(event) => {
        // Escape lets go of the thing, and this figure goes with it.
        if (event.key === 'Escape') surfaceFocus();
      }}
    >
      <span>{text}</span>
    </button>
  );
}

/** Width of the field with its unit, and of the words that refuse, px. */
const fieldPx = 116;
const wordsPx = 200;

interface FieldProps {
  readonly placed: PlacedDimension;
  readonly unit: LengthUnit;
  readonly size: SizePx;
  /** Goes to the figure before or after, or closes the field. */
  readonly leave: (step: -1 | 0 | 1) => boolean;
}

function Field({ placed: { dimension, box }, unit, size, leave }: FieldProps) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const start = lengthShort(dimension.lengthMm, unit);
  const [text, setText] = useState(start);
  const [wrong, setWrong] = useState<string | null>(null);
  // What was put in, or taken back, is not put in again when the field goes.
  const over = useRef(false);
  useLayoutEffect(() => field.current?.select(), []);
  /** Whether it was put in. */
  const put = (): boolean => {
    if (over.current) return false;
    const why = text.trim() === start ? null : dimensionPut(dimension, text, unit);
    setWrong(why);
    over.current = why === null;
    return why === null;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') {
      // The figure that has the focus next would be pressed by it.
      event.preventDefault();
      if (put()) leave(0);
    } else if (event.key === 'Escape') {
      over.current = true;
      leave(0);
    } else if (event.key !== 'Tab') return;
    else if (!put() || leave(event.shiftKey ? -1 : 1)) event.preventDefault();
    event.stopPropagation();
  };
  const most = size.widthPx - 8 - (wrong === null ? fieldPx : wordsPx);
  const left = Math.max(8, Math.min((box.leftPx + box.rightPx - fieldPx) / 2, most));
  return (
    <div className="dimension-field" style={{ left, top: box.topPx - 4, width: fieldPx }}>
      <span className={wrong === null ? 'entry' : 'entry wrong'}>
        <input
          ref={field}
          // biome-ignore lint/a11y/noAutofocus: it takes the place of the figure that was pressed
          autoFocus
          inputMode="text"
          autoComplete="off"
          data-typing
          aria-label={dimension.name}
          aria-invalid={wrong !== null}
          aria-describedby={wrong === null ? undefined : id}
          value={text}
          onChange={(event) => setText(event.target.value)}
          onKeyDown={onKeyDown}
          onBlur={() => put() && leave(0)}
        />
        <span className="unit">{unit}</span>
      </span>
      {wrong !== null && (
        <span className="wrong-word" id={id} role="alert">
          {wrong}
        </span>
      )}
    </div>
  );
}

/** Makes the dimension as long as was typed; null where that was done, else why not. */
function dimensionPut({ edit }: Dimension, text: string, unit: LengthUnit): string | null {
  const read = lengthsRead(text, unit);
  if (read?.kind !== 'one' || read.mm < 0) return `Enter a length, such as ${unit === 'mm' ? '4500' : '4.5'}.`;
  const done = edit(read.mm);
  if (done.kind === 'refused') {
    const { words, mostMm } = done;
    return mostMm === undefined ? `${words}.` : `${words}: at most ${lengthFigure(mostMm, unit)} ${unit}.`;
  }
  const { step, choose } = done;
  handTake({ next: 'rest', step, ...(choose === undefined ? {} : { choose }) });
  return null;
}

interface Typing {
  /** Which figure is typed over; null: none. */
  readonly key: string | null;
  /** What was chosen when it was opened. */
  readonly of: unknown;
  /** Figure that has the focus once the field has gone. */
  readonly after: React.RefObject<string | null>;
  readonly open: (key: string, of: unknown) => void;
  readonly close: (back: boolean) => void;
}

function useTyping(): Typing {
  const [typed, setTyped] = useState<{ readonly key: string | null; readonly of: unknown }>({ key: null, of: null });
  const after = useRef<string | null>(null);
  return {
    ...typed,
    after,
    open: (key, of) => setTyped({ key, of }),
    close(back) {
      // A field that was left for another place gives nothing back.
      if (back && document.activeElement instanceof HTMLInputElement) after.current = typed.key;
      setTyped({ key: null, of: null });
    },
  };
}

/** Gives the focus to the figure whose field has gone, or to the drawing where it cannot be shown any more. */
function useFocusAfter(group: React.RefObject<HTMLDivElement | null>, { after, key }: Typing): void {
  useEffect(() => {
    if (after.current === null || key !== null) return;
    const figure = group.current?.querySelector<HTMLElement>(`[data-dimension="${after.current}"]`);
    after.current = null;
    if (figure) figure.focus({ preventScroll: true });
    else surfaceFocus();
  });
}

/** Where the card lies: no figure stands over it, or under it. */
function useCardBox(group: React.RefObject<HTMLDivElement | null>): BoxPx | null {
  const [box, setBox] = useState<BoxPx | null>(null);
  useLayoutEffect(() => {
    const desk = group.current?.offsetParent;
    if (desk == null) return;
    const measure = () => {
      const next = cardBox();
      setBox((last) => (JSON.stringify(last) === JSON.stringify(next) ? last : next));
    };
    measure();
    // It comes, goes, grows and is moved without a word to what lies beside it.
    const observer = new MutationObserver(measure);
    observer.observe(desk, { childList: true, subtree: true, attributes: true, attributeFilter: ['style', 'class'] });
    return () => observer.disconnect();
  }, [group]);
  return box;
}

function cardBox(): BoxPx | null {
  const card = document.getElementById(cardId);
  // In a gesture it is out of sight, and measuring it would lay the page out with every frame.
  if (card === null || card.classList.contains('held')) return null;
  const { offsetLeft, offsetTop, offsetWidth, offsetHeight } = card;
  return {
    leftPx: offsetLeft,
    topPx: offsetTop,
    rightPx: offsetLeft + offsetWidth,
    bottomPx: offsetTop + offsetHeight,
  };
}

/** The wheel turns the board also where a figure lies over it. */
function useWheelThrough(group: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const element = group.current;
    element?.addEventListener('wheel', surfaceWheel, { passive: false });
    return () => element?.removeEventListener('wheel', surfaceWheel);
  }, [group]);
}
