import { severityNames } from '../../documents/words.ts';
import type { Finding } from '../../plan/analysis.ts';
import { type Mend, mendIsDone, mendsOf } from '../card/mends.ts';
import { Icon } from '../parts/Icon.tsx';
import { messagesOf } from '../parts/messages.ts';
import { severities } from '../parts/SeverityCounts.tsx';
import type { ThingRow } from '../parts/ThingList.tsx';
import type { Result } from '../state/analysisStore.ts';
import { findingThing } from '../state/thing.ts';

/** The findings as rows of a list, the worst first, with the number of their pin and the first mend there is. */
export function findingRows(result: Result): readonly ThingRow[] {
  const words = messagesOf(result.plan);
  const rank = (finding: Finding) => severities.indexOf(finding.severity);
  return result.analysis.findings
    .map((finding, i) => ({ finding, number: i + 1 }))
    .sort((a, b) => rank(a.finding) - rank(b.finding) || a.number - b.number)
    .map(({ finding, number }) => {
      const [mend] = mendsOf(finding, result);
      return {
        thing: findingThing(finding),
        lead: <FindingSign severity={finding.severity} number={number} />,
        name: words(finding.message),
        value: null,
        more: mend === undefined ? null : <MendLine mend={mend} />,
      };
    });
}

function MendLine({ mend }: { readonly mend: Mend }) {
  const { words } = mend;
  return mendIsDone(mend) ? <span className="mend">Mend: {words.toLowerCase()}</span> : `${words}.`;
}

/** Sign and number of a finding, as on its pin. */
function FindingSign({ severity, number }: { readonly severity: Finding['severity']; readonly number: number }) {
  return (
    <span className={`tone tone-${severity}`}>
      <Icon name={severity} />
      <span className="unseen">{severityNames[severity][0]} </span>
      {number}
    </span>
  );
}
