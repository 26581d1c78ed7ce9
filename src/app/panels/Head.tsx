import { useState } from 'react';
import { flushSync } from 'react-dom';
import { planRenamed } from '../../plan/edits/settings.ts';
import { planEmpty } from '../../plan/empty.ts';
import { filePick, planSave } from '../files/files.ts';
import { HelpSheet } from '../later.tsx';
import { area, countOf } from '../parts/format.ts';
import { Icon, type IconName } from '../parts/Icon.tsx';
import { commandKey } from '../parts/keys.ts';
import { SeverityCounts } from '../parts/SeverityCounts.tsx';
import { redoTell, undoTell } from '../state/actions.ts';
import { boardStore } from '../state/boardStore.ts';
import { useAnalysis, useBoard, useKeeping, usePlan, useStanding } from '../state/hooks.ts';
import type { KeepingTrouble } from '../state/keeping.ts';
import { commit, sheetLay } from '../state/planStore.ts';
import { themeTurn } from '../state/theme.ts';
import { isGrave } from '../state/worst.ts';
import { PlansMenu } from './PlansMenu.tsx';

/** The head of the sheet: what is on the board in one line, and what is done with the sheet as a whole. */
export function Head() {
  const past = usePlan((state) => state.history.past.at(-1)?.name ?? null);
  const future = usePlan((state) => state.history.future[0]?.name ?? null);
  const isSaved = useStanding() === 'saved';
  const theme = useBoard((state) => state.theme);
  const [help, setHelp] = useState(false);
  return (
    <header className="head">
      <p className="maker">
        <strong>Screed bays</strong>
        <span className="small quiet">Bays and joints of heated screeds</span>
      </p>
      <div className="title">
        <PlanName />
        <OnBoard />
      </div>
      <Verdict />
      <fieldset className="actions" aria-label="Sheet">
        <Action icon="empty" words="Empty sheet" onAct={sheetBegin} />
        <PlansMenu />
        <Action icon="open" words="Open" hint={`Open a plan file (${commandKey} O)`} onAct={filePick} />
        <Action
          icon="save"
          words="Save"
          hint={
            isSaved
              ? `Save the plan file (${commandKey} S): nothing has changed`
              : `Save the plan file (${commandKey} S)`
          }
          onAct={() => void planSave()}
        />
        <span className="divide" aria-hidden="true" />
        <Action
          icon="undo"
          words="Undo"
          spare
          hint={past === null ? 'Nothing to undo' : `Undo: ${past} (${commandKey} Z)`}
          off={past === null}
          onAct={undoTell}
        />
        <Action
          icon="redo"
          words="Redo"
          spare
          hint={future === null ? 'Nothing to redo' : `Redo: ${future} (${commandKey} Shift Z)`}
          off={future === null}
          onAct={redoTell}
        />
        <Action
          icon={theme === 'light' ? 'dark' : 'light'}
          words={theme === 'light' ? 'Dark' : 'Light'}
          spare
          hint={theme === 'light' ? 'Draw dark' : 'Draw light'}
          onAct={themeTurn}
        />
        <Action icon="help" words="Help" spare hint="How to draw, choose, move and type" onAct={() => setHelp(true)} />
      </fieldset>
      {help && <HelpSheet onClose={() => setHelp(false)} />}
    </header>
  );
}

/** The work begins with the floor. */
function sheetBegin(): void {
  sheetLay('Empty sheet', planEmpty('New floor'), 'new');
  boardStore.setState({ step: 'floor' });
}

interface ActionProps {
  readonly icon: IconName;
  readonly words: string;
  readonly hint?: string;
  readonly off?: boolean;
  /** Its word gives way where the window is narrow. */
  readonly spare?: boolean;
  readonly onAct: () => void;
}

