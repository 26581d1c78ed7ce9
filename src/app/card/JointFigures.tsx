import type { ReactNode } from 'react';
import type { Joint } from '../../plan/analysis.ts';
import { length, movement } from '../parts/format.ts';
import { groutWords } from '../parts/grout.ts';
import { messagesOf } from '../parts/messages.ts';
import type { Result } from '../state/analysisStore.ts';
import { CardFindings } from './CardFindings.tsx';
import { FiguresTable } from './FiguresTable.tsx';
import { GroutDeed } from './GroutDeed.tsx';
import { JointRegister } from './JointRegister.tsx';
import { JointWorking } from './JointWorking.tsx';

interface JointFiguresProps {
  readonly joint: Joint;
  readonly kind: string;
  /** What can be done about it, or what dictates it. */
  readonly word: ReactNode;
  readonly result: Result;
}

/** What a joint must take, beside what it takes; and why it is here. */
export function JointFigures({ joint, kind, word, result }: JointFiguresProps) {
  const over = joint.closingMm > joint.profileTakesMm;
  const words = messagesOf(result.plan);
  const { widthMm } = result.plan.sealant;
  const grout = groutWords(joint);
  return (
    <>
      <p>{kind}</p>
      {joint.reasons.length > 0 && (
        <ul className="small quiet" aria-label="Why it is here">
          {joint.reasons.map((reason) => (
            <li key={reason}>{words(reason)}</li>
          ))}
        </ul>
      )}
      {word}
      <TravelBar joint={joint} over={over} />
      <FiguresTable
        rows={[
          { name: 'Closes', value: movement(joint.closingMm), strong: true },
          { name: 'Closes at worst', value: movement(joint.worstClosingMm), limit: 'bays stopped at their far side' },
          { name: 'Opens', value: movement(joint.openingMm) },
          { name: 'Slides along the joint', value: movement(joint.slidingMm) },
          {
            name: 'Sealant must be',
            value: joint.kind === 'structural' ? 'a profile' : movement(joint.sealantNeedsMm),
            limit: joint.kind === 'structural' ? null : `${movement(widthMm)} given`,
          },
          { name: 'Length', value: length(joint.lengthM) },
          ...(grout === null ? [] : [{ name: 'Grout line', value: grout.place, limit: grout.more || null }]),
        ]}
      />
      <GroutDeed joint={joint} />
      <JointRegister joint={joint} result={result} />
      <CardFindings id={joint.id} result={result} />
      <details className="explain">
        <summary>How the movement is found</summary>
        <JointWorking joint={joint} result={result} />
      </details>
    </>
  );
}

/** The profile across its width: how far it closes, at worst, and where its foam stops. */
function TravelBar({ joint, over }: { readonly joint: Joint; readonly over: boolean }) {
  const share = (valueMm: number) => `${Math.min(100, (100 * valueMm) / joint.profileMm)}%`;
  return (
    <div
      className={over ? 'travel over' : 'travel'}
      role="img"
      aria-label={`The profile is ${movement(joint.profileMm)} wide and takes ${movement(joint.profileTakesMm)}.`}
    >
      <div className="worst" style={{ width: share(joint.worstClosingMm) }} />
      <div className="centred" style={{ width: share(joint.closingMm) }} />
      <div className="stop" style={{ left: share(joint.profileTakesMm) }} />
      <span className="stop-word" style={{ left: share(joint.profileTakesMm) }}>
        takes {movement(joint.profileTakesMm)}
      </span>
      <span className="end-word">profile {movement(joint.profileMm)}</span>
    </div>
  );
}
