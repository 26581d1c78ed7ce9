import { type ReactNode, useCallback, useEffect, useRef, useState } from 'react';
import { jointKindNames, namesOf } from '../../documents/words.ts';
import type { BoardDrawing } from '../canvas/drawing.ts';
import { thingBox, thingSceneBox } from '../canvas/thingItems.ts';
import { type SizePx, type Viewport, viewportBoxToScreen } from '../canvas/viewport.ts';
import { findingRows } from '../panels/finding-rows.tsx';
import { hintOf } from '../parts/format.ts';
import { Icon } from '../parts/Icon.tsx';
import { ThingList } from '../parts/ThingList.tsx';
import type { Result } from '../state/analysisStore.ts';
import { boardFree, boardLetGo } from '../state/boardStore.ts';
import { useAnalysis, useBoard } from '../state/hooks.ts';
import { cardId, findingKey, type Thing, thingEquals } from '../state/thing.ts';
import { BayFigures } from './BayFigures.tsx';
import { cardPlace } from './cardPlace.ts';
import { EdgeFigures } from './EdgeFigures.tsx';
import { FindingFigures } from './FindingFigures.tsx';
import { JointFigures } from './JointFigures.tsx';
import { ObjectFigures, objectTitle } from './ObjectFigures.tsx';
import { RoomFigures } from './RoomFigures.tsx';

interface CardProps {
  readonly drawing: BoardDrawing;
  readonly view: Viewport;
  readonly size: SizePx;
  readonly onChoose: (thing: Thing) => void;
}

/** The figures of the chosen thing, beside it on the drawing. */
export function Card({ drawing, view, size, onChoose }: CardProps) {
  const [chosen = null, ...more] = useBoard((state) => state.chosen);
  const opened = useBoard((state) => state.opened);
  const trayOpen = useBoard((state) => state.trayOpen);
  const free = boardFree({ size, trayOpen }) ?? size;
  const result = useAnalysis((state) => state.result);
  const [heightPx, setHeightPx] = useState(0);
  const focusKeep = useFocusBack(chosen);
  const measure = useCallback(
    (element: HTMLElement | null) => {
      if (element === null) return;
      const observer = new ResizeObserver(() => setHeightPx(element.offsetHeight));
      observer.observe(element);
      const giveBack = focusKeep(element);
      return () => {
        observer.disconnect();
        giveBack();
      };
    },
    [focusKeep],
  );
  if (result === null) return null;
  if (more.length > 0) return null;
  const about = chosen ?? opened[0] ?? null;
  const content = chosen === null ? pinContent(opened, result, onChoose) : cardContent(chosen, result);
  if (content === null || about === null) return null;
  const [own, scene] = [thingBox, thingSceneBox].map((boxed) => {
    const box = boxed(about, result, drawing.items);
    return box === null ? null : viewportBoxToScreen(view, box);
  });
  const place = cardPlace(own ?? null, scene ?? null, free, heightPx);
  return (
    <section
      ref={measure}
      id={cardId}
      className="card"
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
      {content.body}
    </section>
  );
}

/** A card that goes while the focus is in it gives the focus back to where its thing was chosen: to the list, else to the
 *  drawing. */
function useFocusBack(chosen: Thing | null): (card: HTMLElement) => () => void {
  const from = useRef<Element | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked up anew for each thing that is chosen
  useEffect(() => {
    const { activeElement } = document;
    if (activeElement?.closest(`#${cardId}`) == null) from.current = activeElement;
  }, [chosen]);
  return useCallback(
    (card) => () => {
      if (!card.contains(document.activeElement)) return;
      const list = from.current?.closest<HTMLElement>('[role="listbox"]');
      (list?.isConnected ? list : document.querySelector<HTMLElement>('.surface'))?.focus();
    },
    [],
  );
}

/** What a pin that stands for several findings stands for. */
function pinContent(things: readonly Thing[], result: Result, onChoose: CardProps['onChoose']): CardContent | null {
  const rows = findingRows(result).filter((row) => things.some((thing) => thingEquals(thing, row.thing)));
  if (rows.length === 0) return null;
  return {
    title: `${rows.length} findings here`,
    body: <ThingList told label="Findings here" rows={rows} onChoose={onChoose} />,
  };
}

interface CardContent {
  readonly title: string;
  readonly body: ReactNode;
}

function cardContent(thing: Thing, result: Result): CardContent | null {
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
      return {
        title: `${joint.id} ${names.joint(joint)}`,
        body: <JointFigures joint={joint} kind={jointKindNames[joint.kind]} result={result} />,
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
    case 'room': {
      const room = plan.rooms.find((each) => each.id === thing.key);
      return room ? { title: names.room(room.id), body: <RoomFigures room={room} result={result} /> } : null;
    }
    case 'object': {
      const title = objectTitle(plan, thing.key);
      return title === null ? null : { title, body: <ObjectFigures id={thing.key} result={result} /> };
    }
  }
}
