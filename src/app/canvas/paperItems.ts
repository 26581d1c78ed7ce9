import type { Drawing, DrawingItem, FillItem } from '../../documents/drawing.ts';
import { labelsPlace } from '../../documents/label-place.ts';
import { boardGridItems, boardPointItems } from '../../documents/point-items.ts';
import { boxWith, placeIsDrawn } from '../../documents/setting-out-sheet.ts';
import type { Point } from '../../geometry/point.ts';
import { regionContains } from '../../geometry/region.ts';
import { type Box, boxOf } from '../../geometry/ring.ts';
import type { Plan } from '../../plan/plan.ts';
import type { PlanFile } from '../../plan/schema.ts';
import type { BoardDrawing } from './drawing.ts';
import { itemsPlace } from './hit.ts';
import { viewportPaperPerPlan } from './viewport.ts';

interface Papers {
  /** As it is shown: its points may be ahead of the drawing. */
  readonly file: PlanFile;
  /** That of the drawing. */
  readonly plan: Plan;
}

/** The drawing with what papers mark on the floor: the symbols that the sheets have, their names seated with all others. */
export function paperItemsOn(board: BoardDrawing, { file, plan }: Papers): BoardDrawing {
  const { drawing } = board;
  if (drawing === null) return board;
  const floor = drawing.box ?? boxOf([[0, 0]]);
  const walls = board.items.flatMap(({ item, box }) =>
    item.shape === 'line' && item.style === 'edge-wall' ? [{ points: item.points, box }] : [],
  );
  const units = drawing.items.filter(isUnit);
  const under = (at: Point) => units.find((unit) => regionContains(unit, at))?.ref ?? null;
  const itemsAt = (paperPerPlan: number) => boardPointItems(file, { scale: 1 / paperPerPlan, floor, walls, under });
  const marks = itemsAt(1).filter(({ shape }) => shape === 'mark');
  if (marks.length + (file.papers?.gridLines?.length ?? 0) === 0) return { ...board, marked: true };
  // near enough to be on the sheets: a survey point down the street must not make the floor small
  const near = marks.flatMap((item) => (item.shape === 'mark' && placeIsDrawn(plan, item.at) ? [item.at] : []));
  const held = new Set(near);
  const lines = drawing.items.filter(({ shape }) => shape !== 'label');
  const namesAt = (paperPerPlan: number): readonly Point[] =>
    labelsPlace({ items: [...lines, ...itemsAt(paperPerPlan)] }, { paperPerPlan })
      .filter(({ label: { seat } }) => seat.kind === 'beside' && seat.line.some((at) => held.has(at)))
      .flatMap(({ at: [x, y], widthMm, heightMm }): readonly Point[] => {
        const [dx, dy] = [widthMm / 2 / paperPerPlan, heightMm / 2 / paperPerPlan];
        return [
          [x - dx, y - dy],
          [x + dx, y + dy],
        ];
      });
  return {
    items: [...board.items, ...itemsPlace(marks)],
    drawing: withItems(drawing, marks),
    marked: true,
    boxAt(pxPerMm) {
      const names = pxPerMm === undefined ? [] : namesAt(viewportPaperPerPlan({ pxPerMm }));
      return boxWith(drawing.box, [...near, ...names]);
    },
    place(pxPerMm: number, within: Box) {
      const paperPerPlan = viewportPaperPerPlan({ pxPerMm });
      const added = [...itemsAt(paperPerPlan), ...boardGridItems(file, 1 / paperPerPlan)];
      return labelsPlace(withItems(drawing, added), { paperPerPlan, within });
    },
  };
}

/** What stands on the floor and can be written on: columns are solid. */
function isUnit(item: DrawingItem): item is FillItem {
  return item.shape === 'fill' && item.layer === 'objects' && item.style !== 'column';
}

function withItems(drawing: Drawing, items: readonly DrawingItem[]): Drawing {
  return { ...drawing, items: [...drawing.items, ...items] };
}
