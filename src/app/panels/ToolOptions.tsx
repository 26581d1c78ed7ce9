import { useId, useState } from 'react';
import { useStore } from 'zustand';
import { type DrawingStartKey, doorwayWidthsMm, drawingStarts } from '../../plan/reference.ts';
import { FARTHEST_MM } from '../../plan/snap.ts';
import { surfaceClass, surfaceFocus } from '../canvas/surface.ts';
import { offSheet } from '../card/put.ts';
import { BarChoice, BarTick } from '../parts/BarChoice.tsx';
import { BarNumber } from '../parts/BarNumber.tsx';
import { FigureWrong } from '../parts/FigureInput.tsx';
import { focusHeir } from '../parts/focus.ts';
import { type LengthUnit, lengthShort, lengthsRead } from '../parts/lengths.ts';
import { rowRange, widthRanges } from '../parts/ranges.ts';
import { useBoard } from '../state/hooks.ts';
import { unitStore } from '../state/unit.ts';
import { handAct } from '../tools/hand.ts';
import type { ToolName } from '../tools/stance.ts';
import { toolStore, wish } from '../tools/toolStore.ts';
import { toolTake } from '../tools/tools.ts';
import type { Wishes } from '../tools/wishes.ts';
import { SetOutOptions } from './tiles/SetOutOptions.tsx';

/** How the tool in hand is set. */
export function ToolOptions({ tool }: { readonly tool: ToolName }) {
  const wishes = useStore(toolStore, (state) => state.wishes);
  const step = useBoard((state) => state.step);
  return (
    <>
      {outlineTools.includes(tool) && <OutlineOptions {...wishes} />}
      {tool === 'room' && (
        <WishNumber figure="wallMm" label="Wall" value={wishes.wallMm} onWish={(wallMm) => wish({ wallMm })} />
      )}
      {tool === 'choose' && step === 'floor' && (
        <BarTick label="Walls move whole" value={wishes.wholeWall} onChange={(wholeWall) => wish({ wholeWall })} />
      )}
      {tool === 'doorway' && <DoorwayOptions {...wishes} />}
      {tool === 'column' && <ColumnOptions {...wishes} />}
      {tool === 'pipe' && (
        <WishNumber figure="pipeMm" label="Diameter" value={wishes.pipeMm} onWish={(pipeMm) => wish({ pipeMm })} />
      )}
      {tool === 'joinery' && <JoineryOptions {...wishes} />}
      {tool === 'structuralJoint' && (
        <BarNumber
          label="Width"
          unit="mm"
          value={wishes.structuralMm}
          {...widthRanges.structuralJoint}
          step={5}
          decimals={0}
          onChange={(structuralMm) => wish({ structuralMm })}
        />
      )}
      {tool === 'sunZone' && (
        <WishNumber figure="sunC" label="Up to" unit="°C" value={wishes.sunC} onWish={(sunC) => wish({ sunC })} />
      )}
      {tool === 'setOut' && <SetOutOptions />}
      {tool === 'paperPoint' && <PointOptions {...wishes} />}
      {tool !== 'choose' && <PlaceField tool={tool} />}
    </>
  );
}

const pointChoices = [
  { value: 'base', words: 'Base point to set out from' },
  { value: 'grid', words: 'Grid line to set out from' },
  { value: 'test', words: 'Test point for dryness' },
  { value: 'access', words: 'Access for the pour' },
] as const;

function PointOptions({ paperPoint, square }: Wishes) {
  return (
    <>
      <BarChoice
        label="For"
        value={paperPoint}
        choices={pointChoices}
        onChange={(next) => {
          wish({ paperPoint: next });
          toolTake('paperPoint');
        }}
      />
      {paperPoint === 'grid' && (
        <BarTick label="Right angles" value={square} onChange={(next) => wish({ square: next })} />
      )}
    </>
  );
}

const outlineTools: readonly ToolName[] = ['room', 'hole', 'joinery', 'slabContact', 'sunZone', 'keepClear'];

interface WishNumberProps {
  readonly figure: DrawingStartKey;
  readonly label: string;
  readonly unit?: string;
  readonly value: number;
  readonly onWish: (value: number) => void;
}

function WishNumber({ figure, label, unit = 'mm', value, onWish }: WishNumberProps) {
  const [least = 1, most = 1e5] = drawingStarts[figure].range ?? [];
  return (
    <BarNumber
      label={label}
      unit={unit}
      value={value}
      least={least}
      most={most}
      step={unit === 'mm' ? 10 : 1}
      decimals={0}
      onChange={onWish}
    />
  );
}

function OutlineOptions({ outline, square }: Wishes) {
  return (
    <>
      <BarChoice
        label="Drawn"
        value={outline}
        choices={[
          { value: 'corners', words: 'Corner by corner' },
          { value: 'rectangle', words: 'As a rectangle' },
        ]}
        onChange={(next) => wish({ outline: next })}
      />
      {outline === 'corners' && (
        <BarTick label="Right angles" value={square} onChange={(next) => wish({ square: next })} />
      )}
    </>
  );
}

