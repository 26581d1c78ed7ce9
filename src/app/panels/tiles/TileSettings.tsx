import type { Change } from '../../../plan/edits/fields.ts';
import { type TilesFile, type TilesOf, tileOriginMoved, tilesChanged, tilesFind } from '../../../plan/edits/tiles.ts';
import type { TileBond, TileGrid } from '../../../plan/plan.ts';
import { type DrawingStartKey, defaults, drawingStarts, rules } from '../../../plan/reference.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { FARTHEST_MM } from '../../../plan/snap.ts';
import { tileModule } from '../../../plan/tile-grid.ts';
import { FieldPair, LengthField } from '../../card/LengthField.tsx';
import { offSheet, type Tried, triedUnless } from '../../card/put.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { figureShort } from '../../parts/format.ts';
import { NumberField } from '../../parts/NumberField.tsx';
import { PlanNumber } from '../../parts/PlanNumber.tsx';
import { tileRanges } from '../../parts/ranges.ts';
import { figureRange, SourceText } from '../../parts/SourceNote.tsx';
import { usePlan } from '../../state/hooks.ts';
import { commit, planShown } from '../../state/planStore.ts';
import { tilesOfWords } from './names.ts';

interface SettingsProps {
  readonly of: TilesOf;
  readonly grid: TileGrid;
}

/** Size, bond, place and order of tiles: those of the floor and those of a field alike. */
export function TileSettings(props: SettingsProps) {
  return (
    <>
      <SideField {...props} label="Length" side="lengthMm" start="tileLengthMm" />
      <SideField {...props} label="Width" side="widthMm" start="tileWidthMm" />
      <GroutField {...props} />
      <BondFields {...props} />
      <AngleField {...props} />
      <SetOutFields {...props} />
      <OrderFields {...props} />
    </>
  );
}

/** Puts a figure of the tiles in. */
function put(of: TilesOf, words: string, change: Change<TilesFile>, gesture: string | null = null): void {
  commit(`${words}${tilesOfWords(of)}`, (file) => tilesChanged(file, of, change), gesture);
}

interface SideProps extends SettingsProps {
  readonly label: string;
  readonly side: 'lengthMm' | 'widthMm';
  readonly start: DrawingStartKey;
}

function SideField({ of, grid, label, side, start }: SideProps) {
  const figure = drawingStarts[start];
  const name = `Tile ${label.toLowerCase()}`;
  return (
    <NumberField
      label={label}
      name={`${name}${tilesOfWords(of)}`}
      unit="mm"
      source={figure.source}
      range={figureRange(figure)}
      value={grid[side]}
      {...tileRanges.side}
      step={10}
      decimals={1}
      onChange={(mm, gesture) => put(of, `${name} ${figureShort(mm, 1)} mm`, { [side]: mm }, gesture)}
    />
  );
}

function GroutField({ of, grid }: SettingsProps) {
  return (
    <PlanNumber
      figure="groutMm"
      label="Grout line"
      name={`Grout line${tilesOfWords(of)}`}
      value={grid.groutMm}
      {...tileRanges.grout}
      step={1}
      decimals={1}
      edit={(file, groutMm) => tilesChanged(file, of, { groutMm })}
    />
  );
}

const bondWords: Readonly<Record<TileBond, string>> = {
  straight: 'Straight',
  half: 'Half',
  third: 'Third',
  offset: 'Own offset',
  herringbone: 'Herringbone',
};
const bonds = (Object.keys(bondWords) as TileBond[]).map((value) => ({ value, words: bondWords[value] }));

