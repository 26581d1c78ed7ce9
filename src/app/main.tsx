import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { fileDropFollow } from './files/files.ts';
import { boardStart } from './files/kept.ts';
import { laterFetch } from './later.tsx';
import { Rescue } from './Rescue.tsx';
import { shortcutsFollow } from './shortcuts.ts';
import { analysisFollow, analysisPrepare } from './state/analysisRun.ts';
import { noticesFollow } from './state/boardStore.ts';
import { keepingFollow, keepingStore, planStanding } from './state/keeping.ts';
import { planStore } from './state/planStore.ts';
import { themeFollow } from './state/theme.ts';
import { handFollow } from './tools/hand.ts';
import './style/tokens.css';
import './style/app.css';
import './style/parts.css';
import './style/board.css';
import './style/bar.css';
import './style/menu.css';
import './style/narrow.css';

/** The screen. Accepts: what a person does. Guarantees: the plan changes by `commit` alone and every change can be undone;
 *  the analysis runs off the screen's thread and never stands in the saved state. Steps: stores (`state`), the board that
 *  draws the drawing list (`canvas`), the figures of the chosen thing beside it (`card`), settings and lists at its edge
 *  (`panels`), plan files, kept plans and papers (`files`). */
const place = document.getElementById('app');
if (place === null) throw new Error('the page has no place for the app');

analysisPrepare();
themeFollow();
noticesFollow();
shortcutsFollow();
handFollow();
fileDropFollow();
window.addEventListener('beforeunload', (event) => {
  if (planStanding(planStore.getState(), keepingStore.getState()) === 'loose') event.preventDefault();
});
await boardStart();
keepingFollow();
analysisFollow();
createRoot(place).render(
  <StrictMode>
    <Rescue>
      <App />
    </Rescue>
  </StrictMode>,
);
laterFetch();
