import { createChance } from './chance.ts';
import { type PlanJson, planJson } from './plan-json.ts';
import { rectilinearFloor } from './rectilinear.ts';

/** A plan of so many rooms, no two alike: 4 to 12 corners, 3 to 9 m, each in a field of its own. */
export function manyRoomsPlan(count: number): PlanJson {
  const fieldMm = 10000;
  const across = Math.ceil(Math.sqrt(count));
  const rooms = Array.from({ length: count }, (_, i) => {
    const corners = 4 + 2 * createChance(i + 1).whole(0, 4);
    const floor = rectilinearFloor({ seed: i + 1, leastMm: 3000, mostMm: 9000, corners, core: false, stepMm: 10 });
    const dx = (i % across) * fieldMm;
    const dy = Math.floor(i / across) * fieldMm;
    const outline = floor.outline.map(([x, y]) => [x + dx, y + dy] as const);
    return { id: `r${i}`, name: `Room ${i}`, outline };
  });
  return planJson(`${count} rooms`, rooms);
}
