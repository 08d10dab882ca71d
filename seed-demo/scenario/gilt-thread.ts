import type { LinePlan } from '../engine/plan.ts';
import { keepers } from './keepers.ts';
import { thumbnail } from './species.ts';

/**
 * Gilt Thread, a trade name. All of it is invented.
 * What the records show: four founders that nobody could sex, so that any two of them may be the parents (joint pairs), a
 * source whose animals are probably siblings, and a slip of the pen that nobody has looked at: the clutch GT-31 and GT-32 hatched from is
 * noted a year too early.
 */
export const giltThread: LinePlan = {
  species: thumbnail,
  name: 'Gilt Thread',
  prefix: 'GT',
  labelKind: 'trade-name',
  sources: [
    {
      code: 'S-GT1',
      keeper: keepers.corvin,
      kind: 'purchase',
      date: '2009-03',
      receivedFrom: 'a fair',
      labelAsReceived: 'Gilt Thread',
      baseKinship: 0.25,
      notes: 'Four froglets out of one box, probably siblings.',
      founders: 'GT-01 GT-02 GT-03 GT-04',
    },
    {
      code: 'S-GT2',
      keeper: keepers.noor,
      kind: 'purchase',
      date: '2013~',
      labelAsReceived: 'Gilt Thread',
      founders: 'GT-22f',
    },
    {
      code: 'S-GT3',
      keeper: keepers.noor,
      kind: 'purchase',
      date: '2020-09',
      labelAsReceived: 'Gilt Thread',
      founders: 'GT-51m GT-52f',
    },
  ],
  strays: [],
  groups: [
    {
      name: 'Four unsexed',
      keeper: keepers.corvin,
      since: '2009-04',
      until: '2014-02',
      members: ['GT-01', 'GT-02', 'GT-03', 'GT-04'],
      notes: 'Nobody ever heard one call.',
      clutches: [
        '2010-05-23 GT-11m GT-12f',
        {
          laid: '2011-02-27',
          young: 'GT-13m GT-14f',
          pairs: [
            ['GT-01', 'GT-03', 0.7, 'seen side by side at the eggs'],
            ['GT-01', 'GT-02', 0.1],
            ['GT-02', 'GT-03', 0.1],
            ['GT-03', 'GT-04', 0.1],
          ],
        },
        '2012-04-15 GT-15m GT-16f',
      ],
    },
    {
      name: 'Corvin, thread pair',
      keeper: keepers.corvin,
      since: '2012-05',
      until: '2017-02',
      members: ['GT-11', 'GT-14'],
      clutches: ['2012-11-18 GT-17m GT-18f', '2014-03-09 GT-19m GT-20f', '2016-10-02 GT-21f'],
    },
    {
      name: 'Noor, thread pair',
      keeper: keepers.noor,
      since: '2014-02',
      until: '2018-12',
      members: ['GT-13', 'GT-22'],
      clutches: ['2014-08-17 GT-23m GT-24f', '2015-12-13 GT-25m GT-26f', '2017-11-26 GT-27f GT-28m'],
    },
    {
      name: 'Corvin, thread pair two',
      keeper: keepers.corvin,
      since: '2018-11',
      until: '2023-06',
      members: ['GT-19', 'GT-27'],
      clutches: [
        {
          laid: '2018-02-11',
          trulyLaid: '2019-02-11',
          young: 'GT-31m GT-32f',
          sires: [['GT-19', 1]],
          dams: [['GT-27', 1]],
        },
        '2020-07-26 GT-33m GT-34f',
        '2021-12-05 GT-35f',
      ],
    },
    {
      name: 'Noor, thread today',
      keeper: keepers.noor,
      since: '2021-09',
      until: '2025-10',
      members: ['GT-28', 'GT-32'],
      clutches: ['2022-04-10 GT-36m GT-37f', '2023-11-12 GT-38 GT-39'],
    },
    {
      name: 'Emeric, thread pair',
      keeper: keepers.emeric,
      since: '2022-04',
      members: ['GT-33', 'GT-52'],
      clutches: ['2022-08-14 GT-53m GT-54f', '2024-02-11 GT-55m GT-56f', '2025-12-14 GT-57', '2026-11-04'],
    },
    {
      name: 'Three in the new tank',
      keeper: keepers.corvin,
      since: '2025-02',
      members: ['GT-38', 'GT-39', 'GT-34'],
      notes: 'Two of them cannot be told apart by looks and neither calls.',
      clutches: ['2025-05-11 GT-41 GT-42', '2026-03-15 GT-43 GT-44', '2026-10-11'],
    },
    {
      name: 'Noor, thread pair today',
      keeper: keepers.noor,
      since: '2023-09',
      members: ['GT-51', 'GT-37'],
      clutches: ['2024-04-21 GT-45m GT-46f', '2026-01-25 GT-47'],
    },
  ],
  fates: {
    'GT-36': { status: 'alive' },
    'GT-35': { status: 'alive' },
    'GT-28': { status: 'alive' },
    'GT-41': { status: 'alive' },
    'GT-42': { status: 'alive' },
  },
  remarks: [
    {
      about: 'Four unsexed',
      on: '2011-03-01',
      kind: 'behaviour',
      text: 'GT-01 and GT-03 together at the canister, both leave when the light goes on.',
      keeper: keepers.corvin,
    },
  ],
};
