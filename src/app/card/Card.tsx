import { Fragment, memo, type ReactNode, useCallback, useEffect, useRef, useState } from 'react';
import { jointKindNames, namesOf } from '../../documents/words.ts';
import type { Box } from '../../geometry/ring.ts';
import { objectFind, objectsBox, objectsOf } from '../../plan/edits/objects.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { boxesRoundPx } from '../canvas/dimensionPlace.ts';
import { dimensionsShown } from '../canvas/dimensionsShown.ts';
import type { BoardDrawing } from '../canvas/drawing.ts';
import { thingBox, thingSceneBox } from '../canvas/thingItems.ts';
import { type SizePx, type Viewport, viewportBoxToScreen } from '../canvas/viewport.ts';
import { findingRows } from '../panels/finding-rows.tsx';
import { hintOf, nameText } from '../parts/format.ts';
import { Icon } from '../parts/Icon.tsx';
import { ThingList } from '../parts/ThingList.tsx';
import type { Result } from '../state/analysisStore.ts';
import { boardFree, boardLetGo } from '../state/boardStore.ts';
import { cardIsAsked } from '../state/cardEnter.ts';
import { useAnalysis, useBoard, usePlan } from '../state/hooks.ts';
import { cardId, findingKey, planIds, type Thing, thingEquals, thingIsPlanned } from '../state/thing.ts';
import { countNoun, objectNoun } from '../tools/nouns.ts';
import { BayFigures } from './BayFigures.tsx';
import { cardPlace } from './cardPlace.ts';
import { EdgeFigures } from './EdgeFigures.tsx';
import { FindingFigures } from './FindingFigures.tsx';
import { JointFigures } from './JointFigures.tsx';
import { JointWord } from './JointWord.tsx';
import { ManyCard } from './ManyCard.tsx';
import { ObjectCard } from './ObjectCard.tsx';
import { RoomCard } from './RoomCard.tsx';
import { WordsClear } from './WordsClear.tsx';

interface CardProps {
  readonly drawing: BoardDrawing;
  readonly view: Viewport;
  readonly size: SizePx;
  readonly onChoose: (thing: Thing) => void;
}

/** The figures of the chosen thing, beside it on the drawing. In a gesture it is out of sight and stays as it was: nothing
 *  lies over what the hand moves, and its folds and fields are there again when the hand lets go. */
export function Card(props: CardProps) {
  const things = useBoard((state) => state.chosen);
  const opened = useBoard((state) => state.opened);
  const trayOpen = useBoard((state) => state.trayOpen);
  const file = usePlan((state) => state.history.present.file);
  const result = useAnalysis((state) => state.result);
  const held = usePlan((state) => state.preview !== null);
  return <StillCard {...{ ...props, things, opened, trayOpen, file, result, held }} />;
}

interface StillCardProps extends CardProps {
  readonly things: readonly Thing[];
  readonly opened: readonly Thing[];
  readonly trayOpen: boolean;
  readonly file: PlanFile;
  readonly result: Result | null;
  readonly held: boolean;
}

const StillCard = memo(CardAt, (before, now) => before.held && now.held);

function CardAt({ drawing, view, size, onChoose, things, opened, trayOpen, file, result, held }: StillCardProps) {
  const [chosen = null] = things;
  const free = boardFree({ size, trayOpen }) ?? size;
  const [heightPx, setHeightPx] = useState(0);
  const focusKeep = useFocusBack(chosen);
  const measure = useCallback(
    (element: HTMLElement | null) => {
      if (element === null) return;
      const observer = new ResizeObserver(() => setHeightPx(element.offsetHeight));
      observer.observe(element);
      const giveBack = focusKeep(element);
      if (cardIsAsked()) element.focus();
      return () => {
        observer.disconnect();
        giveBack();
      };
    },
    [focusKeep],
  );
  const content =
    chosen === null ? pinContent(opened, result, onChoose) : chosenContent(things, { file, result, onChoose });
  useFocusKept(content?.key ?? null);
  if (content === null) return null;
  const about = chosen ?? opened[0] ?? null;
  const onScreen = (box: Box | null) => (box === null ? null : viewportBoxToScreen(view, box));
  const own = onScreen(things.length > 1 ? manyBox(things, file) : ownBox(about, file, result, drawing));
  const scene = onScreen(about === null || result === null ? null : thingSceneBox(about, result, drawing.items));
  // Its dimensions are part of what it is seen by.
  const lit = boxesRoundPx([scene ?? [], dimensionsShown().map(({ box }) => box)].flat());
  const place = cardPlace(own, lit, free, heightPx);
  return (
    <section
      ref={measure}
      id={cardId}
      className={held ? 'card held' : 'card'}
      data-scrolls
      tabIndex={-1}
      aria-label={content.title}
      style={place}
    >
      <div className="card-head">
        <h2 title={hintOf(content.title)}>{content.title}</h2>
        <button
          type="button"
          className="button bare"
          aria-label="Let go of it"
          title="Let go of it (Escape)"
          onClick={boardLetGo}
        >
          <Icon name="close" />
        </button>
      </div>
      {!held && <WordsClear place={place} heightPx={heightPx} free={free} />}
      <Fragment key={content.key}>{content.body}</Fragment>
    </section>
  );
}

/** A thing's place on the drawing; that in the plan where the drawing has no item of it yet. */
function ownBox(thing: Thing | null, file: PlanFile, result: Result | null, drawing: BoardDrawing): Box | null {
  if (thing === null) return null;
  const drawn = result === null ? null : thingBox(thing, result, drawing.items);
  return drawn ?? objectsBox(file, planIds([thing]));
}

