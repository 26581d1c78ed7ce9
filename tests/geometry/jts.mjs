// Overlay of regions by an outside library, an oracle for tests alone. Its own declarations do not pass the compiler, so that
// this file is plain JavaScript with `jts.d.mts` beside it.
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import BufferParameters from 'jsts/org/locationtech/jts/operation/buffer/BufferParameters.js';
import SnapIfNeededOverlayOp from 'jsts/org/locationtech/jts/operation/overlay/snap/SnapIfNeededOverlayOp.js';
import Polygonizer from 'jsts/org/locationtech/jts/operation/polygonize/Polygonizer.js';

const factory = new GeometryFactory();

function linearRing(ring) {
  return factory.createLinearRing([...ring, ring[0]].map(([x, y]) => new Coordinate(x, y)));
}

function geometryOf(regions) {
  const polygons = regions.map(({ outline, holes }) =>
    factory.createPolygon(linearRing(outline), holes.map(linearRing)),
  );
  return polygons.length === 1 ? polygons[0] : factory.createMultiPolygon(polygons);
}

const operations = {
  intersect: SnapIfNeededOverlayOp.intersection,
  subtract: SnapIfNeededOverlayOp.difference,
  union: SnapIfNeededOverlayOp.union,
};

export function jtsArea(operation, a, b) {
  return operations[operation](geometryOf(a), geometryOf(b)).getArea();
}

export function jtsPieces(operation, a, b) {
  return regionsOf(operations[operation](geometryOf(a), geometryOf(b)));
}

export function jtsClosed(regions, gap) {
  const corners = new BufferParameters();
  corners.setJoinStyle(BufferParameters.JOIN_MITRE);
  const grown = BufferOp.bufferOp(geometryOf(regions), gap / 2, corners);
  return regionsOf(BufferOp.bufferOp(grown, -gap / 2, corners));
}

function regionsOf(result) {
  const ringOf = (line) =>
    line
      .getCoordinates()
      .slice(1)
      .map(({ x, y }) => [x, y]);
  return Array.from({ length: result.getNumGeometries() }, (_, i) => result.getGeometryN(i))
    .filter((piece) => piece.getGeometryType() === 'Polygon' && !piece.isEmpty())
    .map((piece) => ({
      outline: ringOf(piece.getExteriorRing()),
      holes: Array.from({ length: piece.getNumInteriorRing() }, (_, i) => ringOf(piece.getInteriorRingN(i))),
    }));
}

export function jtsFaceAreas(segments) {
  const polygonizer = new Polygonizer();
  for (const ends of segments) {
    polygonizer.add(factory.createLineString(ends.map(([x, y]) => new Coordinate(x, y))));
  }
  return polygonizer
    .getPolygons()
    .toArray()
    .map((polygon) => polygon.getArea());
}
