import type { LineOverTime } from '$lib/api/types.ts';
import { columnOf, roomOf, type Room } from './family-rooms.ts';
import { familyKin, familyTimes, type FamilyTimes } from './family-times.ts';
import { lineFamilies, type FamilyKind, type LineFamilies } from './line-families.ts';
import { sizes } from './line-sizes.ts';
import { PlacesAcross } from './places-across.ts';
import { stretchOf, yearHeight } from './plane-spread.ts';

/** A line laid out on a plane: time runs down, one unit is a CSS pixel at natural size. Plain arrays, so that a worker can send it. */
export interface LineLayout {
  readonly width: number;
  readonly height: number;
  /** Decimal year at the top, and height of a year. */
  readonly firstYear: number;
  readonly perYear: number;
  /** Whether the years are years; else, without any date, only an order. */
  readonly isDated: boolean;
  readonly families: {
    readonly id: readonly string[];
    readonly kind: readonly FamilyKind[];
    /** Place of the clutch, source or lone animal in the answer. */
    readonly place: Int32Array;
    /** Middle of the bar, and where the family begins: the ring of a clutch, the symbols of founders. */
    readonly x: Float64Array;
    readonly y: Float64Array;
    readonly width: Float64Array;
    readonly rows: Int32Array;
    /** 1 where the family does not stand at a recorded day. */
    readonly loose: Uint8Array;
    /** What a vague date may mean, as heights on the plane; NaN where the day is known or nothing is. */
    readonly from: Float64Array;
    readonly to: Float64Array;
    /** Its animals are `animals` from start[f] to before start[f+1], by their places in the answer. */
    readonly start: Int32Array;
    readonly animals: Int32Array;
  };
  /** By places in the answer. */
  readonly animals: { readonly x: Float64Array; readonly y: Float64Array; readonly family: Int32Array };
  /** Possible parents, sorted by family. */
  readonly links: { readonly animal: Int32Array; readonly family: Int32Array; readonly probability: Float64Array };
}

/**
 * Lays a line out: each family at its date, parents above their young, families near their kin, none over another. The same for any order
 * of the answer.
 */
export function layoutLine(line: LineOverTime): LineLayout {
  const graph = lineFamilies(line);
  const kin = familyKin(graph);
  const rooms = graph.families.map(roomOf);
  const perYear = yearHeight(graph, rooms);
  const times = familyTimes(graph, kin, (family) => (rooms[family]?.below ?? 0) / perYear + 0.02);
  const isEmpty = times.years.length === 0;
  const earliest = isEmpty ? 2000 : times.years.reduce((one, other) => Math.min(one, other));
  const lastYear = isEmpty ? 2000 : times.years.reduce((one, other) => Math.max(one, other));
  const firstYear = earliest - sizes.head / perYear;
  const tops = times.years.map((year) => (year - firstYear) * perYear);
  const x = drawnApart(
    new PlacesAcross(graph, kin, times, rooms, tops).settle(),
    rooms,
    (lastYear - firstYear) * perYear,
  );
  return assemble(graph, rooms, times, { x, y: tops, firstYear, lastYear, perYear });
}

/** Sets families further apart where the line is narrow, which keeps them off each other, and begins at the left edge. */
function drawnApart(x: Float64Array, rooms: readonly Room[], height: number): Float64Array {
  if (x.length === 0) return x;
  const half = (at: number): number => (rooms[at]?.width ?? 0) / 2;
  const first = x.reduce((one, other) => Math.min(one, other));
  const last = x.reduce((one, other) => Math.max(one, other));
  const by = stretchOf(last - first, height);
  const left = x.reduce((one, middle, at) => Math.min(one, (middle - first) * by - half(at)), Infinity);
  return x.map((middle) => (middle - first) * by - left + sizes.gap);
}

interface Plane {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly firstYear: number;
  readonly lastYear: number;
  readonly perYear: number;
}

function assemble(
  { families, familyOf, links }: LineFamilies,
  rooms: readonly Room[],
  { loose, isDated }: FamilyTimes,
  { x, y, firstYear, lastYear, perYear }: Plane,
): LineLayout {
  const animals = { x: new Float64Array(familyOf.length), y: new Float64Array(familyOf.length), family: familyOf };
  const start = new Int32Array(families.length + 1);
  const all = new Int32Array(familyOf.length);
  let [filled, width, height] = [0, 0, (lastYear - firstYear) * perYear];
  families.forEach((family, at) => {
    const room = rooms[at];
    start[at] = filled;
    family.animals.forEach((animal, place) => {
      all[filled++] = animal;
      const row = Math.floor(place / (room?.abreast ?? 1));
      animals.x[animal] = (x[at] ?? 0) + columnOf(place, room, family.animals.length);
      animals.y[animal] = (y[at] ?? 0) + (family.kind === 'clutch' ? sizes.toYoung : 0) + row * sizes.row;
    });
    width = Math.max(width, (x[at] ?? 0) + (room?.width ?? 0) / 2);
    height = Math.max(height, (y[at] ?? 0) + (room?.below ?? 0));
  });
  start[families.length] = filled;
  const toPlane = (year: number | null): number => (year === null ? NaN : (year - firstYear) * perYear);
  const vague = (end: 'from' | 'to'): Float64Array =>
    Float64Array.from(families, ({ dating }) => (dating.isFirm ? NaN : toPlane(dating[end])));
  return {
    width: width + sizes.gap,
    height: height + sizes.gap,
    ...{ firstYear, perYear, isDated },
    families: {
      id: families.map(({ id }) => id),
      kind: families.map(({ kind }) => kind),
      place: Int32Array.from(families, ({ place }) => place),
      ...{ x, y, loose, start },
      width: Float64Array.from(rooms, (room) => room.width - sizes.gap),
      rows: Int32Array.from(rooms, ({ rows }) => rows),
      from: vague('from'),
      to: vague('to'),
      animals: all,
    },
    animals,
    links: {
      animal: Int32Array.from(links, ({ animal }) => animal),
      family: Int32Array.from(links, ({ family }) => family),
      probability: Float64Array.from(links, ({ probability }) => probability),
    },
  };
}
