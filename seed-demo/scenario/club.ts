import type { ClubPlan } from '../engine/plan.ts';
import { almibar } from './almibar.ts';
import { cross } from './cross.ts';
import { emberSaddle } from './ember-saddle.ts';
import { giltThread } from './gilt-thread.ts';
import { keepers } from './keepers.ts';
import { korrandStock } from './korrand-stock.ts';
import { lichenHollow, mossStock } from './mossy.ts';
import { species } from './species.ts';
import { velisqua } from './velisqua.ts';
import { zancaval } from './zancaval.ts';

/** The invented club: invented keepers, places, labels, shipments and animals. Only the species are real. */
export const club: ClubPlan = {
  name: 'Mirewell Amphibian Circle (invented demo club)',
  today: '2026-11-15',
  keepers: Object.values(keepers),
  species,
  lines: [zancaval, emberSaddle, almibar, cross, korrandStock, velisqua, giltThread, mossStock, lichenHollow],
};
