import { boardStore } from './boardStore.ts';

/** Light or dark: the system's until the user says otherwise. The page's styles follow the attribute, the drawing the store. */
export function themeFollow(): void {
  const dark = window.matchMedia('(prefers-color-scheme: dark)');
  const follow = () => boardStore.setState({ theme: dark.matches ? 'dark' : 'light' });
  dark.addEventListener('change', follow);
  boardStore.subscribe(themeMark);
  follow();
  themeMark();
}

export function themeTurn(): void {
  boardStore.setState(({ theme }) => ({ theme: theme === 'light' ? 'dark' : 'light' }));
}

function themeMark(): void {
  const { theme } = boardStore.getState();
  if (document.documentElement.dataset.theme !== theme) document.documentElement.dataset.theme = theme;
}
