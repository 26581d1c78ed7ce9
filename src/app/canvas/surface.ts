/** The board as a place of the page: it takes the keys of the tool in hand. */
export const surfaceClass = 'surface';

export function surfaceFocus(): void {
  document.querySelector<HTMLElement>(`.${surfaceClass}`)?.focus({ preventScroll: true });
}
