import { formatRegistryNumber } from '../../../shared/registry-number.ts';

/** What a spreadsheet would take for a formula is written with an apostrophe, and `?` means an unknown parent: neither would be the same code again. */
const unlike = /^(?:[=+\-@\t\r]|\?$)/;

/**
 * A code for each record of a sheet, no two alike, capitals or not: its own code where no earlier record has it, else the first free one of
 * those that `others` proposes.
 */
export function uniqueCodes<Of extends { readonly id: string; readonly code: string | null }>(
  records: readonly Of[],
  others: (record: Of, place: number) => string,
): Map<string, string> {
  const own = new Map<string, number>();
  for (const { code } of records) if (code !== null) own.set(keyOf(code), (own.get(keyOf(code)) ?? 0) + 1);
  const taken = new Set<string>();
  const codes = new Map<string, string>();
  records.forEach((record, place) => {
    const { code } = record;
    const isOwn = code !== null && !unlike.test(code) && !taken.has(keyOf(code));
    let given = isOwn ? code : others(record, place);
    for (let next = 2; !isOwn && (taken.has(keyOf(given)) || own.has(keyOf(given))); next++)
      given = `${others(record, place)}-${next}`;
    taken.add(keyOf(given));
    codes.set(record.id, given);
  });
  return codes;
}

const keyOf = (code: string): string => code.normalize('NFC').toLowerCase();

/** A registry number as text, from its serial as the database has it. */
export const registryNumber = (serial: string): string => formatRegistryNumber(Number(serial));
