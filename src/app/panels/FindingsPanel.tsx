import { countText } from '../../documents/words.ts';
import type { Finding, Severity } from '../../plan/analysis.ts';
import { Icon } from '../parts/Icon.tsx';
import { ThingList, type ThingRow } from '../parts/ThingList.tsx';
import { boardStore } from '../state/boardStore.ts';
import { useBoard } from '../state/hooks.ts';
import { findingThing } from '../state/thing.ts';
import type { PanelProps } from './panel.ts';

const severities: readonly Severity[] = ['fault', 'caution', 'note'];

/** What is to be acted on, the worst first, with the numbers that the pins on the drawing carry. */
export function FindingsPanel({ result, onChoose }: PanelProps) {
  const open = useBoard((state) => state.findingsOpen);
  const findings = result?.analysis.findings ?? [];
  return (
    <section className="findings" data-open={open} aria-label="Findings">
      <h2>
        <button
          type="button"
          className="findings-fold"
          aria-expanded={open}
          onClick={() => boardStore.setState({ findingsOpen: !open })}
        >
          Findings
          <FindingCounts findings={findings} />
          <Icon name="fold" />
        </button>
      </h2>
      {open && result !== null && (
        <div className="findings-list">
          {findings.length === 0 && <p className="quiet">Nothing found.</p>}
          <ThingList label="Findings" rows={findingRows(findings)} onChoose={onChoose} />
        </div>
      )}
    </section>
  );
}

function FindingCounts({ findings }: { readonly findings: readonly Finding[] }) {
  return severities.map((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return count === 0 ? null : (
      <span key={severity} className={`tone small tone-${severity}`} title={countText(severity, count)}>
        <Icon name={severity} />
        <span aria-hidden="true">{count}</span>
        <span className="unseen">{countText(severity, count)}</span>
      </span>
    );
  });
}

function findingRows(findings: readonly Finding[]): readonly ThingRow[] {
  const rank = (finding: Finding) => severities.indexOf(finding.severity);
  return findings
    .map((finding, i) => ({ finding, number: i + 1 }))
    .sort((a, b) => rank(a.finding) - rank(b.finding) || a.number - b.number)
    .map(({ finding, number }) => ({
      thing: findingThing(finding),
      lead: (
        <span className={`tone tone-${finding.severity}`}>
          <Icon name={finding.severity} />
          <span className="unseen">{countText(finding.severity, 1).replace('1 ', '')}</span>
          {number}
        </span>
      ),
      name: finding.message,
      value: null,
      more: null,
    }));
}
