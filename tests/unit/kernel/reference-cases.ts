import { readFileSync } from 'node:fs';
import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';

/** A row of a certain pedigree as the reference files write it. */
interface Row {
  readonly id: string;
  readonly sire: string | null;
  readonly dam: string | null;
}

interface Candidate {
  readonly id: string | null;
  readonly probability: string;
}

interface WrittenClutch {
  readonly id: string;
  readonly members: readonly string[];
  readonly candidateSires?: readonly Candidate[];
  readonly candidateDams?: readonly Candidate[];
  readonly candidatePairs?: readonly { readonly a: string; readonly b: string; readonly probability: string }[];
}

/** A case of a reference file; what is expected of it is read field by field by the tests. */
export interface ReferenceCase {
  readonly name: string;
  readonly title: string;
  readonly citation: string;
  readonly pedigree?: readonly Row[];
  readonly animals?: readonly Row[];
  readonly clutches?: readonly WrittenClutch[];
  readonly convention?: 'gamete-pool' | 'noninbred-founders';
  readonly groups?: readonly {
    readonly id: string;
    readonly baseKinship: string;
    readonly members: readonly string[];
  }[];
  readonly betweenGroups?: readonly { readonly a: string; readonly b: string; readonly kinship: string }[];
  readonly living?: readonly string[];
  readonly wild?: readonly string[];
  readonly notes?: string;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly published?: readonly Published[] | null;
  readonly wrongIfClutchMatesAreTreatedAsIndependent?: {
    readonly inbreeding?: Readonly<Record<string, Exact>>;
    readonly kinship?: readonly (Exact & { readonly a: string; readonly b: string })[];
  };
}

/** A value that a source prints. */
export interface Published {
  readonly quantity: string;
  readonly value: unknown;
  readonly decimals: number | null;
  readonly generation?: number;
  readonly computed?: Exact;
}

/** An exact number with its nearest double. */
export interface Exact {
  readonly fraction: string;
  readonly decimal: number;
}

/** The reference files that hold cases. */
export const REFERENCE_FILES = [
  'regular-systems',
  'worked-pedigrees',
  'habsburg',
  'uncertain-parentage',
  'founder-groups',
  'population-measures',
  'ancestral-inbreeding',
] as const;

/** Reads the cases of one file of tests/reference. */
export function readCases(file: (typeof REFERENCE_FILES)[number]): readonly ReferenceCase[] {
  const text = readFileSync(new URL(`../../reference/${file}.json`, import.meta.url), 'utf8');
  return (JSON.parse(text) as { cases: ReferenceCase[] }).cases;
}

/** A fraction such as "5/48" as a number. */
export function fraction(text: string): number {
  const [numerator, denominator = '1'] = text.split('/');
  return Number(numerator) / Number(denominator);
}

/** A case laid out for the kernel, with its names. */
export interface LaidOut {
  readonly pedigree: Pedigree;
  readonly ids: readonly string[];
  readonly indexOf: (id: string) => number;
}

/**
 * Lays a case out: every row with a parent is a clutch of its own, written clutches keep their members together, groups
 * become sources. Wild founders get a source of their own, so that a filial generation can be told.
 */
export function layOut(reference: ReferenceCase): LaidOut {
  const rows = reference.pedigree ?? reference.animals ?? [];
  const written = reference.clutches ?? [];
  const listed = new Set(rows.map(({ id }) => id));
  const members = written.flatMap((clutch) => clutch.members.filter((id) => !listed.has(id)));
  const ids = [...listed, ...members];
  const places = new Map(ids.map((id, place) => [id, place]));
  const indexOf = (id: string): number => {
    const place = places.get(id);
    if (place === undefined) throw new Error(`${reference.name} has no animal ${id}`);
    return place;
  };
  const numberOf = (id: string | null): number => (id === null ? -1 : indexOf(id));
  const clutchOf = new Int32Array(ids.length).fill(-1);
  const clutches: { sire: number; dam: number; probability: number }[][] = [];
  for (const clutch of written) {
    for (const id of clutch.members) clutchOf[indexOf(id)] = clutches.length;
    clutches.push(candidatePairs(clutch, numberOf));
  }
  for (const { id, sire, dam } of rows)
    if ((sire !== null || dam !== null) && clutchOf[indexOf(id)] === -1) {
      clutchOf[indexOf(id)] = clutches.length;
      clutches.push([{ sire: numberOf(sire), dam: numberOf(dam), probability: 1 }]);
    }
  const pairs = clutches.flat();
  return {
    ids,
    indexOf,
    pedigree: {
      clutchOf,
      ...laidOutSources(reference, ids),
      pairStart: Int32Array.from([0, ...clutches.map((_, last) => clutches.slice(0, last + 1).flat().length)]),
      pairSire: Int32Array.from(pairs, ({ sire }) => sire),
      pairDam: Int32Array.from(pairs, ({ dam }) => dam),
      pairProbability: Float64Array.from(pairs, ({ probability }) => probability),
    },
  };
}

function candidatePairs(
  { candidateSires = [], candidateDams = [], candidatePairs: joint }: WrittenClutch,
  numberOf: (id: string | null) => number,
): { sire: number; dam: number; probability: number }[] {
  if (joint !== undefined)
    return joint.map(({ a, b, probability }) => ({
      sire: numberOf(a),
      dam: numberOf(b),
      probability: fraction(probability),
    }));
  return candidateSires.flatMap((sire) =>
    candidateDams.map((dam) => ({
      sire: numberOf(sire.id),
      dam: numberOf(dam.id),
      probability: fraction(sire.probability) * fraction(dam.probability),
    })),
  );
}

function laidOutSources(
  { groups = [], betweenGroups = [], convention, wild }: ReferenceCase,
  ids: readonly string[],
): Pick<Pedigree, 'sourceOf' | 'baseKinship' | 'founderInbreeding' | 'sourceKinships'> {
  const groupOf = (id: string): number => groups.findIndex((group) => group.id === id);
  const baseKinship = groups.map((group) => fraction(group.baseKinship));
  if (wild !== undefined) baseKinship.push(0);
  return {
    sourceOf: Int32Array.from(ids, (id) =>
      wild?.includes(id) ? groups.length : groups.findIndex((group) => group.members.includes(id)),
    ),
    baseKinship: Float64Array.from(baseKinship),
    ...(convention === 'noninbred-founders' ? { founderInbreeding: new Float64Array(baseKinship.length) } : {}),
    sourceKinships: betweenGroups.map(({ a, b, kinship }) => ({
      a: groupOf(a),
      b: groupOf(b),
      kinship: fraction(kinship),
    })),
  };
}
