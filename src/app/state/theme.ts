import type { Theme } from '../../documents/styles.ts';
import { boardStore } from './boardStore.ts';

/** Under this key the browser keeps what was chosen by hand. */
const keptKey = 'theme';

/** Light or dark: the system's until the user says otherwise, which holds from then on. The page's styles follow the
 *  attribute, the drawing the store. */
export function themeFollow(): void {
  const dark = window.matchMedia('(prefers-color-scheme: dark)');
  const follow = () => boardStore.setState({ theme: themeKept() ?? (dark.matches ? 'dark' : 'light') });
  dark.addEventListener('change', follow);
  boardStore.subscribe(themeMark);
  follow();
  themeMark();
}

export function themeTurn(): void {
  const theme = boardStore.getState().theme === 'light' ? 'dark' : 'light';
  boardStore.setState({ theme });
  try {
    localStorage.setItem(keptKey, theme);
  } catch {
    // A browser that keeps nothing for the page forgets this too.
  }
}

function themeKept(): Theme | null {
  try {
    const kept = localStorage.getItem(keptKey);
    return kept === 'light' || kept === 'dark' ? kept : null;
  } catch {
    return null;
  }
}

function themeMark(): void {
  const { theme } = boardStore.getState();
  if (document.documentElement.dataset.theme !== theme) document.documentElement.dataset.theme = theme;
}