function DoorwayOptions({ doorway }: Wishes) {
  const widths = doorwayWidthsMm.includes(doorway.widthMm) ? doorwayWidthsMm : [doorway.widthMm, ...doorwayWidthsMm];
  return (
    <>
      <BarChoice
        label="Usual width"
        value={String(doorway.widthMm)}
        choices={widths.map((mm) => ({ value: String(mm), words: `${mm} mm` }))}
        onChange={(mm) => wish({ doorway: { ...doorway, widthMm: Number(mm) } })}
      />
      <WishNumber
        figure="doorwayWidthMm"
        label="Width"
        value={doorway.widthMm}
        onWish={(widthMm) => wish({ doorway: { ...doorway, widthMm } })}
      />
      <BarTick label="Door leaf" value={doorway.leaf} onChange={(leaf) => wish({ doorway: { ...doorway, leaf } })} />
    </>
  );
}

function ColumnOptions({ column }: Wishes) {
  const change = (part: Partial<Wishes['column']>) => wish({ column: { ...column, ...part } });
  const count = { unit: '', ...rowRange, step: 1, decimals: 0 } as const;
  return (
    <>
      <BarChoice
        label="Shape"
        value={column.shape}
        choices={[
          { value: 'rectangular', words: 'Rectangular' },
          { value: 'round', words: 'Round' },
        ]}
        onChange={(shape) => change({ shape })}
      />
      <WishNumber
        figure="columnWidthMm"
        label={column.shape === 'round' ? 'Diameter' : 'Width'}
        value={column.widthMm}
        onWish={(widthMm) => change({ widthMm })}
      />
      {column.shape === 'rectangular' && (
        <WishNumber
          figure="columnWidthMm"
          label="Depth"
          value={column.depthMm}
          onWish={(depthMm) => change({ depthMm })}
        />
      )}
      <BarNumber
        {...count}
        label="In a row"
        value={column.countX}
        onChange={(countX) => change({ countX: Math.round(countX) })}
      />
      <BarNumber
        {...count}
        label="Rows"
        value={column.countY}
        onChange={(countY) => change({ countY: Math.round(countY) })}
      />
      {column.countX > 1 && (
        <WishNumber
          figure="columnSpacingMm"
          label="Spacing across"
          value={column.spacingXMm}
          onWish={(spacingXMm) => change({ spacingXMm })}
        />
      )}
      {column.countY > 1 && (
        <WishNumber
          figure="columnSpacingMm"
          label="Spacing down"
          value={column.spacingYMm}
          onWish={(spacingYMm) => change({ spacingYMm })}
        />
      )}
    </>
  );
}

export const underChoices = [
  { value: 'insulated', words: 'Insulated floor' },
  { value: 'no-insulation', words: 'No insulation: held to the slab' },
  { value: 'built-off-slab', words: 'Built off the slab' },
] as const;

function JoineryOptions({ joinery }: Wishes) {
  return (
    <>
      <BarChoice
        label="Below it"
        value={joinery.under}
        choices={underChoices}
        onChange={(under) => wish({ joinery: { ...joinery, under } })}
      />
      <BarTick
        label="Bolted through to the slab"
        value={joinery.fixedThrough}
        onChange={(fixedThrough) => wish({ joinery: { ...joinery, fixedThrough } })}
      />
    </>
  );
}

/** With the tool its field goes: the board has the keys from there. */
const placeHeir = focusHeir(`.${surfaceClass}`);

/** Example: "1500 ; 2000 mm" */
function placeExample(unit: LengthUnit): string {
  return `${lengthShort(1500, unit)} ; ${lengthShort(2000, unit)} ${unit}`;
}

/** A place typed in place of a press: "x ; y". */
function PlaceField({ tool }: { readonly tool: ToolName }) {
  const unit = useStore(unitStore, (state) => state.unit);
  const id = useId();
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const put = () => {
    const read = lengthsRead(text, unit);
    const at = read?.kind === 'two' ? read.mm : null;
    const isOff = at?.some((mm) => Math.abs(mm) > FARTHEST_MM);
    const refused = at === null ? `Enter two lengths, such as ${placeExample(unit)}.` : isOff ? offSheet : null;
    setWrong(refused);
    if (at === null || refused !== null) return;
    setText('');
    handAct({ kind: 'place', at });
    // What is drawn goes on by typing on the board; points of the papers are typed one after the other.
    if (tool !== 'paperPoint') surfaceFocus();
  };
  return (
    <label className="bar-field" title={`Sets a point as a press does: across and down, such as ${placeExample(unit)}`}>
      At
      <span className={wrong === null ? 'entry' : 'entry wrong'}>
        <input
          ref={placeHeir}
          className="place-entry"
          aria-label="At: point, across and down"
          placeholder="x ; y"
          autoComplete="off"
          data-typing={text !== ''}
          aria-invalid={wrong !== null}
          aria-describedby={wrong === null ? undefined : `${id}-wrong`}
          value={text}
          onChange={(event) => setText(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') put();
            if (event.key !== 'Escape' || text === '') return;
            event.stopPropagation();
            setText('');
            setWrong(null);
          }}
        />
        <span className="unit">{unit}</span>
      </span>
      <FigureWrong entry={{ id, wrong }} />
    </label>
  );
}
