import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { dateColumns } from '../../platform/dates.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { newId } from '../../platform/ids.ts';
import { InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, sentFields, writeChange, type Kind } from '../../register/change.ts';
import { noteAdded } from '../../register/kept/note-change.ts';
import { present } from '../../register/present.ts';
import { requireStanding } from '../../register/standing.queries.ts';
import { claimSubjects, type ClaimChangeRequest, type NewClaimRequest } from './claim.dto.ts';
import { Claim } from './claim.entity.ts';
import { findClaim } from './claim.queries.ts';
import type { ClaimView } from './claim.view.ts';
import { say } from '../../platform/say.ts';

export const claimKind: Kind<Claim, ClaimView> = { word: 'claim', entity: Claim, find: findClaim };

/** Fields that can be changed and are written as they are sent. */
const plainFields = [
  'aspect',
  'value',
  'statedBy',
  'locality',
  'countryCode',
  'stateProvince',
  'decimalLatitude',
  'decimalLongitude',
  'geodeticDatum',
  'coordinateUncertaintyM',
  'georeferencedBy',
  'georeferenceSources',
  'notes',
] as const;

/** Claims about where a source, a line or an animal comes from. */
@Injectable()
export class ClaimsService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One claim; 404 where there is none. */
  async get(id: string): Promise<ClaimView> {
    return present(await findClaim(this.dataSource.manager, id), () => new NotFoundProblem(say`claim`, id));
  }

  /** Adds a claim of the acting keeper; 409 where the record has the same one, 422 unless it is about one record that stands. */
  async add(keeper: Acting, request: NewClaimRequest): Promise<ClaimView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      await requireSubject(manager, request);
      const id = newId();
      await manager.insert(Claim, {
        id,
        keeperId: keeper.id,
        ...sentFields(request, [...claimSubjects, 'verbatimLocality', ...plainFields]),
        ...dateColumns('statedOn', request.statedOn ?? null),
      });
      noteAdded(manager, 'claim', id);
      return present(await findClaim(manager, id), () => new NotFoundProblem(say`claim`, id));
    });
  }

  /** Changes a claim; 404, 409, 412, 422. */
  async change(id: string, match: VersionMatch, request: ClaimChangeRequest): Promise<ClaimView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      const claim = await lockStanding(manager, claimKind, id, match);
      const statedOn = request.statedOn === undefined ? {} : dateColumns('statedOn', request.statedOn);
      await writeChange(manager, claimKind, claim, { ...sentFields(request, plainFields), ...statedOn });
      return present(await findClaim(manager, id), () => new NotFoundProblem(say`claim`, id));
    });
  }
}

/** The lock of the lineage keeps the subject standing until the claim is written. */
async function requireSubject(manager: EntityManager, request: NewClaimRequest): Promise<void> {
  const named = claimSubjects.filter((subject) => request[subject] !== undefined);
  if (named.length !== 1) {
    const detail = say`Say what it is about: exactly one of sourceId, lineId and individualId.`;
    throw new InvalidProblem(detail, [{ pointer: '/sourceId', detail }]);
  }
  for (const table of ['source', 'line', 'individual'] as const)
    await requireStanding(manager, table, request[`${table}Id`], `/${table}Id`);
}