/** The place of several things is that of those which the plan has: they are found in one go, however many. */
function manyBox(things: readonly Thing[], file: PlanFile): Box | null {
  return objectsBox(file, planIds(things));
}

/** A card that goes while the focus is in it gives the focus back to where its thing was chosen: to the list, else to the
 *  drawing. */
function useFocusBack(chosen: Thing | null): (card: HTMLElement) => () => void {
  const from = useRef<Element | null>(null);
  const note = useCallback(() => {
    const { activeElement } = document;
    if (activeElement?.closest(`#${cardId}`) == null) from.current = activeElement;
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked up anew for each thing that is chosen
  useEffect(note, [chosen]);
  return useCallback(
    (card) => {
      // A card that is gone into as it comes has the focus before any effect runs.
      note();
      return () => {
        if (!card.contains(document.activeElement)) return;
        const list = from.current?.closest<HTMLElement>('[role="listbox"], .thing');
        const back = list?.isConnected ? list : document.querySelector<HTMLElement>('.surface');
        // After the page has changed: what takes the focus is to hear of it.
        queueMicrotask(() => back?.focus());
      };
    },
    [note],
  );
}

/** A card that turns into another under the focus keeps it: what had it is no longer there. */
function useFocusKept(key: string | null): void {
  const within = useRef(false);
  useEffect(() => {
    const look = ({ target }: FocusEvent) => {
      within.current = target instanceof Element && target.closest(`#${cardId}`) !== null;
    };
    document.addEventListener('focusin', look);
    return () => document.removeEventListener('focusin', look);
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at anew with each card
  useEffect(() => {
    if (within.current && document.activeElement === document.body) document.getElementById(cardId)?.focus();
  }, [key]);
}

interface CardContent {
  /** Another card where it is another: nothing that is typed in one goes over to the next. */
  readonly key: string;
  readonly title: string;
  readonly body: ReactNode;
}

/** What a pin that stands for several findings stands for. */
function pinContent(
  things: readonly Thing[],
  result: Result | null,
  onChoose: CardProps['onChoose'],
): CardContent | null {
  if (result === null) return null;
  const rows = findingRows(result).filter((row) => things.some((thing) => thingEquals(thing, row.thing)));
  if (rows.length === 0) return null;
  return {
    key: 'pin',
    title: `${rows.length} findings here`,
    body: <ThingList told label="Findings here" rows={rows} onChoose={onChoose} />,
  };
}

interface Known {
  readonly file: PlanFile;
  readonly result: Result | null;
  readonly onChoose: CardProps['onChoose'];
}

function chosenContent(all: readonly Thing[], known: Known): CardContent | null {
  const ids = new Set(objectsOf(known.file).map(({ object }) => object.id));
  // An undo may have taken some of them out of the plan.
  const things = all.filter((thing) => !thingIsPlanned(thing) || ids.has(thing.key));
  const [chosen, ...more] = things;
  if (chosen === undefined) return null;
  if (more.length > 0) {
    return { key: 'many', title: countNoun(things.length), body: <ManyCard things={things} {...known} /> };
  }
  const key = `${chosen.kind} ${chosen.key}`;
  const content = thingIsPlanned(chosen) ? planContent(chosen, known) : foundContent(chosen, known);
  return content === null ? null : { key, ...content };
}

type Content = Omit<CardContent, 'key'>;

/** Of a thing that the plan has: there as soon as it is drawn. */
function planContent({ kind, key: id }: Thing, { file, result }: Known): Content | null {
  if (objectFind(file, id) === null) return null;
  const noun = objectNoun(file, id);
  const of = nameText(noun);
  const Body = kind === 'room' ? RoomCard : ObjectCard;
  return { title: `${noun.charAt(0).toUpperCase()}${noun.slice(1)}`, body: <Body {...{ file, id, of, result }} /> };
}

/** Of a thing that the analysis has found. */
function foundContent(thing: Thing, { file, result, onChoose }: Known): Content | null {
  if (result === null) return null;
  const { plan, analysis } = result;
  const names = namesOf(plan, analysis);
  switch (thing.kind) {
    case 'bay': {
      const bay = analysis.bays.find((each) => each.key === thing.key);
      return bay ? { title: `${bay.id} ${names.bay(bay)}`, body: <BayFigures bay={bay} result={result} /> } : null;
    }
    case 'joint': {
      const joint = analysis.joints.find((each) => each.key === thing.key);
      if (joint === undefined) return null;
      const between = names.joint(joint);
      const word = <JointWord {...{ joint, between, file, onChoose }} />;
      return {
        title: `${joint.id} ${between}`,
        body: <JointFigures joint={joint} kind={jointKindNames[joint.kind]} word={word} result={result} />,
      };
    }
    case 'edge': {
      const edge = analysis.edges.find((each) => each.id === thing.key);
      return edge
        ? { title: `${edge.id} ${names.room(edge.room)}`, body: <EdgeFigures edge={edge} result={result} /> }
        : null;
    }
    case 'finding': {
      const at = analysis.findings.findIndex((each) => findingKey(each) === thing.key);
      const finding = analysis.findings[at];
      return finding
        ? { title: `Finding ${at + 1}`, body: <FindingFigures finding={finding} result={result} /> }
        : null;
    }
    default:
      return null;
  }
}
