import { planLimitsChanged, planRuleSetChosen, planSectionChanged } from '../../plan/edits/settings.ts';
import type { Plan } from '../../plan/plan.ts';
import { type RuleSetKey, ruleSetKeys, ruleSets } from '../../plan/reference.ts';
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { figureShort, limitFigure } from '../parts/format.ts';
import { NumberField } from '../parts/NumberField.tsx';
import { SourceText } from '../parts/SourceNote.tsx';
import { TextField } from '../parts/TextField.tsx';
import { usePlan } from '../state/hooks.ts';
import { commit } from '../state/planStore.ts';

const ruleSetChoices = ruleSetKeys.map((value) => ({ value, words: ruleSets[value].name }));

/** The rule set, what it rests on, and the limits that come of it. */
export function RuleSetGroup({ plan }: { readonly plan: Plan }) {
  const key = plan.ruleSet as RuleSetKey;
  const { note, rows } = ruleSets[key];
  const sources = [...new Set(rows.map((row) => row.source))];
  return (
    <section className="group">
      <ChoiceField
        wide
        label="Rule set"
        value={key}
        choices={ruleSetChoices}
        onChange={(ruleSet) => commit(`Rule set ${ruleSets[ruleSet].name}`, (file) => planRuleSetChosen(file, ruleSet))}
        source={
          <>
            <p className="source-text">{note}</p>
            {sources.map((source) => (
              <SourceText key={source} source={source} />
            ))}
          </>
        }
      />
      <LimitsLine plan={plan} />
      {key === 'data-sheet' && <OwnLimits />}
    </section>
  );
}

/** What the data sheet allows, entered by hand, and the name of the sheet. */
function OwnLimits() {
  const screed = usePlan((state) => state.history.present.file.screed);
  const limits = screed?.limits;
  const own = { source: screed?.source ?? 'The data sheet that you name', range: null, decimals: 2, step: 1 } as const;
  const put = (label: string, change: Parameters<typeof planLimitsChanged>[1], gesture: string) =>
    commit(label, (file) => planLimitsChanged(file, change), gesture);
  return (
    <>
      <NumberField
        {...own}
        label="Largest bay"
        unit="m²"
        value={limits?.areaM2 ?? null}
        least={1}
        most={10_000}
        onChange={(areaM2, gesture) => put(`Largest bay ${figureShort(areaM2, 2)} m²`, { areaM2 }, gesture)}
      />
      <NumberField
        {...own}
        label="Longest side"
        unit="m"
        value={limits?.lengthM ?? null}
        least={1}
        most={200}
        onChange={(lengthM, gesture) => put(`Longest side ${figureShort(lengthM, 2)} m`, { lengthM }, gesture)}
      />
      <NumberField
        {...own}
        label="Length to width"
        unit=": 1"
        value={limits?.aspect ?? null}
        least={1}
        most={100}
        onChange={(aspect, gesture) => put(`Length to width ${figureShort(aspect, 2)} : 1`, { aspect }, gesture)}
      />
      <TextField
        label="Named in"
        value={screed?.source ?? ''}
        placeholder="data sheet of ..."
        onChange={(source) =>
          commit('Name of the data sheet', (file) =>
            planSectionChanged(file, 'screed', { source: source === '' ? undefined : source }),
          )
        }
      />
    </>
  );
}

/** The limits that hold, room by room where they differ. */
function LimitsLine({ plan }: { readonly plan: Plan }) {
  const lines = new Set(
    plan.rooms.map(({ limits: { areaM2, lengthM, aspect } }) => {
      const held = [
        Number.isFinite(areaM2) ? `${limitFigure(areaM2)} m²` : null,
        Number.isFinite(lengthM) ? `${limitFigure(lengthM)} m long` : null,
        Number.isFinite(aspect) ? `${limitFigure(aspect)} : 1` : null,
      ].filter((part) => part !== null);
      return held.length === 0 ? 'no limit but the doorways' : held.join(', ');
    }),
  );
  if (lines.size === 0) return null;
  return <p className="small quiet">A bay at most: {[...lines].join('; or ')}.</p>;
}
