import type { EntityManager } from 'typeorm';

export async function refuseImpossibleIndividual(_manager: EntityManager, _id: string): Promise<void> {
  return Promise.resolve();
}
