import type { LineOverTime } from '$lib/api/types.ts';
import { standings } from '$shared/vocabulary.ts';
import { inbreedingFills, keeperFills, standingFillList, type Fill } from './fills.ts';
import type { LineLayout } from './line-layout.ts';

/** What the bars of families show. */
export const barKinds = ['standing', 'inbreeding', 'keeper'] as const;
export type BarKind = (typeof barKinds)[number];

/** The bars of all families: those of family f are parts from start[f] to before start[f+1]; the shares of each sum to 1, or there are none. */
export interface BarParts {
  readonly kind: BarKind;
  readonly fills: readonly Fill[];
  readonly start: Int32Array;
  /** Place in `fills`. */
  readonly fill: Uint8Array;
  readonly share: Float64Array;
  /** For each filling: what it stands for, as the key says it; for keepers their places in the answer. */
  readonly keepers: readonly number[];
}

/** Upper ends of the steps of inbreeding: square roots of 1/8, 1/4, some 3/8 and 1/2, by coefficients that keepers know. */
export const inbreedingSteps = [1 / 64, 1 / 16, 1 / 8, 1 / 4] as const;

const ROUNDING = 1e-6;

/** Place in `inbreedingFills` of a coefficient; of null where nothing is known. */
export function inbreedingStep(inbreeding: number | null): number {
  if (inbreeding === null) return 0;
  if (inbreeding <= ROUNDING) return 1;
  const step = inbreedingSteps.findIndex((end) => inbreeding <= end + ROUNDING);
  return 2 + (step < 0 ? inbreedingSteps.length : step);
}

/** Keepers by their places in the answer, those with the most animals first, by name among equals. */
export function keepersBySize({ animals, keepers }: LineOverTime): number[] {
  const counts = new Int32Array(keepers.length);
  for (const keeper of animals.keeper) if (keeper >= 0) counts[keeper] = (counts[keeper] ?? 0) + 1;
  return keepers
    .map((_, place) => place)
    .sort(
      (one, other) =>
        (counts[other] ?? 0) - (counts[one] ?? 0) ||
        (keepers[one]?.name ?? '').localeCompare(keepers[other]?.name ?? ''),
    );
}

/** What the bars show, for every family at once. */
export function barParts(line: LineOverTime, layout: LineLayout, kind: BarKind): BarParts {
  const keepers = kind === 'keeper' ? keepersBySize(line) : [];
  const fills = { standing: standingFillList, inbreeding: inbreedingFills, keeper: keeperFills }[kind];
  const rank = new Map(keepers.map((keeper, place) => [keeper, Math.min(place, keeperFills.length - 1)]));
  const ofAnimal = (animal: number): number => {
    if (kind === 'inbreeding') return inbreedingStep(line.animals.inbreeding[animal] ?? null);
    return kind === 'keeper'
      ? (rank.get(line.animals.keeper[animal] ?? -1) ?? keeperFills.length - 1)
      : standings.indexOf(line.animals.standing[animal] ?? 'unknown');
  };
  const { families } = layout;
  const start = new Int32Array(families.id.length + 1);
  const [fill, share]: [number[], number[]] = [[], []];
  for (let family = 0; family < families.id.length; family++) {
    start[family] = fill.length;
    const sums =
      kind === 'standing' && families.kind[family] === 'clutch'
        ? standings.map((standing) => line.clutches.standings[standing][families.place[family] ?? -1] ?? 0)
        : countedParts(line, layout, family, fills.length, ofAnimal);
    const whole = sums.reduce((one, other) => one + other, 0);
    sums.forEach((sum, at) => {
      if (whole > 0 && sum / whole > ROUNDING) {
        fill.push(at);
        share.push(sum / whole);
      }
    });
  }
  start[families.id.length] = fill.length;
  return { kind, fills, start, fill: Uint8Array.from(fill), share: Float64Array.from(share), keepers };
}

/** How many animals of a family have each filling; private ones and those of other lines have none. */
function countedParts(
  { animals }: LineOverTime,
  { families }: LineLayout,
  family: number,
  fills: number,
  ofAnimal: (animal: number) => number,
): number[] {
  const counts = new Array<number>(fills).fill(0);
  for (let at = families.start[family] ?? 0; at < (families.start[family + 1] ?? 0); at++) {
    const animal = families.animals[at] ?? -1;
    if (animals.number[animal] === null || (animals.line[animal] ?? -1) >= 0) continue;
    const place = ofAnimal(animal);
    counts[place] = (counts[place] ?? 0) + 1;
  }
  return counts;
}
