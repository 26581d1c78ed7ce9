import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { objectPoints, objectRings, objectsOf } from '../../plan/edits/objects.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { useAnalysis, useBoard, useShown } from '../state/hooks.ts';
import { papersStore } from '../state/papersRun.ts';
import { pointerStore } from '../state/pointerStore.ts';
import { takeOffFollow } from '../state/takeOffShown.ts';
import { unitStore } from '../state/unit.ts';
import { sceneOf } from '../tools/hand.ts';
import { gridLineMarks } from '../tools/papers/grid-line.ts';
import { type Sketch, type SketchMark, sketchLine, sketchRing } from '../tools/sketch.ts';
import type { Stance } from '../tools/stance.ts';
import { toolStore } from '../tools/toolStore.ts';
import { cutMarks } from './cutsLit.ts';
import { dimensionMarks } from './dimensionsShown.ts';
import type { BoardLayer, Light } from './layers.ts';
import { placesFollow } from './placesFollow.ts';
import { sketchPaint, underPaint } from './sketchPaint.ts';
import { takeOffEscape, takeOffMarks } from './takeOffLit.ts';
import type { Viewport } from './viewport.ts';

interface SketchLayerProps {
  readonly layer: BoardLayer;
  readonly view: Viewport;
  readonly theme: string;
  readonly onLight: (light: Light | null) => void;
}

/** What the hand does, and what the plan has and the drawing has not yet: painted over the board, and anew with every
 *  move of the hand. */
export function SketchLayer({ layer, view, theme, onLight }: SketchLayerProps) {
  const sketch = useSketch(view);
  const colours = useMemo(() => coloursOf(theme), [theme]);
  useEffect(() => {
    layer.paint((context) => sketchPaint(context._context, sketch, view, colours));
  }, [layer, sketch, view, colours]);
  const lit = useLit();
  useEffect(() => {
    const paint: Light['paint'] = (context, at) => underPaint(context, { marks: lit }, at, colours);
    onLight(lit.length === 0 ? null : { paint });
  }, [lit, colours, onLight]);
  // Here and not in the tray: it may be folded while the drawing is looked at.
  useEffect(takeOffFollow, []);
  useEffect(takeOffEscape, []);
  useEffect(placesFollow, []);
  return null;
}

/** Theme in, so that they are read again when the theme turns. */
function coloursOf(_theme: string) {
  const style = getComputedStyle(document.documentElement);
  const [accent, fault, ground] = ['--accent', '--fault', '--board'].map((name) => style.getPropertyValue(name).trim());
  return { accent: accent ?? '', fault: fault ?? '', ground: ground ?? '' };
}

/** What a list lights: painted below the names and the pins of the drawing. */
function useLit(): readonly SketchMark[] {
  const cutsLit = useBoard((state) => state.cutsLit);
  const step = useBoard((state) => state.step);
  const result = useAnalysis((state) => state.result);
  const laid = useStore(papersStore, (state) => state.laid);
  const takeOff = useStore(papersStore, (state) => state.takeOff);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the cuts are those of the result
  const cuts = useMemo(() => cutMarks(), [cutsLit, result, step]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the sources are those of the line that is lit
  const taken = useMemo(() => takeOffMarks(), [laid, takeOff, step]);
  return useMemo(() => [...cuts, ...taken], [cuts, taken]);
}

function useSketch(view: Viewport): Sketch {
  const stance = useStore(toolStore, (state) => state.stance);
  const wishes = useStore(toolStore, (state) => state.wishes);
  const chosen = useBoard((state) => state.chosen);
  const led = useStore(pointerStore, (state) => state.led);
  const shown = useShown();
  const result = useAnalysis((state) => state.result);
  const drawn = result?.file ?? null;
  const size = useBoard((state) => state.size);
  const trayOpen = useBoard((state) => state.trayOpen);
  const unit = useStore(unitStore, (state) => state.unit);
  const step = useBoard((state) => state.step);
  const tiles = useStore(toolStore, (state) => state.tiles);
  const unseen = useMemo(() => unseenMarks(shown, drawn), [shown, drawn]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the dimensions are made of all this
  const dimensions = useMemo(() => dimensionMarks(), [stance, chosen, shown, result, view, size, trayOpen, unit]);
  const grid = useMemo(() => (step === 'papers' ? gridLineMarks(shown) : []), [shown, step]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the scene is made of all this, and marks keep their size on paper
  const own = useMemo(
    () => stance.sketch({ ...sceneOf(), file: shown }).marks,
    [stance, wishes, chosen, shown, step, tiles, view],
  );
  const cross = useMemo(() => crossMarks(stance, led), [stance, led]);
  return useMemo(
    () => ({ marks: [...grid, ...unseen, ...dimensions, ...own, ...cross] }),
    [grid, unseen, dimensions, own, cross],
  );
}

/** The hand of a tool that keys lead. A set-out point is seen as it is. */
function crossMarks({ hand, tilesOf }: Stance, led: boolean): readonly SketchMark[] {
  return led && hand && tilesOf === undefined ? [{ mark: 'cross', at: hand, tone: 'hand' }] : [];
}

/** Outlines of what the shown plan has and the last good result has not. */
function unseenMarks(shown: PlanFile, drawn: PlanFile | null): readonly SketchMark[] {
  if (shown === drawn) return [];
  const known = new Set<unknown>(drawn === null ? [] : objectsOf(drawn).map(({ object }) => object));
  return objectsOf(shown)
    .filter(({ object }) => !known.has(object))
    .flatMap((found): readonly SketchMark[] => {
      if ('line' in found.object) return [sketchLine(found.object.line)];
      const rings = objectRings(found);
      return rings.length > 0 ? rings.map((ring) => sketchRing(ring)) : [sketchRing(objectPoints(found))];
    });
}
