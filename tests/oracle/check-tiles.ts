import type { Point } from '../../src/geometry/point.ts';
import type { Joint, TileFieldReport } from '../../src/plan/analysis.ts';
import type { Plan, TileGrid } from '../../src/plan/plan.ts';
import { groutPlace, isLongEnough } from './grout-place.ts';
import { piecesInJoint } from './joint-pieces.ts';
import {
  area,
  at,
  between,
  boundsOf,
  distance,
  distanceToSegments,
  lineSegments,
  rings,
  type Shape,
  segments,
} from './planar.ts';
import { figure, roomFloorIn, type Scene, type SceneBay } from './scene.ts';
import { boundsArea, boundsIn, entersBounds, isTileOn, tilePlane, tilesCount, tilesOver } from './tile-plane.ts';

/** Tiles: joints against the grout, tiles counted one by one, areas, and figures that must agree with each other. */

interface Field {
  readonly id: string | null;
  readonly grid: TileGrid;
  readonly rooms: readonly string[];
}

export function tileFaults(scene: Scene): string[] {
  const { plan, analysis, floor } = scene;
  const fields = expectedFields(plan);
  const reports = analysis.tiles?.fields ?? [];
  const faults: string[] = [];
  const laid = fields.flatMap((field) => {
    const report = reports.find(({ id }) => id === field.id);
    if (report !== undefined) return [{ field, report }];
    const told = analysis.findings.some(
      ({ code, refs }) => code === 'tile-too-fine' && field.rooms.every((room) => refs.includes(room)),
    );
    if (!told) faults.push(`tiles ${field.id}: no report, and no finding says why`);
    return [];
  });
  if (reports.length !== laid.length) faults.push('tiles: a report of a field that the plan does not have');
  if ((analysis.tiles === null) !== (reports.length === 0)) faults.push('tiles: null and fields do not agree');
  faults.push(...sumFaults(scene));
  for (const { field, report } of laid) {
    faults.push(...figureFaults(report), ...wallFaults(scene, report));
    if (String(report.rooms) !== String(field.rooms)) faults.push(`tiles ${field.id}: rooms ${report.rooms}`);
    if (floor.muddled.size === 0) faults.push(...floorFaults(scene, field, report));
  }
  if (floor.muddled.size > 0) return faults;
  const known = laid.map(({ field }) => field);
  return [...faults, ...analysis.joints.flatMap((joint) => jointFaults(scene, known, joint))];
}

/** Each room belongs to the first field that names it, else to the tiles of the whole floor; only stone and ceramic are tiled. */
function expectedFields({ rooms, tiles, tileFields }: Plan): Field[] {
  const tiled = rooms.filter(({ covering }) => covering === 'stone-or-ceramic').map(({ id }) => id);
  const named = (id: string) => tileFields.find((field) => field.rooms.includes(id));
  const own = tileFields.map(
    (grid): Field => ({ id: grid.id, grid, rooms: tiled.filter((room) => named(room) === grid) }),
  );
  const rest = tiles === null ? [] : [{ id: null, grid: tiles, rooms: tiled.filter((id) => named(id) === undefined) }];
  return [...own, ...rest].filter((field) => field.rooms.length > 0);
}

/** The floor of a bay that a field covers. */
function fieldFloorIn(scene: Scene, bay: SceneBay, rooms: readonly string[]): Shape {
  const own = scene.plan.rooms.filter(({ id }) => bay.bay.rooms.includes(id) && rooms.includes(id));
  if (own.length === bay.bay.rooms.length) return bay.shape;
  return own.flatMap((room) => roomFloorIn(scene, bay, room));
}

