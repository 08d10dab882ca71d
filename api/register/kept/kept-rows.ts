import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { LossCause, ParentRole, Sex, Trait } from '../../../shared/vocabulary.ts';
import { dateColumns } from '../../platform/dates.ts';
import { newId } from '../../platform/ids.ts';
import type { KeptForm } from '../../platform/journal-entry.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { ClutchLoss } from '../clutches/clutch-loss.entity.ts';
import type { Candidate, ParentAnimal, Parents } from '../clutches/parents.ts';
import { writeParents } from '../clutches/parents.queries.ts';
import { PairingMember } from '../pairings/pairing-member.entity.ts';
import { SpeciesRange } from '../species/species-range.entity.ts';
import { requireStanding } from '../standing.queries.ts';
import { ConfirmedWarning } from '../warnings/confirmed-warning.entity.ts';
import { say } from '../../platform/say.ts';

interface KeptCandidate {
  readonly role: ParentRole;
  readonly individualId: string | null;
  readonly probability: number;
  readonly reason: string | null;
}

interface KeptPair {
  readonly aId: string;
  readonly bId: string;
  readonly probability: number;
  readonly reason: string | null;
}

interface KeptMember {
  readonly id: string;
  readonly individualId: string;
  readonly joined: string | null;
  readonly left: string | null;
}

interface KeptWarning {
  readonly code: string;
  readonly detail: string;
  readonly reason: string;
  readonly keeperId: string;
  readonly confirmedAt: string;
}

type KeptRange = Omit<SpeciesRange, 'speciesId'> & { readonly trait: Trait };

/** The rows of a form that stand under a name; a form says which they are. */
const rowsOf = <Row>(form: KeptForm, name: string): readonly Row[] => (form[name] ?? []) as readonly Row[];

/** Puts the life-history ranges of a species back. */
export async function writeKeptRanges(manager: EntityManager, speciesId: string, form: KeptForm): Promise<void> {
  const ranges = rowsOf<KeptRange>(form, 'ranges');
  await manager.delete(SpeciesRange, { speciesId });
  if (ranges.length > 0)
    await manager.insert(
      SpeciesRange,
      ranges.map((range) => ({ ...range, speciesId })),
    );
}

/** Puts the losses of a clutch back. */
export async function writeKeptLosses(manager: EntityManager, clutchId: string, form: KeptForm): Promise<void> {
  const losses = rowsOf<{ cause: LossCause; count: number }>(form, 'losses');
  await manager.delete(ClutchLoss, { clutchId });
  if (losses.length > 0)
    await manager.insert(
      ClutchLoss,
      losses.map((loss) => ({ ...loss, clutchId })),
    );
}

/** Puts the confirmed warnings of an animal or a clutch back, each in the words that were confirmed. */
export async function writeKeptWarnings(
  manager: EntityManager,
  kind: 'individual' | 'clutch',
  id: string,
  form: KeptForm,
): Promise<void> {
  const owner = kind === 'individual' ? { individualId: id } : { clutchId: id };
  const warnings = rowsOf<KeptWarning>(form, 'warnings');
  await manager.delete(ConfirmedWarning, owner);
  if (warnings.length > 0)
    await manager.insert(
      ConfirmedWarning,
      warnings.map((warning) => ({ ...warning, ...owner, id: newId(), confirmedAt: new Date(warning.confirmedAt) })),
    );
}

/**
 * Puts the stays of a pairing back under their ids. What is another goes before it comes again, so that two stays can change places
 * in time. 422 where an animal was withdrawn since.
 */
export async function writeKeptMembers(
  manager: EntityManager,
  pairingId: string,
  current: KeptForm,
  form: KeptForm,
): Promise<void> {
  const now = new Map(rowsOf<KeptMember>(current, 'members').map((row) => [row.id, JSON.stringify(row)]));
  const wanted = rowsOf<KeptMember>(form, 'members');
  const kept = new Set(wanted.filter((row) => now.get(row.id) === JSON.stringify(row)).map((row) => row.id));
  for (const id of now.keys()) if (!kept.has(id)) await manager.delete(PairingMember, { id, pairingId });
  const coming = wanted.filter((row) => !kept.has(row.id));
  for (const { individualId } of coming) await requireStanding(manager, 'individual', individualId, '/members');
  if (coming.length > 0)
    await manager.insert(
      PairingMember,
      coming.map(({ id, individualId, joined, left }) => ({
        id,
        pairingId,
        individualId,
        ...dateColumns('joined', joined),
        ...dateColumns('left', left),
        stands: (form['withdrawnAt'] ?? null) === null,
      })),
    );
}

/** Puts the possible parents of a clutch back; 409 where that closes a loop by now, 422 where one was withdrawn since. */
export async function writeKeptParents(manager: EntityManager, clutchId: string, form: KeptForm): Promise<void> {
  const candidates = rowsOf<KeptCandidate>(form, 'candidates');
  const pairs = rowsOf<KeptPair>(form, 'pairs');
  const animals = await findStanding(manager, [
    ...candidates.flatMap(({ individualId }) => individualId ?? []),
    ...pairs.flatMap(({ aId, bId }) => [aId, bId]),
  ]);
  const side = (role: ParentRole): Candidate[] =>
    candidates
      .filter((candidate) => candidate.role === role)
      .map(({ individualId, probability, reason }) => ({
        animal: individualId === null ? null : (animals.get(individualId) ?? null),
        weight: probability,
        reason,
      }));
  const parents: Parents =
    pairs.length === 0
      ? { mode: 'lists', sires: side('sire'), dams: side('dam') }
      : {
          mode: 'pairs',
          pairs: pairs.flatMap(({ aId, bId, probability, reason }) => {
            const [a, b] = [animals.get(aId), animals.get(bId)];
            return a && b ? [{ a, b, weight: probability, reason }] : [];
          }),
        };
  await writeParents(manager, clutchId, parents);
}

/** Animals by their ids (primary key); 422 that names those that were withdrawn. */
async function findStanding(
  manager: EntityManager,
  ids: readonly string[],
): Promise<ReadonlyMap<string, ParentAnimal>> {
  const rows = await manager.query<{ id: string; number: string; sex: Sex; tier: number; withdrawn: boolean }[]>(
    'select id, number::text, sex, tier, withdrawn_at is not null as withdrawn from individual where id = any($1)',
    [ids],
  );
  const gone = rows.filter((row) => row.withdrawn).map((row) => formatRegistryNumber(row.number));
  if (gone.length > 0) {
    const detail = say`A parent was withdrawn since: ${gone.join(', ')}. Restore it first.`;
    throw new InvalidProblem(detail, [{ pointer: '/parents', detail }]);
  }
  return new Map(
    rows.map(({ id, number, sex, tier }) => [id, { id, number: formatRegistryNumber(number), sex, tier }]),
  );
}
