import type { FlagCode } from '../../shared/vocabulary.ts';
import type { AcknowledgedView } from '../provenance/acknowledgements/acknowledgement.view.ts';
import type { Causes } from '../provenance/acknowledgements/known-flags.ts';
import { FLAG_RECORDS_MOST, type Flag } from '../provenance/flags.ts';
import type { FlagView } from './lineage.view.ts';
import type { RecordNames } from './record-names.ts';

/** How a flag is acknowledged; null where it is not. */
type Acknowledged = (code: FlagCode, causes: Causes) => AcknowledgedView | null;

/** Flags as an answer tells them, each with what was acknowledged of it; nothing is of young that are only planned. */
export function toldFlags(
  flags: readonly Flag[],
  names: RecordNames,
  acknowledged: Acknowledged = () => null,
): FlagView[] {
  return flags.map((flag) => ({
    ...flag,
    records: [...flag.records],
    acknowledged: acknowledged(flag.code, causesOfFlag(flag, names)),
  }));
}

/** The records behind the names of a flag. One that names as many as it may is taken to have more. */
export function causesOfFlag({ records }: Flag, names: RecordNames): Causes {
  const ids = records.map(({ id }) => names.behind(id));
  return { ids, count: ids.length < FLAG_RECORDS_MOST ? ids.length : FLAG_RECORDS_MOST + 1 };
}
