import type { LineOverTime } from '../../../../client/src/lib/api/types.ts';

/** The same line with its animals, clutches, sources and parents in another order, as places lead: `animals[new] = old`. */
export function shuffled(line: LineOverTime, seed: number): LineOverTime {
  const animals = order(line.animals.id.length, seed);
  const clutches = order(line.clutches.id.length, seed + 1);
  const sources = order(line.sources.length, seed + 2);
  const parents = order(line.parents.clutch.length, seed + 3);
  const placeIn = (list: readonly number[]): Map<number, number> => new Map(list.map((old, place) => [old, place]));
  const [ofAnimal, ofClutch, ofSource] = [placeIn(animals), placeIn(clutches), placeIn(sources)];
  const take = <Columns extends object>(columns: Columns, list: readonly number[]): Columns =>
    Object.fromEntries(
      Object.entries(columns).map(([name, column]) => [
        name,
        Array.isArray(column) ? list.map((old) => column[old] as unknown) : take(column as object, list),
      ]),
    ) as Columns;
  const moved = take(line.animals, animals);
  const links = take(line.parents, parents);
  return {
    ...line,
    animals: {
      ...moved,
      clutch: moved.clutch.map((clutch) => ofClutch.get(clutch) ?? -1),
      source: moved.source.map((source) => ofSource.get(source) ?? -1),
    },
    clutches: take(line.clutches, clutches),
    sources: sources.flatMap((old) => line.sources[old] ?? []),
    parents: {
      ...links,
      clutch: links.clutch.map((clutch) => ofClutch.get(clutch) ?? -1),
      animal: links.animal.map((animal) => ofAnimal.get(animal) ?? -1),
    },
  };
}

function order(count: number, seed: number): number[] {
  const spread = (at: number): number => Math.imul(at + 1, 2654435761 ^ Math.imul(seed, 40503)) >>> 0;
  return Array.from({ length: count }, (_, at) => at).sort((one, other) => spread(one) - spread(other) || one - other);
}
