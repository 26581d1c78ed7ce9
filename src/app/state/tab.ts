/** Under this key the browser remembers the sheet of each tab, beyond the last of all tabs. */
const tabKey = 'sheet';

export function tabMark(id: string): void {
  try {
    sessionStorage.setItem(tabKey, id);
  } catch {
    // The last sheet of all tabs is remembered on the shelf.
  }
}

/** The sheet that was on the board of this tab before it was loaded again. */
export function tabMarked(): string | null {
  try {
    return sessionStorage.getItem(tabKey);
  } catch {
    return null;
  }
}
