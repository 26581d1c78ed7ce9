import { type ReactNode, useEffect } from 'react';
import { useStore } from 'zustand';
import { demoParts } from './files/demos.ts';
import { fileParts } from './files/files.ts';
import { lateAsk, lateOf, lateRefuse } from './late.ts';
import { sourceParts } from './parts/SourceNote.tsx';
import { boardStore } from './state/boardStore.ts';
import { toolStore } from './tools/toolStore.ts';

/** All of the screen that the first view does not show, in one file: cut up further, what it shares would be cut up too. */
type Parts = typeof import('./later-parts.ts');
const laterParts = lateOf<Parts>(() => import('./later-parts.ts'));

export const Card = partOf((parts) => parts.Card);
export const LiveLimits = partOf((parts) => parts.LiveLimits);
export const Dimensions = partOf((parts) => parts.Dimensions);
export const Begin = partOf((parts) => parts.Begin);
export const BoardKey = partOf((parts) => parts.BoardKey);
export const CoveringsPanel = partOf((parts) => parts.CoveringsPanel);
export const HandGroup = partOf((parts) => parts.HandGroup);
export const FloorPanel = partOf((parts) => parts.FloorPanel);
export const HelpSheet = partOf((parts) => parts.HelpSheet);
export const ObstaclesPanel = partOf((parts) => parts.ObstaclesPanel);
export const KeptPlans = partOf((parts) => parts.KeptPlans);
export const OpeningsPanel = partOf((parts) => parts.OpeningsPanel);
export const PapersPanel = partOf((parts) => parts.PapersPanel);
export const ToolOptions = partOf((parts) => parts.ToolOptions);
export const TypedEntry = partOf((parts) => parts.TypedEntry);

/** The later parts; null until they are there. */
export const useLater = () => useStore(laterParts.store, ({ part }) => part);

/** Does what is asked of the later parts: at once where they are there. */
export function laterDo(act: (parts: Parts) => void): void {
  const { part } = laterParts.store.getState();
  if (part !== null) act(part);
  else void lateAsk(laterParts, 'This was not done.').then((held) => held !== null && act(held));
}

/** A part that is held is drawn at once; the lazy components of React show nothing for a third of a second even then. */
function partOf<Props extends object>(pick: (parts: Parts) => (props: Props) => ReactNode) {
  return function Part(props: Props) {
    const parts = useStore(laterParts.store, ({ part }) => part);
    useEffect(() => {
      if (parts === null) void lateAsk(laterParts, 'This part of the screen is not there yet.');
    }, [parts]);
    if (parts === null) return null;
    const Picked = pick(parts);
    return <Picked {...props} />;
  };
}

/** So long after the first view stands, ms; and so long after a fetch that failed. */
const afterMs = 2000;
const againMs = 5000;

/** Fetches everything once the first view stands, so that it is there when it is asked for, whether the server that
 *  brought the page still runs or not. Tells the first time that it cannot, and goes on trying. */
export function laterFetch(): void {
  laterParts.store.subscribe(({ part }) =>
    toolStore.setState({ tiles: part?.tileTools ?? null, opening: part?.opening ?? null }),
  );
  setTimeout(() => fetchAll(true), afterMs);
}

async function fetchAll(first: boolean): Promise<void> {
  try {
    const [{ papersPrepare }] = await Promise.all([
      laterParts.fetch(),
      ...[fileParts, sourceParts, ...demoParts].map(({ fetch }) => fetch()),
    ]);
    await papersPrepare();
  } catch (error) {
    // What somebody asked for and did not get has been said with the same reason: it stays.
    if (first && boardStore.getState().notice?.tone !== 'refused')
      lateRefuse('Not all of the program is here: what is changed now cannot be saved yet.', error);
    setTimeout(() => fetchAll(false), againMs);
  }
}
