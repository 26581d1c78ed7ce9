import { orderTold, priceTold } from '../../../documents/compare-paper-settings.ts';
import { planPriceChanged } from '../../../plan/edits/settings.ts';
import {
  currencyLetters,
  currencyShown,
  type Ordering,
  type OrderStartKey,
  orderingOf,
  orderStarts,
  type PriceKey,
  priceMostDigits,
} from '../../../plan/papers.ts';
import type { Figure } from '../../../plan/reference.ts';
import { Fold } from '../../parts/Fold.tsx';
import { figureShort } from '../../parts/format.ts';
import { NumberField } from '../../parts/NumberField.tsx';
import { figureRange } from '../../parts/SourceNote.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { usePlan, usePlanResolved } from '../../state/hooks.ts';
import { commit } from '../../state/planStore.ts';
import { layersNote, layersRead, layersText } from './insulation-layers.ts';
import { paperPut } from './put.ts';

type Key = Exclude<OrderStartKey, 'mostM3PerDay'>;

/** What can be entered of each: a share is entered in percent. */
const fields: readonly {
  readonly key: Key;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly decimals: number;
}[] = [
  { key: 'stripRollM', unit: 'm', least: 1, most: 1000, step: 5, decimals: 1 },
  { key: 'stripTrimMm', unit: 'mm', least: 0, most: 500, step: 5, decimals: 0 },
  { key: 'stripOverlapMm', unit: 'mm', least: 0, most: 1000, step: 10, decimals: 0 },
  { key: 'stripAllowance', unit: '%', least: 0, most: 100, step: 1, decimals: 1 },
  { key: 'profileBarM', unit: 'm', least: 0.1, most: 100, step: 0.5, decimals: 2 },
  { key: 'profileSpares', unit: '', least: 0, most: 1000, step: 1, decimals: 0 },
  { key: 'sealantAllowance', unit: '%', least: 0, most: 100, step: 1, decimals: 1 },
  { key: 'cartridgeMl', unit: 'ml', least: 1, most: 100_000, step: 10, decimals: 0 },
  { key: 'perimeterShare', unit: '%', least: 0, most: 100, step: 10, decimals: 0 },
  { key: 'backerAllowance', unit: '%', least: 0, most: 100, step: 1, decimals: 1 },
  { key: 'sleevesPerJoint', unit: '', least: 0, most: 1000, step: 1, decimals: 0 },
  { key: 'sleeveSpares', unit: '', least: 0, most: 10_000, step: 1, decimals: 0 },
  { key: 'screedAllowance', unit: '%', least: 0, most: 100, step: 1, decimals: 1 },
  { key: 'loadM3', unit: 'm³', least: 0.01, most: 100, step: 1, decimals: 2 },
  {
    key: 'insulationAllowance',
    unit: '%',
    least: 0,
    most: 100,
    step: 1,
    decimals: 1,
  },
  { key: 'membraneLapMm', unit: 'mm', least: 0, most: 2000, step: 10, decimals: 0 },
  { key: 'membraneWidthM', unit: 'm', least: 0.1, most: 100, step: 0.5, decimals: 2 },
  { key: 'membraneRollM2', unit: 'm²', least: 1, most: 100_000, step: 10, decimals: 0 },
  { key: 'membraneUpturnMm', unit: 'mm', least: 0, most: 1000, step: 10, decimals: 0 },
];

const prices = Object.entries(priceTold) as readonly (readonly [PriceKey, string])[];

/** Packs, allowances and prices that the order is worked out with. */
export function OrderGroup() {
  const file = usePlan((state) => state.history.present.file);
  const ordering = orderingOf(file);
  return (
    <section className="group">
      <h3>What the order is worked out with</h3>
      <Fold summary="Packs and allowances">
        {fields.map((field) => (
          <OrderNumber key={field.key} field={field} ordering={ordering} />
        ))}
        <InsulationLayers ordering={ordering} />
        <InsulationPack ordering={ordering} />
      </Fold>
      <Fold summary="Prices">
        <TextField
          label="Currency"
          value={ordering.currency}
          placeholder="Such as EUR"
          refusal={currencyRefusal}
          onChange={(words) => paperPut('order', 'Currency', { currency: words === '' ? undefined : words })}
        />
        {prices.map(([key, label]) => (
          <NumberField
            key={key}
            label={label}
            name={`Price: ${label}`}
            unit={currencyUnit(ordering.currency)}
            source="plan-data"
            range={null}
            value={ordering.prices[key] ?? null}
            least={0}
            most={1e9}
            step={1}
            decimals={priceMostDigits}
            refusal={priceRefusal}
            onChange={(value, gesture) =>
              commit(`Price: ${label}`, (present) => planPriceChanged(present, { [key]: value }), gesture)
            }
            onClear={(gesture) =>
              commit(`Price: ${label}`, (present) => planPriceChanged(present, { [key]: undefined }), gesture)
            }
          />
        ))}
      </Fold>
    </section>
  );
}