function Action({ icon, words, hint = words, off = false, spare = false, onAct }: ActionProps) {
  return (
    // Off it keeps the focus: a button that is pressed for the last time is not taken from under the finger.
    <button
      type="button"
      className="button"
      aria-label={words}
      title={hint}
      aria-disabled={off}
      onClick={off ? undefined : onAct}
    >
      <Icon name={icon} />
      <span className={spare ? 'spare action-word' : 'action-word'}>{words}</span>
    </button>
  );
}

function PlanName() {
  const name = usePlan((state) => state.history.present.file.name);
  const [typed, setTyped] = useState<string | null>(null);
  const put = () => {
    const next = typed?.trim() ?? '';
    if (next !== '' && next !== name) commit('Rename the plan', (file) => planRenamed(file, next));
    setTyped(null);
  };
  return (
    <h1 className="plan-title">
      <input
        className="plan-name"
        aria-label="Name of the plan"
        title={name}
        data-typing={typed !== null}
        value={typed ?? name}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={put}
        onKeyDown={(event) => {
          if (event.key === 'Enter') put();
          if (event.key === 'Escape') setTyped(null);
        }}
      />
    </h1>
  );
}

/** Opens the list, and brings it into view where the tray scrolls as a whole. */
function findingsShow(): void {
  flushSync(() => boardStore.setState({ trayOpen: true, findingsOpen: true }));
  document.getElementById('findings')?.scrollIntoView();
}

/** What is wrong with the floor, in a word; opens the list. */
function Verdict() {
  const { number: sheet, file } = usePlan((state) => state.history.present);
  const findings = useAnalysis(({ result }) => (result?.sheet === sheet ? result.analysis.findings : null));
  if (findings === null || file.rooms.length === 0) return null;
  const grave = findings.filter(({ severity }) => isGrave(severity));
  return (
    <button type="button" className="button framed verdict" title="Show the findings" onClick={findingsShow}>
      {grave.length === 0 ? (
        <span className="tone small tone-within">
          <Icon name="within" />
          <span className="count-word" aria-hidden="true">
            No fault found
          </span>
          <span className="unseen">No fault found</span>
        </span>
      ) : (
        <SeverityCounts findings={grave} worded />
      )}
    </button>
  );
}

/** "Kept in this browser. 12 rooms, 118.0 m², 14 bays, 17 joints." Where the line is cut, its end goes. */
function OnBoard() {
  const { origin, file, laid, number: sheet } = usePlan((state) => state.history.present);
  const analysis = useAnalysis(({ result }) => (result?.sheet === sheet ? result.analysis : null));
  const rooms = file.rooms.length;
  const isDemo = origin === 'demo' && file === laid;
  const found =
    analysis === null
      ? []
      : [
          area(analysis.quantities.floorM2),
          countOf(analysis.bays.length, 'bay', 'bays'),
          countOf(analysis.joints.length, 'joint', 'joints'),
        ];
  const words = [countOf(rooms, 'room', 'rooms'), ...found].join(', ');
  return (
    <p className="on-board small">
      <KeptWord />
      <span>{rooms === 0 ? 'An empty sheet.' : `${isDemo ? 'Demo floor: ' : ''}${words}.`}</span>
    </p>
  );
}

const troubleWords: Readonly<Record<KeepingTrouble, string>> = {
  late: 'Not kept yet. ',
  taken: 'Not kept: another tab works on this sheet. Save the plan file. ',
  refused: 'Not kept in this browser: save the plan file. ',
};

/** Where the newest change is. A change that is being kept this moment says what the one before it said. */
function KeptWord() {
  const standing = useStanding();
  const before = usePlan((state) => state.history.present.id);
  const isKept = useKeeping(({ kept }) => kept.has(before));
  const trouble = useKeeping((state) => state.trouble);
  if (standing === 'laid') return null;
  if (standing === 'saved') return 'Saved as a file. ';
  if (standing === 'loose' && trouble !== null) {
    return <span className="unsaved">{troubleWords[trouble]}</span>;
  }
  return isKept ? 'Kept in this browser. ' : null;
}
