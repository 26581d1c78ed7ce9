import { useId } from 'react';
import { useStore } from 'zustand';
import type { Comparison } from '../../../documents/compare.ts';
import type { SettingChange, SettingValue } from '../../../documents/compare-changes.ts';
import type { OrderChange, OrderVersion } from '../../../documents/compare-order.ts';
import { type QuantityPair, quantityIsChanged } from '../../../documents/compare-quantities.ts';
import { becameWords, comparisonSummary } from '../../../documents/compare-tables.ts';
import { earlierAsk } from '../../files/paper-work.ts';
import { focusHeir } from '../../parts/focus.ts';
import { figure, figureShort, nameText } from '../../parts/format.ts';
import { Stretches } from '../../parts/Stretches.tsx';
import { type Laid, papersCompare, papersStore } from '../../state/papersRun.ts';

const heir = focusHeir('#compare .button');

/** What changed since an earlier version of the plan. */
export function CompareGroup({ laid: { comparison } }: { readonly laid: Laid }) {
  const earlier = useStore(papersStore, (state) => state.earlier);
  return (
    <section className="group" id="compare">
      <h3>Compare with an earlier version</h3>
      {comparison !== null && earlier !== null && (
        <>
          <p>Since {earlier.name}:</p>
          {comparison.caution !== null && (
            <p className="tone-caution" role="alert">
              {comparison.caution}
            </p>
          )}
          {comparison.notes.map((note) => (
            <p key={note} role="note">
              {note}
            </p>
          ))}
          <dl className="small changed">
            {comparisonSummary(comparison).map(([of, text]) => (
              <div key={of}>
                <dt>{of}</dt>
                <dd>{text}</dd>
              </div>
            ))}
          </dl>
          <FirstOf name="Settings that changed" lines={comparison.settings.map(settingLine)} />
          <FirstOf name="Quantities that changed" lines={changedQuantities(comparison).map(quantityLine)} />
          <FirstOf name="Order that changed" lines={comparison.orders.map(orderLine)} />
          <JointChanges comparison={comparison} />
        </>
      )}
      <div className="deeds">
        {earlier !== null && (
          <button ref={heir} type="button" className="button framed" onClick={() => void papersCompare(null)}>
            Stop comparing
          </button>
        )}
        <button type="button" className="button framed" onClick={earlierAsk}>
          {earlier === null ? 'Open an earlier version' : 'Open another'}
        </button>
      </div>
      {comparison !== null && (
        <p className="small quiet">The papers of the revision stand with the other papers above.</p>
      )}
    </section>
  );
}

/** So many of a list stand in the tray: all of them stand in the papers of the revision. */
const firstCount = 5;

type Line = readonly [of: string, text: string];

function FirstOf({ name, lines }: { readonly name: string; readonly lines: readonly Line[] }) {
  const id = useId();
  if (lines.length === 0) return null;
  const more = lines.length - firstCount;
  return (
    <>
      <h4 id={id}>{name}</h4>
      <ul className="small changes" aria-labelledby={id}>
        {lines.slice(0, firstCount).map(([of, text]) => (
          <li key={`${of} ${text}`}>
            <span className="quiet">{of}</span> {text}
          </li>
        ))}
        {more > 0 && <li className="quiet">and {more} more, in the papers of the revision</li>}
      </ul>
    </>
  );
}

/** Tables write areas and volumes without raised figures. Example: "kN/m2" -> "kN/m²" */
function unitShown(unit: string): string {
  return unit.replace('m2', 'm²').replace('m3', 'm³');
}

/** Example: "Thickness of the screed", "70 mm, was 65 mm" */
function settingLine({ of, words, unit, before, now, unset }: SettingChange): Line {
  const told = (value: SettingValue) => {
    if (value === null) return unset;
    const text = typeof value === 'number' ? figureShort(value, 6) : nameText(value);
    return unit === null ? text : `${text} ${unitShown(unit)}`;
  };
  return [`${of === null ? '' : `${nameText(of)}: `}${words}`, `${told(now)}, was ${told(before)}`];
}

/** Of the whole floor. */
function changedQuantities({ quantities }: Comparison): readonly QuantityPair[] {
  return quantities.filter((pair) => pair.room === null && quantityIsChanged(pair));
}

function quantityLine({ words, unit, before, now, decimals }: QuantityPair): Line {
  const told = (value: number | null) => `${figure(value ?? 0, decimals)} ${unitShown(unit)}`;
  return [words, `${told(now)}, was ${told(before)}`];
}

/** Examples: "Insulation", "40 mm, was 30 mm; net 71.69 m², was 60.00 m²"; "Sleeves on heating pipes", "none, was 6 sleeves" */
function orderLine({ item, unit, decimals, before, now }: OrderChange): Line {
  const net = (version: OrderVersion) => `${figure(version.net, decimals)} ${unit}`;
  const whole = (version: OrderVersion | null) =>
    version === null
      ? 'none'
      : [version.spec, `net ${net(version)}`, version.order].filter((part) => part !== '').join(', ');
  if (before === null || now === null) return [item, `${whole(now)}, was ${whole(before)}`];
  const parts = (
    [
      ['', now.spec, before.spec],
      ['net ', net(now), net(before)],
      ['order ', now.order, before.order],
    ] as const
  ).flatMap(([start, is, was]) => (is === was ? [] : [`${start}${is || 'none'}, was ${was || 'none'}`]));
  // with its allowance alone another
  return [item, parts.length === 0 ? 'another allowance' : parts.join('; ')];
}

/** About the height of a row, px. */
const rowPx = 24;

function JointChanges({ comparison: { joints } }: { readonly comparison: Comparison }) {
  const id = useId();
  const changed = joints.filter(({ what }) => what !== 'same');
  if (changed.length === 0) return null;
  return (
    <>
      <h4 id={id}>Joints that changed</h4>
      <ul className="small changes" aria-labelledby={id}>
        <Stretches count={changed.length} rowPx={rowPx}>
          {(i) => {
            const change = changed[i];
            if (change === undefined) return null;
            const { what, before, now, movedMm } = change;
            const by = movedMm > 0 ? ` by ${figure(movedMm, 0)} mm` : '';
            return (
              <li key={`${before?.id} ${now?.id}`}>
                <strong>{now?.id ?? before?.id}</strong> {(now ?? before)?.name}: {becameWords[what]}
                {by}
              </li>
            );
          }}
        </Stretches>
      </ul>
    </>
  );
}
