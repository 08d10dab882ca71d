import { session } from '../people/session.svelte.ts';
import type { Action, AnimalAction, AnimalInHand, Place } from './action.ts';
import { places } from './action.ts';
import { onAnimal } from './actions/animal.ts';
import { chart } from './actions/chart.ts';
import { everywhere } from './actions/everywhere.ts';
import { go } from './actions/go.ts';
import { housing } from './actions/housing.ts';
import { line } from './actions/line.ts';
import { register } from './actions/register.ts';
import { round } from './actions/round.ts';

/**
 * Everything that the client can be told to do by a key or by words, once: the handlers, the sheet that `?` opens, the palette and
 * the tests for conflicts read this registry.
 */
export const actions = { ...everywhere, ...go, ...register, ...housing, ...line, ...round, ...chart } satisfies Record<
  string,
  Action
>;

export type AnimalActionName = keyof typeof onAnimal;
export type ActionName = keyof typeof actions | AnimalActionName;

/** What can be done with one animal. */
export const animalActions: Readonly<Record<AnimalActionName, AnimalAction>> = onAnimal;

/** The whole registry under its names. */
export const registry: Readonly<Record<ActionName, Action | AnimalAction>> = { ...actions, ...onAnimal };

export const actionNames = Object.keys(registry) as ActionName[];

/** The action of a name, where it is not about an animal. */
export const plainAction = (name: ActionName): Action | null =>
  name in animalActions ? null : (registry[name] as Action);

/** Whether whoever is signed in may do it. */
export const isAllowed = (action: Pick<Action, 'needs'>, record?: Pick<AnimalInHand, 'keeperId'>): boolean =>
  action.needs === undefined ||
  session.may(action.needs[0], action.needs[1], action.needs[0] === 'change' ? record : undefined);

/** What can be done with an animal by whoever is signed in. */
export const actionsFor = (animal: AnimalInHand): [AnimalActionName, AnimalAction][] =>
  (Object.entries(animalActions) as [AnimalActionName, AnimalAction][]).filter(
    ([, action]) => isAllowed(action, animal) && (action.fits?.(animal) ?? true),
  );

/** Handlers for the keys of an animal's page: `$effect(() => keyboard.listen(handlersFor(animal)))`. */
export const handlersFor = (animal: AnimalInHand): Partial<Record<ActionName, () => unknown>> =>
  Object.fromEntries(actionsFor(animal).map(([name, action]) => [name, () => action.run(animal)]));

/** The id that an address names for a place; null where the action does not apply there. */
export function recordAt(place: Place, address: string): string | null {
  if (place === 'everywhere') return '';
  const known = places[place];
  return 'address' in known ? (known.address.exec(address)?.[1] ?? null) : null;
}

interface Keyed {
  readonly keys?: string;
  readonly where: string;
}

/** Pairs of actions that would answer to the same keys at the same time. */
export function conflicts(table: Readonly<Record<string, Keyed>>): [string, string][] {
  const entries = Object.entries(table).filter(([, { keys }]) => keys !== undefined);
  return entries.flatMap(([name, one], at) =>
    entries
      .slice(at + 1)
      .filter(([, other]) => other.keys === one.keys)
      .filter(([, other]) => other.where === one.where || other.where === 'everywhere' || one.where === 'everywhere')
      .map(([otherName]): [string, string] => [name, otherName]),
  );
}
