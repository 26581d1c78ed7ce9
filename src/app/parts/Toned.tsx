import type { ReactNode } from 'react';
import { severityNames } from '../../documents/words.ts';
import type { Severity } from '../../plan/analysis.ts';
import { isGrave } from '../state/worst.ts';
import { Icon } from './Icon.tsx';

interface TonedProps {
  /** The worst that is found about it; undefined: nothing. */
  readonly severity: Severity | undefined;
  readonly children?: ReactNode;
}

/** A figure with the sign of the worst that is found about its thing. */
export function Toned({ severity, children }: TonedProps) {
  if (!isGrave(severity)) return children;
  return (
    <span className={`tone tone-${severity}`}>
      <Icon name={severity} />
      <span className="unseen">{severityNames[severity][0]} </span>
      {children}
    </span>
  );
}
