import { Icon } from '../parts/Icon.tsx';
import { SeverityCounts } from '../parts/SeverityCounts.tsx';
import { ThingList } from '../parts/ThingList.tsx';
import { boardStore } from '../state/boardStore.ts';
import { useBoard } from '../state/hooks.ts';
import { findingRows } from './finding-rows.tsx';
import type { PanelProps } from './panel.ts';

/** What is to be acted on, the worst first, with the numbers that the pins on the drawing carry. */
export function FindingsPanel({ result, onChoose }: PanelProps) {
  const open = useBoard((state) => state.findingsOpen);
  const findings = result?.analysis.findings ?? [];
  return (
    <section id="findings" className="findings" data-open={open} aria-label="Findings">
      <h2>
        <button
          type="button"
          className="findings-fold"
          aria-expanded={open}
          onClick={() => boardStore.setState({ findingsOpen: !open })}
        >
          Findings
          <SeverityCounts findings={findings} />
          <Icon name="fold" />
        </button>
      </h2>
      {open && result !== null && (
        <div className="findings-list" data-scrolls>
          {findings.length === 0 && <p className="quiet">Nothing found.</p>}
          <ThingList told label="Findings" rows={findingRows(result)} onChoose={onChoose} />
        </div>
      )}
    </section>
  );
}