function BondFields({ of, grid }: SettingsProps) {
  const { bond, unknownBond, shiftMm } = grid;
  const unknown = { value: 'unknown' as const, words: `${unknownBond}, not known here` };
  return (
    <>
      <ChoiceField
        label="Bond"
        value={unknownBond === null ? bond : 'unknown'}
        choices={unknownBond === null ? bonds : [unknown, ...bonds]}
        onChange={(next) => {
          if (next !== 'unknown') put(of, `${bondWords[next]} bond`, { bond: next });
        }}
        source={<SourceText source={rules.offsetMostShare.source} />}
      />
      {bond === 'offset' && (
        <NumberField
          label="Offset"
          name={`Offset of each course${tilesOfWords(of)}`}
          unit="mm"
          source={defaults.tileOffsetShare.source}
          range={null}
          value={shiftMm}
          least={0}
          most={tileModule(grid)[0]}
          step={10}
          decimals={1}
          onChange={(offsetMm, gesture) => put(of, `Offset ${figureShort(offsetMm, 1)} mm`, { offsetMm }, gesture)}
        />
      )}
    </>
  );
}

const quickDeg = [0, 45, 90] as const;

function AngleField({ of, grid: { angleDeg } }: SettingsProps) {
  const name = `Angle${tilesOfWords(of)}`;
  const turn = (deg: number, gesture: string | null = null) =>
    put(of, `Tiles turned to ${figureShort(deg, 2)} degrees`, { angleDeg: deg }, gesture);
  return (
    <>
      <NumberField
        label="Angle"
        name={name}
        unit="°"
        source="plan-data"
        range={null}
        value={angleDeg}
        {...tileRanges.angle}
        step={5}
        decimals={2}
        onChange={turn}
      />
      <fieldset className="quick" aria-label={`${name}, usual`}>
        {quickDeg.map((deg) => (
          <button
            key={deg}
            type="button"
            className="button framed"
            aria-pressed={angleDeg === deg}
            onClick={() => turn(deg)}
          >
            {deg}°
          </button>
        ))}
      </fieldset>
    </>
  );
}

/** They follow the set-out point while it is dragged. */
function SetOutFields({ of, grid }: SettingsProps) {
  const origin = usePlan((state) => tilesFind(planShown(state), of)?.origin) ?? grid.origin;
  return (
    <FieldPair>
      {(['across', 'down'] as const).map((way, axis) => (
        <LengthField
          key={way}
          label={`Set-out, ${way}`}
          of={of === null ? 'the tiles' : `field ${of}`}
          valueMm={origin[axis as 0 | 1]}
          leastMm={-FARTHEST_MM}
          edit={(file, mm) => setOutAt(file, of, axis as 0 | 1, mm)}
        />
      ))}
    </FieldPair>
  );
}

function setOutAt(file: PlanFile, of: TilesOf, axis: 0 | 1, mm: number): Tried {
  const [x, y] = tilesFind(file, of)?.origin ?? [0, 0];
  if (mm === (axis === 0 ? x : y)) return file;
  return triedUnless(offSheet, file, tileOriginMoved(file, of, axis === 0 ? [mm, y] : [x, mm]));
}

/** What is ordered beyond the tiles that are laid. Straight, askew and in a herringbone it has one source. */
function OrderFields({ of, grid }: SettingsProps) {
  const start = defaults.tileAllowanceStraight;
  return (
    <>
      <NumberField
        label="Allowance"
        name={`Allowance${tilesOfWords(of)}`}
        unit="%"
        source={start.source}
        range={figureRange(start)}
        value={Number((grid.allowance * 100).toFixed(1))}
        {...tileRanges.allowance}
        step={1}
        decimals={1}
        onChange={(percent, gesture) =>
          put(of, `Allowance ${figureShort(percent, 1)} %`, { allowance: Number((percent / 100).toFixed(4)) }, gesture)
        }
      />
      <NumberField
        label="Tiles in a box"
        name={`Tiles in a box${tilesOfWords(of)}`}
        unit=""
        source="The box, or the data sheet of the tiles"
        range={null}
        value={grid.tilesPerBox}
        {...tileRanges.perBox}
        step={1}
        decimals={0}
        refusal={(count) => (Number.isInteger(count) ? null : 'Enter a whole number of tiles.')}
        onChange={(tilesPerBox, gesture) => put(of, `${tilesPerBox} tiles in a box`, { tilesPerBox }, gesture)}
        onClear={(gesture) => put(of, 'Tiles in a box not known', { tilesPerBox: undefined }, gesture)}
      />
    </>
  );
}
