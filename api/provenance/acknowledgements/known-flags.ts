import type { FlagCode } from '../../../shared/vocabulary.ts';
import { FLAG_RECORDS_MOST } from '../flag-words.ts';
import type { AcknowledgedView } from './acknowledgement.view.ts';

/** Most records that caused a flag that its acknowledgement remembers: as many as a flag names. */
export const KNOWN_CAUSES_MOST = FLAG_RECORDS_MOST;

/** An acknowledgement in force, as it is read to be told beside a flag. */
export interface KnownFlag extends Omit<AcknowledgedView, 'otherCauses'> {
  /** The animal or line. */
  readonly subjectId: string;
  readonly isOfAnimal: boolean;
  readonly code: FlagCode;
  /** The records that caused it then, at most `KNOWN_CAUSES_MOST`. */
  readonly recordIds: readonly string[];
}

/** The records that cause a flag now: some of them, and how many there are. */
export interface Causes {
  readonly ids: readonly string[];
  readonly count: number;
}

/** The acknowledgements that stand for the animals and lines of one answer. */
export class KnownFlags {
  readonly #bySubject = new Map<string, KnownFlag[]>();

  constructor(flags: readonly KnownFlag[]) {
    for (const flag of flags)
      this.#bySubject.set(flag.subjectId, [...(this.#bySubject.get(flag.subjectId) ?? []), flag]);
  }

  /** Ids of the animals that have any. */
  animals(): string[] {
    return [...this.#bySubject].flatMap(([id, [first]]) => (first?.isOfAnimal ? [id] : []));
  }

  /** Those of some flags of an animal or line that are acknowledged, in their order. */
  among(subjectId: string, codes: readonly FlagCode[]): FlagCode[] {
    return codes.filter((code) => this.#find(subjectId, code) !== undefined);
  }

  /** How a flag of an animal or line is acknowledged; null where it is not. */
  of(subjectId: string, code: FlagCode, causes: Causes): AcknowledgedView | null {
    const flag = this.#find(subjectId, code);
    if (!flag) return null;
    const { id, version, by, at, reason, recordIds } = flag;
    return { id, version, by, at, reason, otherCauses: hasOthers(recordIds, causes) };
  }

  #find(subjectId: string, code: FlagCode): KnownFlag | undefined {
    return this.#bySubject.get(subjectId)?.find((flag) => flag.code === code);
  }
}

/** Whether a cause of now is none of those known then; null where neither list is whole. */
export function hasOthers(known: readonly string[], { ids, count }: Causes): boolean | null {
  const isKnown = ids.every((id) => known.includes(id));
  if (isKnown && count <= ids.length) return false;
  const isWhole = known.length < KNOWN_CAUSES_MOST;
  return isWhole && (!isKnown || count > known.length) ? true : null;
}