function floorFaults(scene: Scene, { id, grid, rooms }: Field, report: TileFieldReport): string[] {
  const faults: string[] = [];
  const floors = scene.bays
    .map((bay) => ({ bay, shape: fieldFloorIn(scene, bay, rooms) }))
    .filter(({ shape }) => shape.length > 0 && area(shape) > 0);
  const pieces = floors.map(({ shape }) => shape);
  const outlineMm = pieces
    .flat()
    .flatMap(rings)
    .flatMap(segments)
    .reduce((sum, [a, b]) => sum + distance(a, b), 0);
  const name = `tiles ${id}`;
  const floorMm2 = pieces.reduce((sum, shape) => sum + area(shape), 0);
  const slack = outlineMm + 100;
  if (Math.abs((report.tileM2 + report.groutM2) * 1e6 - floorMm2) > slack)
    faults.push(
      `${name}: tiles and grout ${figure(report.tileM2 + report.groutM2)} m2, floor ${figure(floorMm2 / 1e6)} m2`,
    );
  if (floorMm2 / ((grid.lengthMm + grid.groutMm) * (grid.widthMm + grid.groutMm)) > mostTiles) return faults;
  const count = tilesCount(grid, pieces);
  if (Math.abs(report.tileM2 * 1e6 - count.areaMm2) > slack)
    faults.push(`${name}: ${figure(report.tileM2)} m2 of tiles, should be ${figure(count.areaMm2 / 1e6)} m2`);
  // Tiles thinner than two welds: every edge of the floor enters each by less than a weld.
  if (Math.min(grid.lengthMm, grid.widthMm) < 5) return faults;
  for (const [what, given, [least, most]] of [
    ['whole', report.full, count.whole],
    ['cut', report.cut, count.cut],
    // Whole tiles and pieces, less those in the perimeter joint and those from off-cuts, are the tiles to lay.
    ['in pieces', report.laid - report.full + report.fromOffCuts + report.inJoint, count.pieces],
    ['in the perimeter joint', report.inJoint, piecesInJoint(scene, grid, floors)],
  ] as const) {
    if (given < least || given > most) faults.push(`${name}: ${given} tiles ${what}, should be ${least} to ${most}`);
  }
  if (report.firstTile === null ? report.full > 0 : !isTileOn(grid, report.firstTile, pieces))
    faults.push(`${name}: the first tile is no whole tile on the floor`);
  return faults;
}

/** More than this are not laid one by one in every test. */
const mostTiles = 30_000;

/** Figures of one field against each other. */
function figureFaults(report: TileFieldReport): string[] {
  const { id, full, cut, underHalf, slivers, laid, fromOffCuts, allowance, order, smallestCutMm, inJoint, sawn } =
    report;
  const faults: string[] = [];
  const must = (holds: boolean, what: string) => {
    if (!holds) faults.push(`tiles ${id}: ${what}`);
  };
  const whole = { x0: 0, y0: 0, x1: report.lengthMm, y1: report.widthMm };
  must(
    [full, cut, underHalf, slivers, inJoint, laid, fromOffCuts, order].every((n) => Number.isInteger(n) && n >= 0),
    'counts',
  );
  must(full * boundsArea(whole) <= report.tileM2 * 1e6 + 1, 'the whole tiles are larger than all tiles');
  must(slivers <= underHalf, 'more slivers than cuts under half');
  must(laid >= full && laid <= full + sawn.cut, 'more tiles sawn than cut');
  must(laid - full + fromOffCuts >= sawn.cut, 'fewer pieces than cut tiles');
  for (const what of ['cut', 'underHalf', 'slivers'] as const)
    must(sawn[what] <= report[what] && report[what] - sawn[what] <= inJoint, `${what} less what is in the joint`);
  if (inJoint === 0) must(sawn.smallestCutMm === smallestCutMm, 'the smallest cut that is sawn');
  else must((sawn.smallestCutMm ?? Infinity) >= (smallestCutMm ?? Infinity), 'the smallest cut that is sawn');
  const wanted = laid * (1 + allowance);
  must(order >= wanted - 1e-3 && order < wanted + 1, `${order} tiles ordered for ${laid}`);
  must((smallestCutMm === null) === (underHalf === 0 && sizesOf(report).length === 0), 'smallest cut');
  if (smallestCutMm !== null && sizesOf(report).length > 0)
    must(Math.abs(smallestCutMm - Math.min(...sizesOf(report))) < 1.01, 'the smallest cut is none of the cuts');
  return faults;
}

