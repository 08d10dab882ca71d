import { Club } from './club.entity.ts';
import { Keeper } from './keeper.entity.ts';

/** Every table of the people room. */
export const peopleEntities = [Keeper, Club];
