import { Icon } from '../parts/Icon.tsx';
import { boardStep, type WorkStep, workSteps } from '../state/boardStore.ts';
import { useBoard } from '../state/hooks.ts';
import { toolPutDown } from '../tools/hand.ts';
import { toolStore } from '../tools/toolStore.ts';

export const stepNames: Readonly<Record<WorkStep, string>> = {
  floor: 'Floor',
  openings: 'Openings',
  obstacles: 'Obstacles',
  joints: 'Joints',
  coverings: 'Coverings',
  papers: 'Papers',
};

/** What has opened the tray, and is gone back to when it folds. */
export const tabId = (step: WorkStep) => `step-${step}`;

/** The steps of the work, in its order. A step opens its tray; the open one folds it away. */
export function Rail() {
  const step = useBoard((state) => state.step);
  const open = useBoard((state) => state.trayOpen);
  return (
    <nav className="rail" aria-label="Steps of the work">
      {workSteps.map((each) => (
        <button
          key={each}
          id={tabId(each)}
          type="button"
          className="tab"
          aria-expanded={open && step === each}
          aria-controls="tray"
          onClick={() => {
            // A tool of another step is put down, but nothing that is being drawn.
            if (each !== step && !toolStore.getState().stance.underway) toolPutDown();
            boardStep(each);
          }}
        >
          <Icon name={each} />
          {stepNames[each]}
        </button>
      ))}
    </nav>
  );
}
