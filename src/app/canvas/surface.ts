/** The board as a place of the page: it takes the keys of the tool in hand. */
export const surfaceClass = 'surface';

/** The foot of the board, where its things end. */
export const footId = 'foot';

export function surfaceFocus(): void {
  document.querySelector<HTMLElement>(`.${surfaceClass}`)?.focus({ preventScroll: true });
}

/** Hands a turn of the wheel over what lies on the drawing on to the drawing. */
export function surfaceWheel(event: WheelEvent): void {
  event.preventDefault();
  document.querySelector<HTMLElement>(`.${surfaceClass}`)?.dispatchEvent(new WheelEvent('wheel', event));
}
