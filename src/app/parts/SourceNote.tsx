import { useEffect, useId, useState } from 'react';
import { useStore } from 'zustand';
import type { Figure } from '../../plan/reference.ts';
import { lateAsk, lateOf } from '../late.ts';
import { figureShort } from './format.ts';
import { Icon } from './Icon.tsx';

const standings: Readonly<Record<string, string>> = {
  published: 'Published',
  memory: 'From memory: check against the document',
  practice: 'Common practice',
  derived: 'Our own arithmetic',
  user: 'Entered by you',
};

export const sourceParts = lateOf(() => import('../../plan/sources.ts'));

/** Where a figure comes from and how far it can be relied on. */
export function SourceText({ source, range }: { readonly source: string; readonly range?: string | null }) {
  const part = useStore(sourceParts.store, (held) => held.part);
  useEffect(() => {
    if (part === null) void lateAsk(sourceParts, 'The source cannot be shown yet.');
  }, [part]);
  if (part === null) return null;
  const known = part.sourceOf(source);
  if (known === null) {
    return (
      <p className="source-text">
        <span className="standing">{standings.user}.</span> {source}
      </p>
    );
  }
  return (
    <p className="source-text">
      <span className="standing">
        {standings[known.standing] ?? known.standing}
        {known.restated ? ', as restated in trade literature' : ''}.
      </span>{' '}
      {known.where}.{range ? ` Seen: ${range}.` : ''} {known.note}
    </p>
  );
}

export function figureRange({ range, unit }: Figure): string | null {
  const [least, most] = range ?? [];
  if (least === undefined || most === undefined) return null;
  const plainUnit = unit === '1' ? '' : ` ${unit === 'C' ? '°C' : unit}`;
  return `${figureShort(least, 6)} to ${figureShort(most, 6)}${plainUnit}`;
}

export interface SourceToggle {
  readonly open: boolean;
  readonly id: string;
  readonly turn: () => void;
}

export function useSource(): SourceToggle {
  const [open, setOpen] = useState(false);
  return { open, id: useId(), turn: () => setOpen(!open) };
}

/** Opens the source of a figure under its field: one step away. */
export function SourceButton({ of, toggle }: { readonly of: string; readonly toggle: SourceToggle }) {
  return (
    <button
      type="button"
      className="button bare source-button"
      aria-expanded={toggle.open}
      aria-controls={toggle.id}
      aria-label={`Source of ${of.toLowerCase()}`}
      title={`Source of ${of.toLowerCase()}`}
      onClick={toggle.turn}
    >
      <Icon name="source" />
    </button>
  );
}
