import type { SheetAnimal, SheetDocument } from '../../../shared/sheet/sheet-document.ts';
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
      animals: sheet.animals.map((animal) => withoutConcealed(animal, isConcealed, isSourceConcealed)),
      ancestors: sheet.ancestors.map((one) => (isConcealed(one.ref) ? { ...one, ...concealedAncestor } : one)),
      clutches: sheet.clutches.map((one) => (isConcealed(one.ref) ? { ...one, ...concealedClutch } : one)),
      sources: sheet.sources.map((one) => (isConcealed(one.ref) ? { ...one, ...concealedSource } : one)),
    },
  };
}

const concealedAncestor = {
  isPrivate: true,
  number: null,
  sex: null,
  hatched: null,
  species: null,
  line: null,
  standings: [],
};

const concealedClutch = { isPrivate: true, laid: null };

const concealedSource = {
  isPrivate: true,
  title: privateSource,
  kind: null,
  date: null,
  countryOfExport: null,
  labelAsReceived: null,
  permitReferences: [],
  baseKinship: null,
  claims: [],
};

function withoutConcealed(
  animal: SheetAnimal,
  isConcealed: (ref: string) => boolean,
  isSourceConcealed: boolean,
): SheetAnimal {
  const { label, origins } = animal;
  const otherLabels = label.otherLabels.map((other) => (isSourceConcealed ? { ...other, label: null } : other));
  return {
    ...animal,
    label: { ...label, otherLabels },
    origins: origins.map((origin) =>
      origin.ref !== null && isConcealed(origin.ref) ? { ...origin, standing: 'unknown' } : origin,
    ),
  };
}
