import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { privateSource } from '../../register/private-records.ts';

/**
 * What a sheet says, without what may not be told any more: of ancestors, clutches and sources whose references are not among `told` only their
 * places are left, and where a source is concealed no label but the animal's own is named.
 *
 * @returns what is left, and whether anything was taken out
 */
export function concealSince(
  sheet: SheetDocument,
  told: ReadonlySet<string>,
): { readonly contents: SheetDocument; readonly isWhole: boolean } {
  const concealed = [...sheet.ancestors, ...sheet.clutches, ...sheet.sources].filter(
    ({ ref, isPrivate }) => !isPrivate && !told.has(ref),
  );
  if (concealed.length === 0) return { contents: sheet, isWhole: true };
  const isConcealed = (ref: string): boolean => concealed.some((one) => one.ref === ref);
  const isSourceConcealed = sheet.sources.some(({ ref }) => isConcealed(ref));
  return {
    isWhole: false,
    contents: {
      ...sheet,
      animals: sheet.animals.map((animal) => ({
        ...animal,
        label: {
          ...animal.label,
          otherLabels: animal.label.otherLabels.map(({ label, share }) => ({
            label: isSourceConcealed ? null : label,
            share,
          })),
        },
        origins: animal.origins.map((origin) => ({
          ...origin,
          standing: origin.ref !== null && isConcealed(origin.ref) ? ('unknown' as const) : origin.standing,
        })),
      })),
      ancestors: sheet.ancestors.map((ancestor) =>
        isConcealed(ancestor.ref)
          ? {
              ...ancestor,
              isPrivate: true,
              number: null,
              sex: null,
              hatched: null,
              species: null,
              line: null,
              standings: [],
            }
          : ancestor,
      ),
      clutches: sheet.clutches.map((clutch) =>
        isConcealed(clutch.ref) ? { ...clutch, isPrivate: true, laid: null } : clutch,
      ),
      sources: sheet.sources.map((source) =>
        isConcealed(source.ref)
          ? {
              ...source,
              isPrivate: true,
              title: privateSource,
              kind: null,
              date: null,
              countryOfExport: null,
              labelAsReceived: null,
              permitReferences: [],
              baseKinship: null,
              claims: [],
            }
          : source,
      ),
    },
  };
}
