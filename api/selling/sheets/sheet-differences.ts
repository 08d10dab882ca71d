import { dateInWords } from '../../../shared/date-words.ts';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { SheetAnimal, SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import type { Standing } from '../../../shared/vocabulary.ts';
import { linksTo } from '../../lineage/ancestor-chart.ts';
import { labelEvidenceOf } from '../../lineage/label-evidence.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import type { RecordNames } from '../../lineage/record-names.ts';
import { parentsOf } from '../../lineage/register-graph.ts';
import { percent } from '../../provenance/flag-words.ts';
import { withoutPositions } from '../../provenance/places/words-of-place.ts';
import { sharesByStanding } from '../../provenance/standing.ts';
import type { DifferenceView, DifferingField } from './public-sheet.view.ts';
import { standingInWords } from './sheet-animal.ts';
import { unit } from './sheet-ancestry.ts';
import type { AnimalFacts } from './sheet-facts.queries.ts';

/** Figures that differ by less are the same: sums are added up in another order when a register is read anew. */
const ROUNDING = 1e-9;

type Told = string | null;

/**
 * What the register says otherwise of an animal today than its sheet, in words. Only what whoever holds the sheet may know is compared:
 * parents not at all where one of them is private, on the sheet or today, since then a difference would tell of it.
 */
export function differencesOf(
  then: SheetAnimal,
  sheet: SheetDocument,
  now: AnimalFacts,
  snapshot: LineageSnapshot,
  individual: number,
  names: RecordNames,
): DifferenceView[] {
  const compared: [DifferingField, Told, Told][] = [
    ['species', then.species, now.species],
    ['sex', then.sex, now.sex],
    ['status', then.status, now.status],
    ['hatched', dated(then.hatched), dated(now.hatched)],
    ['out-of-water', dated(then.outOfWater), dated(now.outOfWater)],
    ['line', then.line, withoutPositions(now.line)],
    ...figures(then, snapshot, individual),
    ['parents', ...parents(then, sheet, snapshot, individual, names)],
  ];
  return compared.filter(([, was, is]) => was !== is).map(([field, was, is]) => ({ field, then: was, now: is }));
}

const dated = (date: string | null): Told => (date === null ? null : dateInWords(date));

/** None while they are being computed anew. */
function figures(then: SheetAnimal, snapshot: LineageSnapshot, individual: number): [DifferingField, Told, Told][] {
  if (!snapshot.isCurrent(individual)) return [];
  const evidence = labelEvidenceOf(snapshot, individual);
  const inbreeding = snapshot.inbreedingFigureOf(individual);
  const shares = sharesByStanding(evidence.standings);
  const same = sameShares(then.label.shares, shares);
  const figure = (field: DifferingField, was: number, is: number, words: (one: number) => string) =>
    [field, words(was), Math.abs(was - is) < ROUNDING ? words(was) : words(is)] as [DifferingField, Told, Told];
  const rangeThen = then.inbreeding.nothingKnown ? 'nothing known' : share(then.inbreeding.expected);
  const rangeNow = inbreeding.nothingKnown ? 'nothing known' : share(unit(inbreeding.expected));
  const sameRange =
    then.inbreeding.nothingKnown === inbreeding.nothingKnown &&
    Math.abs(then.inbreeding.expected - inbreeding.expected) < ROUNDING;
  return [
    ['label-standing', then.label.inWords, same ? then.label.inWords : standingInWords(shares)],
    figure('traced-share', then.label.tracedShare.expected, unit(evidence.tracedShare.expected), percent),
    ['inbreeding', rangeThen, sameRange ? rangeThen : rangeNow],
    figure('depth', then.depth, snapshot.depthOf(individual).depth, String),
  ];
}

const share = (value: number): string => `${Number((100 * value).toFixed(2))} %`;

interface StandingShare {
  readonly standing: Standing;
  readonly share: number;
}

const sameShares = (one: readonly StandingShare[], other: readonly StandingShare[]): boolean =>
  one.length === other.length &&
  one.every(({ standing, share: was }, place) => {
    const is = other[place];
    return is !== undefined && is.standing === standing && Math.abs(was - is.share) < ROUNDING;
  });

function parents(
  { clutch }: SheetAnimal,
  sheet: SheetDocument,
  snapshot: LineageSnapshot,
  individual: number,
  names: RecordNames,
): [Told, Told] {
  const numbers = new Map([...sheet.animals, ...sheet.ancestors].map(({ ref, number }) => [ref, number]));
  const told = sheet.clutches.find(({ ref }) => ref === clutch);
  const before = (told?.parents ?? []).map((parent) => parentIn(numbers.get(parent.animal) ?? null, parent));
  const own = snapshot.graph.pedigree.clutchOf[individual] ?? -1;
  const after =
    own < 0
      ? []
      : linksTo(snapshot.graph, own).map((link) =>
          parentIn(numberOf(link.parent, snapshot, names), {
            as: link.role,
            probability: link.probability,
          }),
        );
  if ([...before, ...after].includes(null)) return [null, null];
  return [listed(before, unknownThen(told)), listed(after, own < 0 ? '' : unknownNow(snapshot, own))];
}

function numberOf(individual: number, snapshot: LineageSnapshot, names: RecordNames): string | null {
  if (names.idOf('individual', individual).isPrivate) return null;
  return formatRegistryNumber(snapshot.graph.serials[individual] ?? 0);
}

/** A parent in words; null where it may not be told. */
function parentIn(
  number: string | null,
  { as, probability }: { readonly as: 'sire' | 'dam' | 'either'; readonly probability: number },
): string | null {
  if (number === null) return null;
  const words = [as === 'either' ? null : as, probability > 1 - ROUNDING ? null : percent(probability)];
  const said = words.filter((word) => word !== null).join(', ');
  return said === '' ? number : `${number} (${said})`;
}

const unknownThen = (clutch: SheetDocument['clutches'][number] | undefined): string =>
  clutch ? unknown(clutch.unknownSire, clutch.unknownDam) : '';

function unknownNow({ graph }: LineageSnapshot, clutch: number): string {
  const recorded = parentsOf(graph, clutch);
  if (recorded.mode === 'pairs') return unknown(0, 0);
  const on = (side: 'sires' | 'dams'): number =>
    recorded[side].find(({ individual }) => individual < 0)?.probability ?? 0;
  return unknown(on('sires'), on('dams'));
}

const unknown = (sire: number, dam: number): string =>
  [sire > 0 ? `an unknown sire (${percent(sire)})` : '', dam > 0 ? `an unknown dam (${percent(dam)})` : '']
    .filter((word) => word !== '')
    .join(', ');

function listed(known: readonly (string | null)[], others: string): Told {
  const all = [...known.filter((one) => one !== null).sort(), others].filter((one) => one !== '');
  return all.length === 0 ? null : all.join(', ');
}
