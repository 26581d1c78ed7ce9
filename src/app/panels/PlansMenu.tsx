import { useId, useState } from 'react';
import { PlansList } from '../later.tsx';
import { Icon } from '../parts/Icon.tsx';

/** The way to the plans that are at hand. */
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
        {open && <PlansList menu={id} />}
      </section>
    </>
  );
}
