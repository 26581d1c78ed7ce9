import { papersOf } from '../plan/papers.ts';
import { doorwaysTable } from './doorway-sheet.ts';
import { type PaperSource, perSource } from './paper-source.ts';
import { pourTable } from './pour-papers.ts';
import { registerTable } from './register.ts';
import { revisionsTable } from './revisions-table.ts';
import { setOutTable } from './setting-out-table.ts';
import type { Table } from './table.ts';
import { baysTable, findingsTable, jointsTable, quantitiesTable } from './tables.ts';
import { takeOffOf, takeoffBaysTable, takeoffRoomsTable, takeoffTable } from './takeoff-tables.ts';
import { cutsTable, tilesTable } from './tile-tables.ts';

/** A table by its name before it is made: a large floor has long ones. */
export interface NamedTable {
  readonly name: string;
  readonly words: string;
  readonly make: (source: PaperSource) => Table;
}

/** Printed, in the workbook and by itself, a table is the same. */
function madeOnce(list: readonly NamedTable[]): readonly NamedTable[] {
  return list.map((table) => ({ ...table, make: perSource(table.make) }));
}

const tables = madeOnce([
  { name: 'take-off', words: 'Take-off', make: (source) => takeoffTable(takeOffOf(source)) },
  {
    name: 'take-off-rooms',
    words: 'Take-off, room by room',
    make: (source) => takeoffRoomsTable(source, takeOffOf(source)),
  },
  {
    name: 'take-off-bays',
    words: 'Take-off, bay by bay',
    make: (source) => takeoffBaysTable(source, takeOffOf(source)),
  },
  { name: 'quantities', words: 'Quantities', make: quantitiesTable },
  { name: 'joints', words: 'Joint list', make: jointsTable },
  { name: 'joint-register', words: 'Joint register', make: registerTable },
  { name: 'setting-out', words: 'Setting out of joints', make: setOutTable },
  { name: 'bays', words: 'Bay list', make: baysTable },
  { name: 'doorways', words: 'Doorways', make: doorwaysTable },
  { name: 'pour-plan', words: 'Pour plan', make: pourTable },
  { name: 'findings', words: 'Findings', make: findingsTable },
]);
const tileTables = madeOnce([
  { name: 'tiles', words: 'Tiles', make: tilesTable },
  { name: 'cuts', words: 'Cuts at walls', make: cutsTable },
]);

const revisionTables = madeOnce([{ name: 'revisions', words: 'Revisions', make: revisionsTable }]);

/** Tables of a plan in the order of the workbook's sheets. */
export function planTables({ file, analysis }: PaperSource): readonly NamedTable[] {
  return [
    ...tables,
    ...(analysis.tiles === null ? [] : tileTables),
    ...(papersOf(file).revisions.length === 0 ? [] : revisionTables),
  ];
}
