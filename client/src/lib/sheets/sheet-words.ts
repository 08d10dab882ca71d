import type { components } from '../api/openapi.d.ts';
import { dayInWords } from '../ui/dates.ts';

type Schemas = components['schemas'];
export type Sheet = Schemas['SheetView'];
export type PublicSheet = Schemas['PublicSheetView'];
export type SheetState = Sheet['state'];
export type Difference = Schemas['DifferenceView'];

/** The state of a sheet as the largest word of its frame. */
export const stateWords: Readonly<Record<SheetState, string>> = {
  valid: 'Valid',
  expired: 'Expired',
  superseded: 'Replaced',
  revoked: 'Revoked',
};

/** What the register says otherwise today, as the field is called. */
export const differenceWords: Readonly<Record<Difference['field'], string>> = {
  species: 'species',
  sex: 'sex',
  status: 'status',
  hatched: 'hatched',
  'out-of-water': 'out of water',
  line: 'line',
  'label-standing': 'how well the name stands',
  'traced-share': 'traced share',
  inbreeding: 'inbreeding',
  depth: 'generations known',
  parents: 'parents',
};

/** The day of an instant in words, by the clock of UTC, which sheets go by. */
export const issuedInWords = (instant: string): string => dayInWords(instant.slice(0, 10));

/** A thumbprint in groups that can be read aloud. */
export const keyInGroups = (kid: string): string => (kid.slice(0, 16).match(/.{1,4}/g) ?? []).join(' ');
