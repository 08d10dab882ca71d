import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { Problem } from '../../platform/problem.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockForChange } from '../change.ts';
import { clutchKind } from '../clutches/clutches.service.ts';
import { individualKind } from '../individuals/individuals.service.ts';
import { sayOfChange } from '../kept/note-change.ts';
import { warningCodes } from './facts.ts';
import {
  readClutchWarnings,
  readIndividualWarnings,
  removeConfirmation,
  storeConfirmation,
  type WarnedKind,
} from './warning.queries.ts';
import type { WarningView } from './warning.view.ts';
import { say } from '../../platform/say.ts';

const words = { individual: 'animal', clutch: 'clutch' } as const;

/** Confirmations of plausibility warnings. */
@Injectable()
export class WarningsService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** Accepts a warning of a record in its present words, with a reason; 404 where the record carries no such warning, 403. */
  async confirm(keeper: Acting, kind: WarnedKind, id: string, code: string, reason: string): Promise<WarningView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockWarned(manager, kind, id);
      sayOfChange(manager, id, { action: 'confirmed', reason });
      const warning = await findWarning(manager, kind, id, code);
      await storeConfirmation(manager, kind, id, warning, reason, keeper.id);
      return findWarning(manager, kind, id, code);
    });
  }

  /** Takes the confirmation of a warning back; 404 where there is none, 403. */
  async takeBack(kind: WarnedKind, id: string, code: string): Promise<void> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockWarned(manager, kind, id);
      sayOfChange(manager, id, { action: 'unconfirmed' });
      const isCode = warningCodes.some((known) => known === code);
      const wasThere = isCode && (await removeConfirmation(manager, kind, id, code));
      if (!wasThere)
        throw new Problem('not-found', 404, say`Not found`, say`This ${words[kind]} has no confirmed warning ${code}.`);
    });
  }
}

/** Accepting a warning is a change of its record; whoever reads it need not have read its latest version. */
async function lockWarned(manager: EntityManager, kind: WarnedKind, id: string): Promise<void> {
  if (kind === 'individual') await lockForChange(manager, individualKind, id, 'any');
  else await lockForChange(manager, clutchKind, id, 'any');
}

async function findWarning(manager: EntityManager, kind: WarnedKind, id: string, code: string): Promise<WarningView> {
  const warnings =
    kind === 'individual' ? await readIndividualWarnings(manager, id) : await readClutchWarnings(manager, id);
  const warning = warnings.find((candidate) => candidate.code === code);
  if (!warning)
    throw new Problem('not-found', 404, say`Not found`, say`This ${words[kind]} carries no warning ${code}.`);
  return warning;
}
