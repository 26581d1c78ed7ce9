import { severityNames } from '../../documents/words.ts';
import type { Finding } from '../../plan/analysis.ts';
import { Icon } from '../parts/Icon.tsx';
import { messagesOf } from '../parts/messages.ts';
import { SourceText } from '../parts/SourceNote.tsx';
import type { Result } from '../state/analysisStore.ts';
import { CutMends, Mends } from './CardFindings.tsx';
import { mendsOf } from './mends.ts';

/** What is wrong and where, what the limit rests on, and the mends that a figure of the plan can bring. */
export function FindingFigures({ finding, result }: { readonly finding: Finding; readonly result: Result }) {
  const [word] = severityNames[finding.severity];
  return (
    <>
      <p className={`tone tone-${finding.severity}`}>
        <Icon name={finding.severity} />
        {word.charAt(0).toUpperCase() + word.slice(1)}
      </p>
      <p>{messagesOf(result.plan)(finding.message)}</p>
      <SourceText source={finding.source} />
      <Mends mends={mendsOf(finding, result)} />
      <CutMends findings={[finding]} result={result} />
    </>
  );
}
