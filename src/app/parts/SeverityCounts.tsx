import { countText } from '../../documents/words.ts';
import type { Finding, Severity } from '../../plan/analysis.ts';
import { Icon } from './Icon.tsx';

export const severities: readonly Severity[] = ['fault', 'caution', 'note'];

interface SeverityCountsProps {
  readonly findings: readonly Finding[];
  /** With words after the figures; where the window is narrow the sign alone says it. */
  readonly worded?: boolean;
}

/** How many findings there are of each severity; none of those that there are none of. */
export function SeverityCounts({ findings, worded = false }: SeverityCountsProps) {
  return severities.map((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    if (count === 0) return null;
    const words = countText(severity, count);
    const figure = String(count);
    return (
      <span key={severity} className={`tone small tone-${severity}`} title={words}>
        <Icon name={severity} />
        <span aria-hidden="true">
          {figure}
          {worded && <span className="count-word">{words.slice(figure.length)}</span>}
        </span>
        <span className="unseen">{words}</span>
      </span>
    );
  });
}
