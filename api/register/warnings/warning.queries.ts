import type { EntityManager } from 'typeorm';
import type { WarningView } from './warning.view.ts';

export async function readIndividualWarnings(_manager: EntityManager, _id: string): Promise<WarningView[]> {
  return Promise.resolve([]);
}
