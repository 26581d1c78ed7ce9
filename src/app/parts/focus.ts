/** The ref of a button that goes with what it does, or of what goes as a whole: the focus within goes to a neighbour. Made once for each, outside of
 *  what draws it: a ref that is made anew counts as gone.
 *  @param heir selector of the neighbour: within `near` round the button where that is still there, else anywhere */
export function focusHeir(heir: string, near?: string): (gone: HTMLElement | null) => (() => void) | undefined {
  return (gone) => {
    if (gone === null) return undefined;
    const round = near === undefined ? null : gone.closest(near);
    return () => {
      if (!gone.contains(document.activeElement)) return;
      // After the page has changed: the neighbour may come with the change.
      queueMicrotask(() => {
        const within = round?.isConnected ? round.querySelector<HTMLElement>(heir) : null;
        (within ?? document.querySelector<HTMLElement>(heir))?.focus();
      });
    };
  };
}

/** The ref of something that stands in a panel of the tray as long as the panel does: where the panel gives way to that of another floor, as undo may bring
 *  it, the focus within goes to the step that is open. */
export function panelHeir(stands: HTMLElement | null): (() => void) | undefined {
  const panel = stands?.closest('.part');
  if (panel == null) return undefined;
  return () => {
    if (!panel.contains(document.activeElement)) return;
    queueMicrotask(() => document.querySelector<HTMLElement>('.rail .tab[aria-expanded="true"]')?.focus());
  };
}