/** In the field of a price; a longer one would leave no room for the figure, and stands above. */
function currencyUnit(currency: string): string {
  const shown = currencyShown(currency);
  return [...shown].length > 4 ? '' : shown;
}

function currencyRefusal(words: string): string | null {
  return [...words].length > currencyLetters ? `Enter at most ${currencyLetters} characters, such as EUR.` : null;
}

/** A price is told as it was typed, or not taken. */
function priceRefusal(price: number): string | null {
  return Number(price.toFixed(priceMostDigits)) === price
    ? null
    : `Enter at most ${priceMostDigits} digits after the decimal mark.`;
}

interface OrderNumberProps {
  readonly field: (typeof fields)[number];
  readonly ordering: Ordering;
}

function OrderNumber({ field: { key, ...field }, ordering }: OrderNumberProps) {
  const { unit, decimals } = field;
  const [label] = orderTold[key];
  const start = orderStarts[key];
  const by = unit === '%' ? 100 : 1;
  return (
    <NumberField
      {...field}
      label={label}
      source={start.source}
      range={unit === '%' ? percentRange(start) : figureRange(start)}
      value={Number((ordering[key] * by).toFixed(decimals))}
      refusal={(value) => (decimals > 0 || unit !== '' || Number.isInteger(value) ? null : 'Enter a whole number.')}
      onChange={(value, gesture) =>
        paperPut('order', `${label} ${figureShort(value, decimals)} ${unit}`.trim(), { [key]: value / by }, gesture)
      }
    />
  );
}

/** Of a share that is entered in percent. */
function percentRange({ range, ...figure }: Figure): string | null {
  const percent = range?.map((share) => Number((share * 100).toFixed(1))) ?? null;
  return figureRange({ ...figure, unit: '%', range: percent });
}

function InsulationLayers({ ordering: { insulationLayersMm } }: { readonly ordering: Ordering }) {
  const { rooms } = usePlanResolved();
  const insulationsMm = rooms.map(({ buildUp }) => buildUp?.insulationMm ?? null);
  return (
    <TextField
      label="Insulation layers"
      value={layersText(insulationLayersMm)}
      placeholder="Such as 20 + 10"
      note={layersNote(insulationLayersMm, insulationsMm)}
      refusal={(text) => {
        const reading = text === '' ? null : layersRead(text);
        return reading?.kind === 'refused' ? reading.why : null;
      }}
      onChange={layersPut}
    />
  );
}

/** Makers differ too much for one to start from: without it the order is in m². */
function InsulationPack({ ordering: { insulationPackM2 } }: { readonly ordering: Ordering }) {
  const [label] = orderTold.insulationPackM2;
  return (
    <NumberField
      label={label}
      unit="m²"
      source="plan-data"
      range={null}
      value={insulationPackM2}
      least={0.01}
      most={10_000}
      step={1}
      decimals={2}
      onChange={(value, gesture) =>
        paperPut('order', `${label} ${figureShort(value, 2)} m²`, { insulationPackM2: value }, gesture)
      }
      onClear={(gesture) => paperPut('order', `No ${label.toLowerCase()}`, { insulationPackM2: undefined }, gesture)}
    />
  );
}

function layersPut(text: string): void {
  const reading = layersRead(text);
  if (text === '') paperPut('order', 'Insulation in one layer', { insulationLayersMm: undefined });
  else if (reading.kind === 'layers') {
    const { layersMm } = reading;
    paperPut('order', `Insulation ${layersText(layersMm)} mm`, { insulationLayersMm: layersMm });
  }
}
