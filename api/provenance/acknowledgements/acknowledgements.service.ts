import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { FlagCode } from '../../../shared/vocabulary.ts';
import type { Acting } from '../../platform/acting.ts';
import { newId } from '../../platform/ids.ts';
import { InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { noteAdded } from '../../register/kept/note-change.ts';
import { present } from '../../register/present.ts';
import { holdStanding, requireStanding } from '../../register/standing.queries.ts';
import { acknowledgedSubjects, type NewAcknowledgementRequest } from './acknowledgement.dto.ts';
import { findAcknowledgement } from './acknowledgement.queries.ts';
import type { AcknowledgementView } from './acknowledgement.view.ts';
import { FlagAcknowledgement } from './flag-acknowledgement.entity.ts';
import { KNOWN_CAUSES_MOST } from './known-flags.ts';
import { say } from '../../platform/say.ts';

/** A flag that an animal or line carries, with the ids of the records that cause it. */
export interface CarriedNow {
  readonly code: FlagCode;
  readonly recordIds: readonly string[];
}

/** What carries a flag. */
export interface FlagSubject {
  readonly table: 'individual' | 'line';
  readonly id: string;
}

/** The flags that an animal or line carries now. */
export type FlagsOf = (subject: FlagSubject) => Promise<readonly CarriedNow[]>;

/** Keeps what registrars say of flags. */
@Injectable()
export class AcknowledgementsService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One acknowledgement; 404 where there is none. */
  async get(id: string): Promise<AcknowledgementView> {
    return present(
      await findAcknowledgement(this.dataSource.manager, id),
      () => new NotFoundProblem(say`acknowledgement`, id),
    );
  }

  /**
   * Acknowledges a flag that an animal or line carries; 422 where it does not, 409 where it is acknowledged already. The flags are computed
   * before anything is locked: of one that is cleared at the same moment the acknowledgement stays behind, and is told nowhere.
   */
  async add(keeper: Acting, request: NewAcknowledgementRequest, flagsOf: FlagsOf): Promise<AcknowledgementView> {
    const subject = subjectOf(request);
    const { table, id: subjectId } = subject;
    const pointer = `/${table}Id`;
    await requireStanding(this.dataSource.manager, table, subjectId, pointer);
    const flag = requireFlag(await flagsOf(subject), request.code, table);
    return inTransaction(this.dataSource, async (manager) => {
      await requireStanding(manager, table, subjectId, pointer);
      await holdStanding(manager, table, [subjectId], () => pointer);
      const id = newId();
      await manager.insert(FlagAcknowledgement, {
        id,
        keeperId: keeper.id,
        [`${table}Id`]: subjectId,
        code: request.code,
        recordIds: flag.recordIds.slice(0, KNOWN_CAUSES_MOST),
        reason: request.reason,
      });
      noteAdded(manager, 'flag_acknowledgement', id);
      return present(await findAcknowledgement(manager, id), () => new NotFoundProblem(say`acknowledgement`, id));
    });
  }
}

function subjectOf(request: NewAcknowledgementRequest): FlagSubject {
  const [only, ...more] = acknowledgedSubjects.filter((subject) => request[subject] !== undefined);
  if (only === undefined || more.length > 0) {
    const detail = say`Say whose flag it is: exactly one of individualId and lineId.`;
    throw new InvalidProblem(detail, [{ pointer: '/individualId', detail }]);
  }
  const id = (request[only] ?? '').toLowerCase();
  return { table: only === 'lineId' ? 'line' : 'individual', id };
}

function requireFlag(flags: readonly CarriedNow[], code: FlagCode, table: FlagSubject['table']): CarriedNow {
  const flag = flags.find((carried) => carried.code === code);
  if (flag) return flag;
  const carried = flags.length === 0 ? 'none' : flags.map((other) => other.code).join(', ');
  const what = table === 'line' ? say`No member of this line carries` : say`This animal does not carry`;
  const detail = say`${what} the flag ${code} now. Carried are: ${carried}.`;
  throw new InvalidProblem(detail, [{ pointer: '/code', detail }]);
}
