/** The board as a place of the page: it takes the keys of the tool in hand. */
export const surfaceClass = 'surface';

/** The foot of the board, where its things end. */
export const footId = 'foot';

export function surfaceFocus(): void {
  document.querySelector<HTMLElement>(`.${surfaceClass}`)?.focus({ preventScroll: true });
}
