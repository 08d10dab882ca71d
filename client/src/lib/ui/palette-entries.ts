import { isAllowed, actionNames, actionsFor, plainAction, registry, type ActionName } from '../keys/actions.ts';
import { nameOf } from '../keys/action.ts';
import { keyboard } from '../keys/keyboard.svelte.ts';
import type { RecentAnimal } from './recent-animals.ts';

/** One line of the palette: an animal, another record to open, or a thing to do. */
export type Entry =
  | { kind: 'animal'; key: string; animal: RecentAnimal }
  /** Asks what to do with the animal. */
  | { kind: 'about'; key: string; words: string; animal: RecentAnimal }
  | { kind: 'record'; key: string; what: string; title: string; address: string }
  | { kind: 'action'; key: string; words: string; keys?: string; run: () => unknown };

type ActionEntry = Extract<Entry, { kind: 'action' }>;

const entryOf = (name: ActionName, words: string, run: () => unknown): ActionEntry => {
  const { keys } = registry[name];
  return { kind: 'action', key: name, words, run, ...(keys === undefined ? {} : { keys }) };
};

/** What can be done where one is, what belongs to the screen first. */
export function actionsHere(): ActionEntry[] {
  const offered = actionNames.flatMap((name) => {
    const action = registry[name];
    const run = 'isMove' in action ? undefined : keyboard.doing(name);
    return run && (plainAction(name) === null || isAllowed(action)) ? [{ name, action, run }] : [];
  });
  const isGeneral = ({ action }: (typeof offered)[number]): boolean => action.where === 'everywhere';
  return [...offered.filter((one) => !isGeneral(one)), ...offered.filter(isGeneral)].map(({ name, action, run }) =>
    entryOf(name, action.words, run),
  );
}

/** What can be done with one animal. */
export const actionsAbout = (animal: RecentAnimal): ActionEntry[] =>
  actionsFor(animal).map(([name, action]) => entryOf(name, action.about(nameOf(animal)), () => action.run(animal)));

/** Whether each of the words typed stands in those of an action. */
export function fits({ words }: ActionEntry, typed: string): boolean {
  const lower = words.toLowerCase();
  return typed
    .toLowerCase()
    .split(/\s+/)
    .every((part) => lower.includes(part));
}