function sizesOf({ cuts }: TileFieldReport): number[] {
  return cuts.filter(({ along, tiles }) => along !== 'pipe' && tiles > 0).flatMap(({ sizesMm }) => sizesMm);
}

/** The cuts stand along the boundary of their bay, and are smaller than a tile. */
function wallFaults(scene: Scene, { id, cuts, lengthMm, widthMm, groutMm }: TileFieldReport): string[] {
  return cuts.flatMap((cut) => {
    const faults: string[] = [];
    const name = `tiles ${id}: cut along ${cut.object ?? cut.along} in ${cut.bay}`;
    const bay = scene.bayOf.get(cut.bay);
    if (bay === undefined) return [`${name}: no such bay`];
    if (cut.line.some((p) => distanceToSegments(p, bay.sides) > 0.2)) faults.push(`${name} lies off the bay`);
    if ((cut.along === 'joint') !== (cut.room === null)) faults.push(`${name}: room ${cut.room}`);
    const rising = cut.sizesMm.every((size, i) => i === 0 || size > at(cut.sizesMm, i - 1));
    if (cut.sizesMm.length === 0 || !rising) faults.push(`${name}: sizes ${cut.sizesMm}`);
    if (cut.wholeMm > Math.hypot(lengthMm, widthMm) + 0.01) faults.push(`${name}: a whole tile of ${cut.wholeMm}`);
    if (cut.wholeMm < Math.min(lengthMm, widthMm) - 0.01) faults.push(`${name}: a whole tile of ${cut.wholeMm}`);
    const offMm = cut.wholeOffMm ?? 0;
    if (offMm < 0 || offMm > groutMm + 1.01) faults.push(`${name}: whole tiles ${offMm} off it`);
    const isCut = cut.sizesMm.every((size) => size > 0 && size < cut.wholeMm);
    if (isCut !== cut.tiles > 0 && !cut.isAskew) faults.push(`${name}: ${cut.tiles} tiles cut, sizes ${cut.sizesMm}`);
    return faults;
  });
}

/** Counts of all fields together. */
function sumFaults({ analysis: { tiles } }: Scene): string[] {
  if (tiles === null) return [];
  const faults = (['full', 'cut', 'underHalf', 'slivers', 'inJoint'] as const).flatMap((what) => {
    const sum = tiles.fields.reduce((all, field) => all + field[what], 0);
    return sum === tiles[what] ? [] : [`tiles: ${what} ${tiles[what]}, the fields together ${sum}`];
  });
  for (const what of ['cut', 'underHalf', 'slivers'] as const) {
    const sum = tiles.fields.reduce((all, { sawn }) => all + sawn[what], 0);
    if (sum !== tiles.sawn[what]) faults.push(`tiles: ${what} sawn ${tiles.sawn[what]}, the fields together ${sum}`);
  }
  const least = tiles.fields.flatMap(({ smallestCutMm }) => smallestCutMm ?? []);
  if (tiles.smallestCutMm !== (least.length > 0 ? Math.min(...least) : null)) faults.push('tiles: smallest cut of all');
  const main = tiles.fields.find(({ id }) => id === null) ?? tiles.fields[0];
  if (String(main?.origin) !== String(tiles.origin) || main?.angleDeg !== tiles.angleDeg)
    faults.push('tiles: the set-out point is not that of the floor');
  return faults;
}

