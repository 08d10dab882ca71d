import {
  citesAppendices,
  claimAspects,
  flagCodes,
  flagSeverities,
  labelKinds,
  photographViews,
  sexBases,
  sexes,
  sourceKinds,
  standings,
  statuses,
} from '../vocabulary.ts';
import { amount, listOf, object, oneOf, orNull, text, whole, yesOrNo, ShapeProblem, type Shaped } from './shape.ts';

/** How many generations of ancestors a sheet tells. */
export const SHEET_GENERATIONS = 4;
/** Most animals on one sheet: all froglets of a good clutch, and some. */
export const SHEET_ANIMALS_MOST = 50;
/** Most ancestors on one sheet, each told once. */
export const SHEET_ANCESTORS_MOST = 1500;

const share = amount(0, 1);
const words = (most: number): ReturnType<typeof text> => text(most, { least: 0 });
const ref = (letter: string): ReturnType<typeof text> =>
  text(8, { pattern: new RegExp(`^${letter}[1-9]\\d*$`, 'u'), wanted: `a reference like ${letter}1` });
const animalRef = ref('a');
const clutchRef = ref('c');
const sourceRef = ref('s');
const edtf = text(40, { pattern: /^[\d.X~?%/-]+$/u, wanted: 'a date (EDTF)' });
const day = text(10, { least: 10, pattern: /^\d{4}-\d\d-\d\d$/u, wanted: 'a calendar day' });
const instant = text(24, {
  least: 24,
  pattern: /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/u,
  wanted: 'an instant in UTC with milliseconds',
});
const standingShares = listOf(object({ standing: oneOf(standings), share }), standings.length);

const label = object({
  name: orNull(words(200)),
  kind: orNull(oneOf(labelKinds)),
  standing: oneOf(standings),
  inWords: words(500),
  shares: standingShares,
  tracedShare: object({ expected: share, least: share }),
  otherLabels: listOf(object({ label: orNull(words(200)), share }), 200),
  flags: listOf(object({ code: oneOf(flagCodes), severity: oneOf(flagSeverities), acknowledged: yesOrNo }), 30),
});

const inbreeding = object({
  expected: share,
  least: share,
  greatest: share,
  nothingKnown: yesOrNo,
  bothParentsKnown: share,
});

const claim = object({
  aspect: oneOf(claimAspects),
  value: words(200),
  standing: oneOf(standings),
  because: words(500),
});

const origin = object({
  kind: oneOf(['source', 'founder', 'unknown-parent']),
  /** Of a founder or source that stands on the sheet. */
  ref: orNull(text(8)),
  standing: oneOf(standings),
  share,
});

const photograph = object({
  /** SHA-256 of the picture as the register serves it, hexadecimal. */
  sha256: text(64, { least: 64, pattern: /^[0-9a-f]+$/u, wanted: 'a SHA-256' }),
  view: orNull(oneOf(photographViews)),
  takenOn: orNull(edtf),
});

const sheetAnimal = object({
  ref: animalRef,
  number: words(20),
  code: orNull(words(80)),
  species: words(200),
  commonName: orNull(words(200)),
  citesAppendix: orNull(oneOf(citesAppendices)),
  sex: oneOf(sexes),
  sexKnownBy: orNull(oneOf(sexBases)),
  status: oneOf(statuses),
  hatched: orNull(edtf),
  outOfWater: orNull(edtf),
  clutch: orNull(clutchRef),
  source: orNull(sourceRef),
  line: orNull(words(200)),
  label,
  inbreeding,
  depth: whole(0, 10_000),
  fullDepth: whole(0, 10_000),
  generationEquivalents: amount(0, 10_000),
  /** Null for a founder. */
  completeness: orNull(object({ generations: whole(1, 100), index: share })),
  filialGeneration: orNull(whole(0, 10_000)),
  origins: listOf(origin, 500),
  claims: listOf(claim, 50),
  photographs: listOf(photograph, 50),
});

const sheetAncestor = object({
  ref: animalRef,
  isPrivate: yesOrNo,
  number: orNull(words(20)),
  sex: orNull(oneOf(sexes)),
  hatched: orNull(edtf),
  species: orNull(words(200)),
  line: orNull(words(200)),
  clutch: orNull(clutchRef),
  source: orNull(sourceRef),
  hasMoreAncestors: yesOrNo,
  standings: standingShares,
});

