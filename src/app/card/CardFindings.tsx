import { severityNames } from '../../documents/words.ts';
import type { Finding } from '../../plan/analysis.ts';
import { roomsTiled, tilesChanged, tilesTakenAway } from '../../plan/edits/tiles.ts';
import { BalanceCuts } from '../panels/tiles/BalanceCuts.tsx';
import { Icon } from '../parts/Icon.tsx';
import { messagesOf } from '../parts/messages.ts';
import type { Result } from '../state/analysisStore.ts';
import { cardEnter } from '../state/cardEnter.ts';
import { commit } from '../state/planStore.ts';
import { findingKey } from '../state/thing.ts';
import { findingsAbout } from '../state/worst.ts';
import { findingTiles, type Mend, mendsOf } from './mends.ts';

interface CardFindingsProps {
  readonly id: string;
  /** What it is called besides: a drawn joint is a joint of the floor too. */
  readonly also?: readonly string[];
  readonly result: Result;
}

/** What the findings say about a thing, where the thing stands, with their mends. */
export function CardFindings({ id, also = [], result }: CardFindingsProps) {
  const findings = findingsAbout(result.analysis, [id, ...also]);
  if (findings.length === 0) return null;
  const words = messagesOf(result.plan);
  const mends = new Map(findings.flatMap((finding) => mendsOf(finding, result)).map((mend) => [mend.words, mend]));
  return (
    <>
      <ul className="about" aria-label="Findings about it">
        {findings.map((finding) => (
          <li key={findingKey(finding)} className={`tone-${finding.severity}`}>
            <Icon name={finding.severity} />
            <span>
              <span className="unseen">{severityNames[finding.severity][0]}: </span>
              {words(finding.message)}
            </span>
          </li>
        ))}
      </ul>
      <Mends mends={[...mends.values()]} />
      <CutMends findings={findings} result={result} />
    </>
  );
}

/** Narrow cuts are mended by another set-out point. */
export function CutMends({ findings, result }: { readonly findings: readonly Finding[]; readonly result: Result }) {
  const narrow = findings.filter(({ code }) => code === 'tile-slivers' || code === 'tile-cuts-small');
  const fields = [...new Set(narrow.map((finding) => findingTiles(finding, result.plan)))];
  if (fields.length === 0) return null;
  return (
    <div className="mends">
      {fields.map((of) => (
        <BalanceCuts key={of ?? ''} of={of} />
      ))}
    </div>
  );
}

export function Mends({ mends }: { readonly mends: readonly Mend[] }) {
  if (mends.length === 0) return null;
  return (
    <div className="mends">
      {mends.map((mend) => {
        const { words } = mend;
        const edit = mendEdit(mend);
        return edit === null ? (
          <p key={words}>{words}.</p>
        ) : (
          <button
            key={words}
            type="button"
            className="button main"
            onClick={() => {
              commit(words, edit);
              // The button goes with the finding.
              cardEnter();
            }}
          >
            {words}
          </button>
        );
      })}
    </div>
  );
}

function mendEdit({ edit, tiles }: Mend): Mend['edit'] {
  if (tiles === undefined) return edit;
  if ('rooms' in tiles) return (file) => roomsTiled(file, tiles.rooms, null);
  if ('away' in tiles) return (file) => tilesTakenAway(file, tiles.away);
  return (file) => tilesChanged(file, tiles.of, tiles.change);
}
