import type { Action as Doing } from '../people/permissions.ts';

/** Where an action applies, in the order of the sheet; on most of them an address says which record is meant. */
export const places = {
  everywhere: { title: 'Everywhere' },
  register: { title: 'In the register and in other lists' },
  animal: { title: 'On an animal' },
  clutch: { title: 'On a clutch' },
  pairing: { title: 'On a pairing' },
  line: { title: 'On a line', address: /^\/lines\/([^/]+)/ },
  round: { title: 'On a round' },
  chart: { title: 'On a chart' },
} as const satisfies Record<string, { title: string; address?: RegExp }>;

export type Place = keyof typeof places;
export const placeNames = Object.keys(places) as Place[];

/** What one must be allowed to do for it. */
export type Needs = readonly [Doing, string];

interface Described {
  /** What it does, in the words of the sheet and the palette. */
  words: string;
  /** Its keys as `keysOf` writes them. Single characters work outside fields only and can be switched off. */
  keys?: string;
  where: Place;
  /** Left out: anybody may. */
  needs?: Needs;
}

/** Something that one does by a key, by the palette, or both. */
export interface Action extends Described {
  /** Does it, given the id that the address of its place names. Left out: the screen does it while it is open. */
  run?: (id: string) => unknown;
  /** Keys that only move about are not for the palette. */
  isMove?: true;
}

/** An animal as far as an action looks at it. */
export interface AnimalInHand {
  readonly id: string;
  readonly number: string;
  readonly code: string | null;
  readonly status: string;
  readonly keeperId?: string | null | undefined;
}

/** Something that one does with one animal: on its page by a key, or wherever the palette found it. */
export interface AnimalAction extends Described {
  where: 'animal';
  /** The words with the animal's name in them. */
  about: (name: string) => string;
  /** Which animals it can be done with; left out: all. */
  fits?: (animal: AnimalInHand) => boolean;
  run: (animal: AnimalInHand) => unknown;
}

/** What people call an animal. */
export const nameOf = (animal: Pick<AnimalInHand, 'code' | 'number'>): string => animal.code ?? animal.number;
