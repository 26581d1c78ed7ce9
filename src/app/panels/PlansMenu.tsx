import { useId, useState } from 'react';
import { demoLay, demos } from '../files/demos.ts';
import { KeptPlans } from '../later.tsx';
import { Icon } from '../parts/Icon.tsx';

/** The plans that are at hand: those that the browser keeps, and the demos. */
export function PlansMenu() {
  const id = useId();
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="button menu-button" aria-label="Plans" popoverTarget={id}>
        <Icon name="plans" />
        <span className="action-word">Plans</span>
      </button>
      <section
        className="menu"
        id={id}
        popover="auto"
        aria-label="Plans"
        onBeforeToggle={({ newState }) => setOpen(newState === 'open')}
      >
        {/* Read anew each time: another tab may have kept something. */}
        {open && <KeptPlans menu={id} />}
        <h2>Demo floors</h2>
        <ul aria-label="Demo floors">
          {demos.map((demo) => (
            <li key={demo.path}>
              <button
                type="button"
                className="button"
                popoverTarget={id}
                popoverTargetAction="hide"
                onClick={() => void demoLay(demo)}
              >
                {demo.name}
              </button>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}
