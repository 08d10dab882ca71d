import type { Sex, Status } from '../../shared/vocabulary.ts';

/** What a private animal is called in a text. */
export const privateAnimal = 'a private animal';
/** What a private source is titled. */
export const privateSource = 'private source';
/** What a private clutch is titled. */
export const privateClutch = 'private clutch';

type Kind = 'individual' | 'source' | 'clutch';

const prefixes: Readonly<Record<Kind, string>> = {
  individual: 'private',
  source: 'private-source',
  clutch: 'private-clutch',
};

/**
 * Stands in for records that whoever asks may not see, in one answer: they are numbered in the order of their appearance, so that
 * one animal is the same throughout the answer and cannot be recognised in another.
 */
export class PrivateRecords {
  readonly #numbers = {
    individual: new Map<string, number>(),
    source: new Map<string, number>(),
    clutch: new Map<string, number>(),
  };

  /** What stands for the id of a record that may not be seen: "private-1". */
  idOf(kind: Kind, id: string): string {
    return `${prefixes[kind]}-${this.numberOf(kind, id)}`;
  }

  /** Which one of its kind it is in this answer, from 1. */
  numberOf(kind: Kind, id: string): number {
    const numbers = this.#numbers[kind];
    const number = numbers.get(id) ?? numbers.size + 1;
    numbers.set(id, number);
    return number;
  }

  /** An animal as other records name it: as it is where it may be seen, else nothing but that it is there. */
  animal<Row extends ReferredAnimal>(row: Row): AnimalReference<Row> {
    const { isSeen, ...animal } = row;
    if (isSeen) return { ...animal, isPrivate: false };
    const concealed = { ...animal, id: this.idOf('individual', row.id), number: null, code: null, isPrivate: true };
    return {
      ...concealed,
      ...('sex' in row ? { sex: 'unsexed' as const } : {}),
      ...('status' in row ? { status: 'unknown' as const } : {}),
    };
  }
}

/** An animal that a statement read because another record refers to it. */
export interface ReferredAnimal {
  readonly id: string;
  readonly number: string | null;
  readonly code: string | null;
  readonly sex?: Sex;
  readonly status?: Status;
  /** Whether whoever asks may see it. */
  readonly isSeen: boolean;
}

/** How it goes out. */
export type AnimalReference<Row extends ReferredAnimal> = Omit<Row, 'isSeen'> & { readonly isPrivate: boolean };
