import { housedAt, parentsHousedAt, type Housing } from '../clutches/housing.ts';
import { probabilities, type Candidate, type ParentAnimal, type Parents } from '../clutches/parents.ts';
import type { CandidateView, ClutchItemView, ParentListsView, ParentPairsView } from '../clutches/clutch.view.ts';
import type { AnimalStatusView } from '../individuals/individual.view.ts';
import { say } from '../../platform/say.ts';

type ParentsView = ParentListsView | ParentPairsView;

/** What is compared of a clutch. */
export type HousedClutch = Pick<ClutchItemView, 'laid' | 'parents' | 'parentsFromPairing'>;

/**
 * What the housing would propose as the parents of a clutch now, with the reason in a sentence; null where there is nothing to
 * correct. Rules:
 * - Parents that came from the housing follow it: any difference in the couples or their odds is offered.
 * - Parents that the keeper chose (fewer than were housed, other odds, a reason) are offered once one of them did not live there.
 * - A side of several animals at equal odds without a reason says no more than "one of these": it is also offered once an animal
 *   that lived there is missing. A side that is the keeper's own stays in the proposal as it is recorded.
 * - A clutch whose laying date is not known has no day to compare.
 */
export function correctionOf(clutch: HousedClutch, housing: Housing): { housed: ParentsView; why: string } | null {
  if (clutch.laid === null) return null;
  const { parents: recorded, parentsFromPairing } = clutch;
  // proposals are only made where every animal of the pairing may be seen
  const lived = new Map(
    housedAt(housing, clutch.laid).map(({ animal }) => [animal.id, { ...animal, isPrivate: false }]),
  );
  const all = toView(parentsHousedAt(housing, clutch.laid), lived);
  const housed = parentsFromPairing ? all : besideOwn(recorded, all, lived);
  if (housed === null || isSameOdds(recorded, housed)) return null;
  return { housed, why: whyOf(animalsIn(recorded), animalsIn(housed), lived) };
}

/** The proposal for parents that the keeper chose, or null where it must leave them alone. */
function besideOwn(recorded: ParentsView, all: ParentsView, lived: ReadonlyMap<string, unknown>): ParentsView | null {
  const haveLived = (animals: readonly AnimalStatusView[]): boolean => animals.every(({ id }) => lived.has(id));
  if (recorded.mode === 'lists' && all.mode === 'lists') {
    const side = (own: CandidateView[], housed: CandidateView[]): CandidateView[] =>
      isOneOfThese(own) || !haveLived(own.flatMap(({ individual }) => individual ?? [])) ? housed : own;
    return { mode: 'lists', sires: side(recorded.sires, all.sires), dams: side(recorded.dams, all.dams) };
  }
  const animals = animalsIn(recorded);
  if (!haveLived(animals)) return all;
  const known = new Set(animals.map(({ id }) => id));
  const isMissing = animalsIn(all).some(({ id }) => !known.has(id));
  const groups = recorded.mode === 'pairs' ? [recorded.pairs] : [recorded.sires, recorded.dams];
  return isMissing && groups.every(isOneOfThese) ? all : null;
}

/** Several at equal odds, none with a reason, none of them unknown. */
function isOneOfThese(
  entries: readonly { probability: number; reason: string | null; individual?: unknown }[],
): boolean {
  const [first] = entries;
  return (
    first !== undefined &&
    entries.length > 1 &&
    entries.every(
      ({ probability, reason, individual }) =>
        reason === null && individual !== null && Math.abs(probability - first.probability) < 1e-9,
    )
  );
}

function whyOf(
  recorded: readonly AnimalStatusView[],
  housed: readonly AnimalStatusView[],
  lived: ReadonlyMap<string, unknown>,
): string {
  const [before, after] = [recorded, housed].map((animals) => new Set(animals.map(({ id }) => id)));
  const gone = recorded.filter(({ id }) => !lived.has(id));
  const young = recorded.filter(({ id }) => lived.has(id) && !after?.has(id));
  const missing = housed.filter(({ id }) => !before?.has(id));
  const sentences = [
    gone.length > 0 ? say`${namesOf(gone)} did not live here when it was laid.` : '',
    young.length > 0 ? say`${namesOf(young)} lived here, but cannot be a parent by what is known now.` : '',
    missing.length > 0
      ? say`${namesOf(missing)} lived here when it was laid, but ${missing.length === 1 ? 'is' : 'are'} not among the candidates.`
      : '',
  ].filter((sentence) => sentence !== '');
  return sentences.join(' ') || say`What is known of the sexes now leaves other couples.`;
}

function namesOf(animals: readonly AnimalStatusView[]): string {
  const names = animals.map((animal) => animal.code ?? animal.number ?? '');
  const last = names.pop() ?? '';
  return names.length === 0 ? last : say`${names.join(', ')} and ${last}`;
}

/** The animals that a statement of parents names, each once. */
export function animalsIn(parents: ParentsView): AnimalStatusView[] {
  const all =
    parents.mode === 'pairs'
      ? parents.pairs.flatMap((pair) => [pair.a, pair.b])
      : [...parents.sires, ...parents.dams].flatMap((candidate) => candidate.individual ?? []);
  return [...new Map(all.map((animal) => [animal.id, animal])).values()];
}

/** Whether two statements give each couple the same odds, however they are written. */
function isSameOdds(one: ParentsView, other: ParentsView): boolean {
  const [left, right] = [coupleOdds(one), coupleOdds(other)];
  return left.size === right.size && [...left].every(([key, share]) => Math.abs(share - (right.get(key) ?? -1)) < 1e-9);
}

function coupleOdds(parents: ParentsView): Map<string, number> {
  const nobody = [{ individual: null, probability: 1 }];
  const couples =
    parents.mode === 'pairs'
      ? parents.pairs.map(({ a, b, probability }) => ({ ids: [a.id, b.id], probability }))
      : (parents.sires.length > 0 ? parents.sires : nobody).flatMap((sire) =>
          (parents.dams.length > 0 ? parents.dams : nobody).map((dam) => ({
            ids: [sire.individual?.id ?? 'sire', dam.individual?.id ?? 'dam'],
            probability: sire.probability * dam.probability,
          })),
        );
  return new Map(couples.map(({ ids, probability }) => [ids.sort().join(' '), probability]));
}

function toView(parents: Parents, lived: ReadonlyMap<string, AnimalStatusView>): ParentsView {
  const shown = ({ id }: ParentAnimal): AnimalStatusView | null => {
    const animal = lived.get(id);
    return animal
      ? { id, number: animal.number, code: animal.code, sex: animal.sex, status: animal.status, isPrivate: false }
      : null;
  };
  if (parents.mode === 'pairs') {
    const odds = probabilities(parents.pairs);
    const pairs = parents.pairs.flatMap((pair, index) => {
      const [a, b] = [shown(pair.a), shown(pair.b)];
      return a && b ? [{ a, b, probability: odds[index] ?? 0, reason: pair.reason }] : [];
    });
    return { mode: 'pairs', pairs };
  }
  const side = (candidates: readonly Candidate[]): CandidateView[] => {
    const odds = probabilities(candidates);
    return candidates.map(({ animal, reason }, index) => ({
      individual: animal && shown(animal),
      probability: odds[index] ?? 0,
      reason,
    }));
  };
  return { mode: 'lists', sires: side(parents.sires), dams: side(parents.dams) };
}