const sheetClutch = object({
  ref: clutchRef,
  isPrivate: yesOrNo,
  laid: orNull(edtf),
  parents: listOf(
    object({ animal: animalRef, as: oneOf(['sire', 'dam', 'either']), probability: share }),
    SHEET_ANCESTORS_MOST,
  ),
  /** Joint candidates, where the sexes are not known. */
  pairs: orNull(listOf(object({ a: animalRef, b: animalRef, probability: share }), 50)),
  unknownSire: share,
  unknownDam: share,
});

const sheetSource = object({
  ref: sourceRef,
  isPrivate: yesOrNo,
  title: words(300),
  kind: orNull(oneOf(sourceKinds)),
  date: orNull(edtf),
  countryOfExport: orNull(words(2)),
  labelAsReceived: orNull(words(200)),
  permitReferences: listOf(words(200), 50),
  baseKinship: orNull(share),
  claims: listOf(claim, 50),
});

const document = object({
  format: oneOf(['linekeeper-provenance-sheet']),
  version: oneOf([1]),
  number: text(24, { pattern: /^PS-[1-9]\d*-[\dX]$/u, wanted: 'the number of a sheet' }),
  issued: instant,
  /** Last day on which it is valid, in UTC; null: until it is replaced or revoked. */
  validUntil: orNull(day),
  issuer: object({ register: words(120), address: orNull(words(300)), invented: yesOrNo }),
  /** Where anybody can ask whether it still stands; a path alone where the register has no address of its own. */
  lookUp: words(500),
  keeper: orNull(words(120)),
  animals: listOf(sheetAnimal, SHEET_ANIMALS_MOST),
  ancestors: listOf(sheetAncestor, SHEET_ANCESTORS_MOST),
  clutches: listOf(sheetClutch, SHEET_ANCESTORS_MOST),
  sources: listOf(sheetSource, 500),
  cautions: listOf(words(500), 20),
});

/**
 * What a provenance sheet says, format 1. Shares, odds, inbreeding and completeness are numbers from 0 to 1 without unit, dates are EDTF,
 * instants RFC 3339 in UTC. Every animal, clutch and source is told once; others refer to it by `ref` (a1, c1, s1). A private record is
 * there by its place alone.
 */
export type SheetDocument = Shaped<typeof document>;
export type SheetAnimal = SheetDocument['animals'][number];
export type SheetAncestor = SheetDocument['ancestors'][number];
export type SheetClutch = SheetDocument['clutches'][number];
export type SheetSource = SheetDocument['sources'][number];
export type SheetLabel = SheetAnimal['label'];
export type SheetOrigin = SheetAnimal['origins'][number];
export type SheetClaim = SheetSource['claims'][number];

/**
 * Reads a value as a sheet of format 1: every field there and of its kind, none more, each reference leading somewhere.
 *
 * @throws ShapeProblem saying what is wrong, and where
 */
export function readSheetDocument(value: unknown): SheetDocument {
  const sheet = document(value);
  if (sheet.animals.length === 0) throw new ShapeProblem('/animals must name at least one animal.');
  if (!isCalendarDay(sheet.issued.slice(0, 10)) || !(sheet.validUntil === null || isCalendarDay(sheet.validUntil)))
    throw new ShapeProblem('/issued and /validUntil must be days of the calendar.');
  requireReferences(sheet);
  return sheet;
}

const isCalendarDay = (text: string): boolean => {
  const time = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
};

function requireReferences({ animals, ancestors, clutches, sources }: SheetDocument): void {
  const known = new Set<string>();
  for (const { ref: own } of [...animals, ...ancestors, ...clutches, ...sources]) {
    if (known.has(own)) throw new ShapeProblem(`${own} stands for two records.`);
    known.add(own);
  }
  const named = [
    ...[...animals, ...ancestors].flatMap(({ clutch, source }) => [clutch, source]),
    ...animals.flatMap(({ origins }) => origins.map((one) => one.ref)),
    ...clutches.flatMap(({ parents }) => parents.map(({ animal }) => animal)),
    ...clutches.flatMap(({ pairs }) => (pairs ?? []).flatMap(({ a, b }) => [a, b])),
  ];
  const missing = named.find((one) => one !== null && !known.has(one));
  if (missing !== undefined) throw new ShapeProblem(`${String(missing)} is referred to, but is not on the sheet.`);
}
