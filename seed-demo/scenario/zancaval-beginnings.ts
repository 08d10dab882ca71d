import type { GroupPlan } from '../engine/plan.ts';
import { keepers } from './keepers.ts';

/** Río Zancaval from 1997 to 2010: the import, the collection, and their first young together. All of it is invented. */
export const beginnings: readonly GroupPlan[] = [
  {
    name: 'First tank',
    keeper: keepers.orla,
    since: '1997',
    until: '2001',
    members: ['ZV-01', 'ZV-02', 'ZV-03'],
    clutches: ['1999~ ZV-04m ZV-05f ZV-06f'],
  },
  {
    name: 'Window tank',
    keeper: keepers.orla,
    since: '2001-06',
    until: '2005-12',
    members: ['ZV-04', 'ZV-06', 'ZV-07 2002-02'],
    notes: 'Two females with one male; who laid is a guess.',
    clutches: [
      '2002-09-14 ZV-21m ZV-22f',
      '2003-04-02 ZV-24m ZV-25f',
      {
        laid: '2004-03-21',
        young: 'ZV-26m ZV-27f',
        dams: [
          ['ZV-07', 0.7, 'round with eggs the evening before'],
          ['ZV-06', 0.3],
        ],
      },
    ],
  },
  {
    name: 'Collected four',
    keeper: keepers.saskia,
    since: '2003-03',
    until: '2008-06',
    members: ['ZV-11', 'ZV-12', 'ZV-13', 'ZV-14'],
    clutches: [
      {
        laid: '2003-11-08',
        young: 'ZV-31m ZV-33f',
        sires: [
          ['ZV-11', 0.6, 'called at the leaf with the eggs'],
          ['ZV-13', 0.4],
        ],
      },
      '2004-06-19 ZV-34m',
      {
        laid: '2005-05-07',
        young: 'ZV-36m ZV-37f',
        sires: [
          ['ZV-13', 0.8, 'carried the tadpoles'],
          ['ZV-11', 0.2],
        ],
      },
      '2006-03-12 ZV-39m ZV-40f',
      '2007-04-21',
    ],
  },
  {
    name: 'Shelf two',
    keeper: keepers.orla,
    since: '2006-02',
    until: '2010-04',
    members: ['ZV-24', 'ZV-33', 'ZV-37 2006-09'],
    notes: 'The import and the collection meet here for the first time.',
    clutches: [
      '2006-04-29',
      '2006-10-20 ZV-41m ZV-42f',
      '2007-05-13 ZV-44m ZV-45f',
      {
        laid: '2008-02-24',
        young: 'ZV-46m ZV-48f',
        dams: [
          ['ZV-37', 0.8, 'courted with the male all week'],
          ['ZV-33', 0.2],
        ],
      },
    ],
  },
  {
    name: 'Cellar rack A',
    keeper: keepers.emeric,
    since: '2006-05',
    until: '2010-09',
    members: ['ZV-31', 'ZV-36', 'ZV-22', 'ZV-27'],
    clutches: ['2007-03-03 ZV-49m ZV-50f', '2008-01-19 ZV-52m ZV-53f', '2009-02-07 ZV-54m ZV-55f'],
  },
];