function jointFaults(scene: Scene, fields: readonly Field[], joint: Joint): string[] {
  const { onGroutLine, offGroutMm } = joint;
  const told: string[] = [];
  const readings = sideReadings(scene, fields, joint).map((sides) => {
    const beside = [...new Set(sides)].filter((field) => field !== null);
    return { beside, off: beside.flatMap(({ grid }) => [groutPlace(joint.line, grid)]) };
  });
  const holds = readings.some(({ beside, off }) => {
    if (beside.length === 0) return onGroutLine === null && offGroutMm === null;
    if (offGroutMm === null || onGroutLine === null) return false;
    // Which grout is nearer is told only where each figure is known.
    if (off.some((place) => place === null)) return true;
    return beside.some(({ grid }) => {
      const least = groutPlace(joint.line, grid);
      const isNearest = off.every((other) => (least?.least ?? 0) <= (other?.most ?? 0) + 0.01);
      if (!isNearest || least === null) return false;
      if (offGroutMm < least.least - 0.05 || offGroutMm > least.most + 0.05) return false;
      const slack = grid.groutMm / 2 + 1;
      return Math.abs(offGroutMm - slack) < 1e-6 || onGroutLine === offGroutMm <= slack;
    });
  });
  if (!holds && isLongEnough(joint.line)) {
    const words = readings.map(({ off }) => off.map((p) => (p === null ? '?' : `${figure(p.least)}`)).join('/') || '-');
    told.push(
      `${joint.id} (${joint.kind}): off the grout by ${offGroutMm}, should be ${[...new Set(words)].join(' or ')}`,
    );
  }
  if (!readings.some(({ beside }) => cutsHold(joint, beside))) told.push(`${joint.id}: cuts ${joint.cutsTiles} tiles`);
  if ((joint.tilesAt === null) !== (onGroutLine === null)) told.push(`${joint.id}: tiles ${joint.tilesAt}`);
  if (joint.tilesAt === 'on-line' && (onGroutLine !== true || joint.cutsTiles > 0))
    told.push(`${joint.id}: said to lie in grout`);
  return told;
}

/** Tiles of the fields beside a joint that it runs through by more than a weld, where it does not lie in their grout. */
function cutsHold({ line, cutsTiles }: Joint, beside: readonly Field[]): boolean {
  let [least, most] = [0, 0];
  for (const { grid } of beside) {
    const place = groutPlace(line, grid);
    const slack = grid.groutMm / 2 + 1;
    if (place === null || place.most > slack - 0.05) most += tilesCrossed(line, grid, 0.95);
    if (place === null || place.least > slack + 0.05) least += tilesCrossed(line, grid, 1.05);
  }
  return cutsTiles >= least && cutsTiles <= most;
}

function tilesCrossed(line: readonly Point[], grid: TileGrid, depthMm: number): number {
  const plane = tilePlane(grid);
  const names = new Set<string>();
  for (const [a, b] of lineSegments(line.map(plane.to))) {
    for (const { name, bounds } of tilesOver(grid, boundsOf([a, b]))) {
      const inner = boundsIn(bounds, depthMm);
      if (inner !== null && entersBounds([a, b], inner)) names.add(name);
    }
  }
  return names.size;
}

/** The fields on both sides of a joint: where it runs along several rooms of a bay, each of them may be meant. */
function sideReadings(scene: Scene, fields: readonly Field[], joint: Joint): (Field | null)[][] {
  const fieldOf = (room: string) => fields.find(({ rooms }) => rooms.includes(room)) ?? null;
  const sides = joint.bays.map((id) => {
    const bay = scene.bayOf.get(id);
    if (bay === undefined) return [null];
    const { rooms } = bay.bay;
    if (new Set(rooms.map(fieldOf)).size === 1) return [fieldOf(at(rooms, 0))];
    const beside = scene.plan.rooms.filter(
      (room) => rooms.includes(room.id) && runsAlong(joint.line, roomFloorIn(scene, bay, room)),
    );
    return [...new Set((beside.length > 0 ? beside.map(({ id }) => id) : rooms).map(fieldOf))];
  });
  return at(sides, 0).flatMap((one) => at(sides, 1).map((two) => [one, two]));
}

function runsAlong(line: readonly Point[], shape: Shape): boolean {
  const sides = shape.flatMap(rings).flatMap(segments);
  return lineSegments(line).some(([a, b]) =>
    [0.02, 0.25, 0.5, 0.75, 0.98].some((share) => distanceToSegments(between(a, b, share), sides) < 1),
  );
}
