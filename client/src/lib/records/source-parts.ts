import { referenceName } from './reference-name.ts';
import type { OriginShare } from '$lib/api/types.ts';
import { partsOf, type Part } from '$lib/ui/shares.ts';

/** One origin under a part of the label bar. */
export interface SourcePart {
  key: string;
  name: string;
  /** Page of the record; null where there is none. */
  href: string | null;
  /** Printed share in tenths of a per cent; the origins of one standing add up to the printed standing. */
  tenths: number;
  share: number;
}

export interface StandingPart extends Part {
  sources: SourcePart[];
}

/** The parts of a label bar with the origins that make them, both rounded so that what is printed adds up. */
export function standingParts(shares: readonly OriginShare[]): StandingPart[] {
  const parts = partsOf(shares.map((one) => ({ standing: one.standing, share: one.share })));
  return parts.map((part) => {
    const origins = shares.filter((one) => one.standing === part.standing);
    const tenths = roundTo(
      origins.map((one) => one.share),
      part.tenths,
    );
    return {
      ...part,
      sources: origins.map((one, index) => ({ ...originName(one), share: one.share, tenths: tenths[index] ?? 0 })),
    };
  });
}

/** Where genes begin, by name, with the page of its record if there is one. */
export function originName({ source, founder, unknownParentOf }: Omit<OriginShare, 'share' | 'standing'>): {
  key: string;
  name: string;
  href: string | null;
} {
  if (source) return { key: source.id, name: source.title, href: source.isPrivate ? null : `/sources/${source.id}` };
  if (founder)
    return { key: founder.id, name: referenceName(founder), href: founder.isPrivate ? null : `/animals/${founder.id}` };
  const clutch = unknownParentOf ?? { id: '', title: '', isPrivate: true };
  const href = clutch.isPrivate ? null : `/clutches/${clutch.id}`;
  return { key: clutch.id, name: `a parent of the ${clutch.title}`, href };
}

/** Rounds shares to tenths of a per cent by the largest remainder so that they add up to `wanted` tenths. */
export function roundTo(shares: readonly number[], wanted: number): number[] {
  const sum = shares.reduce((total, share) => total + share, 0);
  if (sum <= 0) return shares.map(() => 0);
  const exact = shares.map((share) => (share / sum) * wanted);
  const rounded = exact.map((value) => Math.floor(value + 1e-9));
  let missing = wanted - rounded.reduce((total, value) => total + value, 0);
  const order = exact.map((value, at) => ({ at, rest: value - (rounded[at] ?? 0) }));
  for (const { at } of order.sort((a, b) => b.rest - a.rest || a.at - b.at)) {
    if (missing <= 0) break;
    rounded[at] = (rounded[at] ?? 0) + 1;
    missing -= 1;
  }
  return rounded;
}
