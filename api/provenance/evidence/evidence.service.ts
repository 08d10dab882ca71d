import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { dateColumns } from '../../platform/dates.ts';
import { isMatch, type VersionMatch } from '../../platform/etag.ts';
import { isId, newId } from '../../platform/ids.ts';
import { ConflictProblem, InvalidProblem, NotFoundProblem, StaleProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { ForbiddenProblem } from '../../people/permissions.ts';
import { lockStanding, sentFields, writeChange, type Kind } from '../../register/change.ts';
import { noteAdded, noteChange, sayOfChange } from '../../register/kept/note-change.ts';
import { present } from '../../register/present.ts';
import { requireStanding } from '../../register/standing.queries.ts';
import { seenIn } from '../../register/seen-records.ts';
import type { EvidenceChangeRequest, NewEvidenceRequest, ReviewRequest } from './evidence.dto.ts';
import { Evidence } from './evidence.entity.ts';
import { findEvidence } from './evidence.queries.ts';
import type { EvidenceView } from './evidence.view.ts';
import { say } from '../../platform/say.ts';

export const evidenceKind: Kind<Evidence, EvidenceView> = { word: 'evidence', entity: Evidence, find: findEvidence };

/** Fields that are written as they are sent. */
const plainFields = ['bearing', 'kind', 'names', 'reference', 'issuedBy', 'repeatsId', 'notes'] as const;

/** Evidence that bears on claims, and its review. All of it changes under the lock of the lineage, since shares follow from it. */
@Injectable()
export class EvidenceService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One piece of evidence; 404 where there is none. */
  async get(id: string): Promise<EvidenceView> {
    return present(await findEvidence(this.dataSource.manager, id), () => new NotFoundProblem(say`evidence`, id));
  }

  /** Adds evidence of the acting keeper, which waits for a review; 422 unless the claim stands. */
  async add(keeper: Acting, request: NewEvidenceRequest): Promise<EvidenceView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      await requireStanding(manager, 'claim', request.claimId, '/claimId');
      await requireOfClaim(manager, request.repeatsId, request.claimId, null);
      const id = newId();
      await manager.insert(Evidence, {
        id,
        keeperId: keeper.id,
        ...sentFields(request, ['claimId', ...plainFields]),
        ...dateColumns('dated', request.dated ?? null),
      });
      noteAdded(manager, 'evidence', id);
      return present(await findEvidence(manager, id), () => new NotFoundProblem(say`evidence`, id));
    });
  }

  /** Changes evidence that nobody has reviewed; 404, 409 where somebody has, 412, 422. */
  async change(id: string, match: VersionMatch, request: EvidenceChangeRequest): Promise<EvidenceView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      const evidence = await lockUnreviewed(manager, id, match);
      await requireOfClaim(manager, request.repeatsId, evidence.claimId, id);
      const dated = request.dated === undefined ? {} : dateColumns('dated', request.dated);
      await writeChange(manager, evidenceKind, evidence, { ...sentFields(request, plainFields), ...dated });
      return present(await findEvidence(manager, id), () => new NotFoundProblem(say`evidence`, id));
    });
  }

  /**
   * A registrar accepts or rejects evidence of another keeper, with a reason; a later review replaces an earlier one. 403 for one's
   * own, 404, 409 where it was withdrawn, 412.
   */
  async review(reviewer: Acting, id: string, match: VersionMatch, request: ReviewRequest): Promise<EvidenceView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      const evidence = await lockSeen(manager, id);
      if (evidence.keeperId === reviewer.id)
        throw new ForbiddenProblem(say`Nobody reviews their own evidence. Ask another registrar.`);
      if (!isMatch(match, evidence.version)) throw new StaleProblem(await findEvidence(manager, id));
      if (evidence.withdrawnAt !== null)
        throw new ConflictProblem(say`This evidence was withdrawn. There is nothing to review.`);
      await noteChange(manager, 'evidence', id);
      await writeChange(manager, evidenceKind, evidence, {
        review: request.verdict,
        reviewerId: reviewer.id,
        reviewedAt: new Date(),
        reviewReason: request.reason,
      });
      sayOfChange(manager, id, { action: 'reviewed', reason: request.reason });
      return present(await findEvidence(manager, id), () => new NotFoundProblem(say`evidence`, id));
    });
  }
}

/** Locks evidence for a change by its keeper or a registrar, and refuses with 409 what was reviewed: others rely on it as it is. */
export async function lockUnreviewed(manager: EntityManager, id: string, match: VersionMatch): Promise<Evidence> {
  const evidence = await lockStanding(manager, evidenceKind, id, match);
  if (evidence.review === 'pending') return evidence;
  throw new ConflictProblem(
    say`This evidence was reviewed as it is. Withdraw it and bring it again as it should be, so that it is reviewed anew.`,
  );
}

async function lockSeen(manager: EntityManager, id: string): Promise<Evidence> {
  const evidence = isId(id)
    ? await manager
        .createQueryBuilder(Evidence, 'e')
        .setLock('pessimistic_write')
        .where('e.id = :id', { id })
        .andWhere(seenIn.evidence('e'))
        .getOne()
    : null;
  return present(evidence, () => new NotFoundProblem(say`evidence`, id));
}

/** What evidence repeats is another one of the same claim, and does not repeat it in turn. */
async function requireOfClaim(
  manager: EntityManager,
  repeatsId: string | null | undefined,
  claimId: string,
  ownId: string | null,
): Promise<void> {
  if (repeatsId === null || repeatsId === undefined) return;
  await requireStanding(manager, 'evidence', repeatsId, '/repeatsId');
  const other = await manager.findOneByOrFail(Evidence, { id: repeatsId });
  const refuse = (detail: string): never => {
    throw new InvalidProblem(detail, [{ pointer: '/repeatsId', detail }]);
  };
  if (other.claimId !== claimId.toLowerCase())
    refuse(say`This evidence is of another claim. Choose one of the same claim.`);
  if (other.id === ownId) refuse(say`Evidence cannot repeat itself.`);
}
