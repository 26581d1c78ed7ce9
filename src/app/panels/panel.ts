import type { Result } from '../state/analysisStore.ts';
import type { Thing } from '../state/thing.ts';

/** What every panel of the tray is given. */
export interface PanelProps {
  /** The last good result; null until there is one. */
  readonly result: Result | null;
  readonly onChoose: (thing: Thing) => void;
}
