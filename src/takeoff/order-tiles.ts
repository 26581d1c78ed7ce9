import type { TileFieldReport } from '../plan/analysis.ts';
import { roundedText } from '../plan/figure-words.ts';
import { takeOffUnit } from '../plan/take-off.ts';
import type { OrderFloor } from './order-floor.ts';
import { cellsSum, figureWords, type OrderDraft, orderOfCount, shareWords } from './order-line.ts';

/** Tiles, a line for each field, as the tiling counts them. */
export function tileDrafts(of: OrderFloor): readonly OrderDraft[] {
  const fields = of.analysis.tiles?.fields ?? [];
  return fields.flatMap((field, i) => {
    const name = fields.length === 1 ? 'Tiles' : `Tiles, field ${i + 1} of ${fields.length}`;
    return field.laid === 0 ? [] : [tileDraft(of, field, name)];
  });
}

function tileDraft({ plan, floor }: OrderFloor, field: TileFieldReport, item: string): OrderDraft {
  const { id, laid, order, boxes, allowance, lengthMm, widthMm, groutMm, bond } = field;
  const own = floor.filter(({ room }) => field.rooms.includes(room));
  const floorM2 = cellsSum(own);
  const perBox = (id === null ? plan.tiles : plan.tileFields.find((each) => each.id === id))?.tilesPerBox ?? null;
  const [length, width, grout] = [lengthMm, widthMm, groutMm].map((mm) => roundedText(mm, 1));
  return {
    key: `tiles:${id ?? ''}`,
    group: 'tiles',
    item,
    spec: `${length} \u00d7 ${width} mm, grout ${grout} mm, ${bond === 'herringbone' ? bond : `${bond} bond`}`,
    unit: 'pieces',
    net: laid,
    allowance: shareWords(allowance, 'for cutting and breakage'),
    gross: order,
    order:
      boxes === null || perBox === null
        ? orderOfCount(order, 'tiles', '')
        : orderOfCount(boxes, 'boxes', figureWords(perBox, takeOffUnit(perBox, 'tiles'))),
    paid: { key: 'tile', per: 'tile', amount: boxes === null || perBox === null ? order : boxes * perBox },
    cells: own.map((cell) => ({ ...cell, amount: (laid * cell.amount) / floorM2 })),
    refs: field.rooms.map((room) => ({ kind: 'room', id: room, rooms: [room] })),
    notes: ['Tiles to lay, off-cuts used again; shared out to rooms and bays by their floor.'],
    sources: ['tile-allowance'],
  };
}
