import { useEffect } from 'react';
import { useStore } from 'zustand';
import { cautionsOf } from '../../documents/words.ts';
import { papersOf } from '../../plan/papers.ts';
import { panelHeir } from '../parts/focus.ts';
import { useAnalysis, usePlan } from '../state/hooks.ts';
import { papersLay, papersStore } from '../state/papersRun.ts';
import type { PanelProps } from './panel.ts';
import { CompareGroup } from './papers/CompareGroup.tsx';
import { OrderGroup } from './papers/OrderGroup.tsx';
import { PapersGroup } from './papers/PapersGroup.tsx';
import { PapersWorking } from './papers/PapersWorking.tsx';
import { RegisterGone } from './papers/RegisterGone.tsx';
import { RevisionsGroup } from './papers/RevisionsGroup.tsx';
import { SheetGroup } from './papers/SheetGroup.tsx';
import { SiteGroups } from './papers/SiteGroups.tsx';
import { TakeOffGroup } from './papers/TakeOffGroup.tsx';

/** What is ordered, what stands on the papers, and the papers to hand over. */
export function PapersPanel({ result }: PanelProps) {
  useEffect(() => {
    if (result !== null) void papersLay(result);
  }, [result]);
  const laid = useStore(papersStore, (state) => state.laid);
  const halted = useStore(papersStore, (state) => state.halted);
  // What was worked out of the sheet before says nothing of this one.
  const sheet = usePlan((state) => state.history.present.number);
  const file = usePlan((state) => state.history.present.file);
  const unfound = useAnalysis((state) => state.halted !== null && state.run === null);
  const shown = laid?.result.sheet === sheet ? laid : null;
  // What comes later would push down what is pressed already.
  if (shown === null && halted === null && !unfound) {
    return (
      <p className="quiet" role="status">
        Working out the papers.
      </p>
    );
  }
  const cautions = cautionsOf(papersOf(file), { findings: shown?.result.analysis.findings ?? [] });
  const drawn = shown !== null && shown.result.plan.rooms.length > 0;
  return (
    <div ref={panelHeir}>
      {shown !== null && !drawn && <p className="quiet">Papers are made once a room is drawn.</p>}
      {drawn && (
        <>
          <RegisterGone />
          <PapersGroup laid={shown} />
          <TakeOffGroup laid={shown} />
        </>
      )}
      {shown === null && halted !== null && <p className="small">{halted}</p>}
      <OrderGroup />
      <SheetGroup faults={shown?.faults ?? null} />
      <RevisionsGroup />
      <SiteGroups heating={shown?.heating ?? []} />
      {drawn && <CompareGroup laid={shown} />}
      <section className="group">
        <h3>Before anything is built</h3>
        {cautions.map((line) => (
          <p key={line} className="quiet">
            {line}
          </p>
        ))}
      </section>
      <PapersWorking />
    </div>
  );
}
