import type { EntityManager } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { namedIn, resolveAnimals, type NamedAnimal } from '../../lineage/named-animals.ts';
import { isLiving } from '../../lineage/register-graph.ts';
import { InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import { carriesDispute } from '../disputed-labels.ts';
import { readKeepersOf, readSpeciesOf } from './carriers.queries.ts';
import { HOLDING_MOST, type ExchangeRequest, type ExchangeSideRequest } from './exchange.dto.ts';
import { say } from '../../platform/say.ts';

/** One of two that exchange; animals by dense numbers, in the order of registry numbers. */
export interface ResolvedSide {
  readonly keeperId: string | null;
  readonly animals: readonly number[];
}

/** Two that exchange, and what goes from each to the other. */
export interface ResolvedExchange {
  readonly one: ResolvedSide;
  readonly other: ResolvedSide;
  readonly give: readonly number[];
  readonly take: readonly number[];
}

/** The line that an exchange is about. */
export interface ExchangedLine {
  readonly line: number;
  readonly speciesId: string;
}

const sides = ['one', 'other'] as const;
type SideName = (typeof sides)[number];

/**
 * Finds the animals that an exchange is about.
 *
 * @throws InvalidProblem naming each place of the request that cannot be: animals that do not exist, do not live, stand on the wrong side,
 *   are of another line or disputed without leave, of another species; keepers without an animal of the line; the same on both sides
 */
export async function resolveExchange(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  exchanged: ExchangedLine,
  request: ExchangeRequest,
): Promise<ResolvedExchange> {
  requireSaid(request);
  const found = {
    one: await resolveSide(manager, snapshot, exchanged, 'one', request.one),
    other: await resolveSide(manager, snapshot, exchanged, 'other', request.other),
  };
  const [give, take] = [
    await resolveAnimals(manager, snapshot, namedIn(request.give, 'give')),
    await resolveAnimals(manager, snapshot, namedIn(request.take, 'take')),
  ];
  refuse(say`The two sides overlap.`, overlap(request, found));
  refuse(say`Some animals are not where they should come from; each is named below.`, [
    ...misplaced('give', request.give, give, found.one, say`the first side`),
    ...misplaced('take', request.take, take, found.other, say`the other side`),
  ]);
  await refuseStrangers(manager, snapshot, exchanged, request);
  refuseDisputed(snapshot, request, give, take);
  return { ...found, give, take };
}

function requireSaid(request: ExchangeRequest): void {
  const errors = sides.flatMap((name): ProblemError[] => {
    const { keeperId, individuals } = request[name];
    if ((keeperId === undefined) !== (individuals === undefined)) return [];
    return [{ pointer: `/${name}`, detail: say`Name either a keeper by keeperId or animals by individuals.` }];
  });
  refuse(say`Who exchanges is not said.`, errors);
}

async function resolveSide(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  { line }: ExchangedLine,
  name: SideName,
  { keeperId, individuals }: ExchangeSideRequest,
): Promise<ResolvedSide> {
  if (keeperId === undefined) {
    const named = namedIn(individuals ?? [], `${name}/individuals`);
    const animals = await resolveAnimals(manager, snapshot, named);
    const dead = named.filter((_, place) => !isLiving(snapshot.graph, animals[place] ?? -1));
    refuse(
      say`Some animals do not live; each is named below.`,
      dead.map(({ text, pointer }) => ({
        pointer,
        detail: say`${text} does not live, or nobody knows. Leave it out.`,
      })),
    );
    return { keeperId: null, animals: bySerial(snapshot, animals) };
  }
  const living = Array.from(snapshot.membersOfLine(line)).filter((animal) => isLiving(snapshot.graph, animal));
  const keeper = keeperId.toLowerCase();
  const keeperOf = await readKeepersOf(
    manager,
    living.map((animal) => snapshot.idOf(animal)),
  );
  const animals = living.filter((animal) => keeperOf.get(snapshot.idOf(animal)) === keeper);
  const pointer = `/${name}/keeperId`;
  if (animals.length === 0)
    refuse(say`A keeper has nothing to exchange.`, [
      { pointer, detail: say`This keeper has no living animal of this line that you may see.` },
    ]);
  if (animals.length > HOLDING_MOST)
    refuse(say`Too many animals come into question.`, [
      {
        pointer,
        detail: say`This keeper has ${animals.length} living animals of this line, at most ${HOLDING_MOST} are looked at. Name them by individuals.`,
      },
    ]);
  return { keeperId: keeper, animals: bySerial(snapshot, animals) };
}

function bySerial({ graph }: LineageSnapshot, animals: readonly number[]): number[] {
  return [...animals].sort((one, other) => (graph.serials[one] ?? 0) - (graph.serials[other] ?? 0));
}

function overlap({ one, other }: ExchangeRequest, found: Record<SideName, ResolvedSide>): ProblemError[] {
  if (one.keeperId !== undefined && found.one.keeperId === found.other.keeperId)
    return [{ pointer: '/other/keeperId', detail: say`This is the same keeper as the first. Name another one.` }];
  const own = new Set(found.one.animals);
  if (!found.other.animals.some((animal) => own.has(animal))) return [];
  const pointer = other.individuals === undefined ? '/other/keeperId' : '/other/individuals';
  return [{ pointer, detail: say`Some animals of this side belong to the first side, too. Name each animal once.` }];
}

function misplaced(
  name: 'give' | 'take',
  texts: readonly string[],
  animals: readonly number[],
  { animals: held }: ResolvedSide,
  sideWords: string,
): ProblemError[] {
  const own = new Set(held);
  return animals.flatMap((animal, place) =>
    own.has(animal)
      ? []
      : [{ pointer: `/${name}/${place}`, detail: say`${texts[place]} is no living animal of ${sideWords}.` }],
  );
}

async function refuseStrangers(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  { line, speciesId }: ExchangedLine,
  request: ExchangeRequest,
): Promise<void> {
  // those of a keeper are of the line anyway
  const named: NamedAnimal[] = sides.flatMap((name) => namedIn(request[name].individuals ?? [], `${name}/individuals`));
  const numbers = named.map(({ text }) => snapshot.find(text));
  const speciesOf = await readSpeciesOf(
    manager,
    numbers.map((number) => snapshot.idOf(number)),
  );
  refuse(
    say`Some animals cannot be exchanged; each is named below.`,
    named.flatMap(({ text, pointer }, place): ProblemError[] => {
      const number = numbers[place] ?? -1;
      if (speciesOf.get(snapshot.idOf(number)) !== speciesId)
        return [{ pointer, detail: say`${text} is of another species than the line. Leave it out.` }];
      if (snapshot.graph.lineOf[number] === line || request.allow.includes('cross-lines')) return [];
      return [
        {
          pointer,
          detail: say`${text} is not of this line: its young here would be crosses. Leave it out, or ask for it by cross-lines in allow.`,
        },
      ];
    }),
  );
}

function refuseDisputed(
  snapshot: LineageSnapshot,
  { allow, ...request }: ExchangeRequest,
  give: readonly number[],
  take: readonly number[],
): void {
  if (allow.includes('disputed')) return;
  const disputed = (name: 'give' | 'take', animals: readonly number[]): ProblemError[] => {
    const carries = carriesDispute(snapshot, animals);
    return animals.flatMap((_, place) =>
      carries[place] === 1
        ? [
            {
              pointer: `/${name}/${place}`,
              detail: say`The label of ${request[name][place]} is disputed. Settle it, or ask for it by disputed in allow.`,
            },
          ]
        : [],
    );
  };
  refuse(say`Some labels are disputed; each is named below.`, [...disputed('give', give), ...disputed('take', take)]);
}

function refuse(detail: string, errors: readonly ProblemError[]): void {
  if (errors.length > 0) throw new InvalidProblem(detail, errors);
}
