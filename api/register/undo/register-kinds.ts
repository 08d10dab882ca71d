import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { SourceKind } from '../../../shared/vocabulary.ts';
import type { JournalKind, NameOf, ToldRows } from '../../journal/journal-kinds.ts';
import { say, sayAgain, together } from '../../platform/say.ts';
import { clutchKind } from '../clutches/clutches.service.ts';
import { individualKind } from '../individuals/individuals.service.ts';
import type { ProvenanceKind, RecordKind } from '../kept/kept-form.queries.ts';
import { lineKind } from '../lines/lines.service.ts';
import { undoMerging, undoUnmerging } from '../merges/merge-undo.ts';
import { observationKind } from '../observations/observations.service.ts';
import { pairingKind } from '../pairings/pairings.service.ts';
import { sourceKind } from '../sources/sources.service.ts';
import { speciesKind } from '../species/species.service.ts';
import { clutchTitle, sourceTitle } from '../titles.ts';
import { undoRaising, raiseAgain } from './undo-raising.ts';
import { recordKind, type Titled, type TitleRow } from './record-kind.ts';
import { undoConfirmation, type AnyKind } from './undo-change.ts';

type RegisterKind = Exclude<RecordKind, ProvenanceKind | 'kept_plan'>;
type Row = TitleRow;

const individualTitle = (row: Row): string =>
  [formatRegistryNumber(row['number'] ?? ''), row['code']].filter((part) => part !== null).join(' ');

const titled: Record<RegisterKind, Titled> = {
  species: { columns: 'r.scientific_name as name', title: (row) => row['name'] ?? '' },
  line: { columns: 'r.name', title: (row) => row['name'] ?? '' },
  source: {
    columns: 'r.kind, r.date, r.code',
    title: ({ kind = null, date = null }) => sourceTitle({ kind: (kind ?? 'unknown') as SourceKind, date }),
  },
  individual: { columns: 'r.number::text, r.code', title: individualTitle },
  pairing: { columns: 'r.name', title: (row) => row['name'] ?? '' },
  clutch: { columns: 'r.laid, r.code', title: ({ laid = null, code = null }) => clutchTitle({ laid, code }) },
  observation: {
    columns: 'r.kind, r.observed_on as date',
    title: ({ kind = null, date = null }) => say`${kind ?? 'note'} of ${date ?? say`no date`}`,
  },
};

const inPercent = (probability: unknown): string => `${Number((Number(probability) * 100).toPrecision(3))} %`;
const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');
/** A text with a reason behind it, which stays as it was written. */
const because = (text: string, reason: unknown): string =>
  textOf(reason) === '' ? text : together([text], ([told]) => `${told ?? ''} (${textOf(reason)})`);
const animal = (nameOf: NameOf, id: unknown): string =>
  id === null ? sayAgain('unknown') : nameOf('individual', textOf(id));

const warnings: ToldRows = {
  field: 'confirmedWarnings',
  line: ({ code, reason }) => because(textOf(code), reason),
};

/** What a merging moved from one record of an animal to the other. */
const moved: ToldRows = {
  field: 'moved',
  line: ({ clutchId, pairingId, individualId, claimId, photographId, remark, acknowledgement }, nameOf) => {
    if (typeof clutchId === 'string') return nameOf('clutch', clutchId);
    if (typeof pairingId === 'string') return say`stay in ${nameOf('pairing', pairingId)}`;
    if (typeof individualId === 'string') return say`record ${nameOf('individual', individualId)}`;
    if (typeof claimId === 'string') return nameOf('claim', claimId);
    if (typeof photographId === 'string') return nameOf('photograph', photographId);
    if (typeof acknowledgement === 'string') return say`acknowledged flag`;
    return typeof remark === 'string' ? say`remark` : say`confirmed warning`;
  },
};

const young: ToldRows = { field: 'young', line: ({ individualId }, nameOf) => animal(nameOf, individualId) };

/** What stands for records that may not be seen. */
const hidden = {
  individual: say`a private animal`,
  source: say`a private source`,
  clutch: say`a private clutch`,
  pairing: say`a private pairing`,
} satisfies Partial<Record<RegisterKind, string>>;

const rows: Partial<Record<RegisterKind, Readonly<Record<string, ToldRows>>>> = {
  species: {
    ranges: {
      field: 'ranges',
      line: ({ trait, usualLeast, usualMost, extremeLeast, extremeMost, source }) =>
        because(
          say`${textOf(trait)}: usual ${span(usualLeast, usualMost)}, ever ${span(extremeLeast, extremeMost)}`,
          source,
        ),
    },
  },
  individual: { warnings, moved },
  pairing: {
    members: {
      field: 'members',
      // the days of an animal that may not be seen are not told
      line: ({ individualId, joined, left }, nameOf) =>
        animal(nameOf, individualId) === hidden.individual
          ? hidden.individual
          : say`${animal(nameOf, individualId)}, from ${textOf(joined) || '?'} to ${textOf(left) || say`now`}`,
    },
  },
  clutch: {
    candidates: {
      field: 'parents',
      line: ({ role, individualId, probability, reason }, nameOf) =>
        because(say`${textOf(role)} ${animal(nameOf, individualId)}, ${inPercent(probability)}`, reason),
    },
    pairs: {
      field: 'parents',
      line: ({ aId, bId, probability, reason }, nameOf) =>
        because(say`${animal(nameOf, aId)} with ${animal(nameOf, bId)}, ${inPercent(probability)}`, reason),
    },
    losses: { field: 'losses', line: ({ cause, count }) => say`${textOf(cause)}: ${String(count)}` },
    warnings,
    young,
  },
};

function span(least: unknown, most: unknown): string {
  const known = (value: unknown): string => (typeof value === 'number' ? String(value) : '?');
  return say`${known(least)} to ${known(most)}`;
}

const broughtByImports: readonly RegisterKind[] = ['species', 'line', 'source', 'individual', 'clutch'];

/** Each kind speaks of its own entity; what is done with them is the same for all. */
const kinds = {
  species: speciesKind,
  line: lineKind,
  source: sourceKind,
  individual: individualKind,
  pairing: pairingKind,
  clutch: clutchKind,
  observation: observationKind,
} as Readonly<Record<RegisterKind, unknown>> as Readonly<Record<RegisterKind, AnyKind>>;

/** What the journal has to know of the records of the register. */
export const registerKinds: readonly JournalKind[] = (Object.keys(titled) as RegisterKind[]).map((kind) =>
  recordKind(kind, kinds[kind], titled[kind], {
    ...(kind in hidden ? { hidden: hidden[kind as keyof typeof hidden] } : {}),
    ...(broughtByImports.includes(kind)
      ? { origins: (id: string) => `select r.import_id from ${kind} r where r.id = ${id} and r.import_id is not null` }
      : {}),
    rows: rows[kind] ?? {},
    undo: {
      ...(kind === 'individual' || kind === 'clutch'
        ? { confirmed: undoConfirmation, unconfirmed: undoConfirmation }
        : {}),
      ...(kind === 'individual' ? { merged: undoMerging, unmerged: undoUnmerging } : {}),
      ...(kind === 'clutch'
        ? { raised: undoRaising, 'raising-restored': undoRaising, 'raising-undone': raiseAgain }
        : {}),
    },
  }),
);
