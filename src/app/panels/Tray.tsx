import type { ComponentType } from 'react';
import { CoveringsPanel, FloorPanel, ObstaclesPanel, OpeningsPanel, PapersPanel } from '../later.tsx';
import { Icon } from '../parts/Icon.tsx';
import { boardStore, type WorkStep } from '../state/boardStore.ts';
import { useBoard, usePlan } from '../state/hooks.ts';
import { FindingsPanel } from './FindingsPanel.tsx';
import { JointsPanel } from './JointsPanel.tsx';
import type { PanelProps } from './panel.ts';
import { stepNames, tabId } from './Rail.tsx';

const panels: Readonly<Record<WorkStep, ComponentType<PanelProps>>> = {
  floor: FloorPanel,
  openings: OpeningsPanel,
  obstacles: ObstaclesPanel,
  joints: JointsPanel,
  coverings: CoveringsPanel,
  papers: PapersPanel,
};

/** The step of the work in hand, with the findings below it whichever step that is. */
export function Tray(props: PanelProps) {
  const step = useBoard((state) => state.step);
  const open = useBoard((state) => state.trayOpen);
  // What was half typed for one sheet is not carried over to another.
  const sheet = usePlan((state) => state.history.present.number);
  const drawn = usePlan((state) => state.history.present.file.rooms.length > 0);
  if (!open) return null;
  const Panel = panels[step];
  return (
    <aside className="tray" id="tray" aria-label="Settings and lists">
      <section key={`${step} ${sheet}`} className="part" data-scrolls aria-labelledby="tray-step">
        <div className="part-head">
          <h2 id="tray-step">{stepNames[step]}</h2>
          <button
            type="button"
            className="button bare"
            aria-label="Fold away"
            title="Fold away"
            onClick={() => {
              boardStore.setState({ trayOpen: false });
              document.getElementById(tabId(step))?.focus();
            }}
          >
            <Icon name="fold" />
          </button>
        </div>
        <Panel {...props} />
      </section>
      {drawn && <FindingsPanel {...props} />}
    </aside>
  );
}
