import type { LinePlan } from '../engine/plan.ts';
import { keepers } from './keepers.ts';
import { phantasmal } from './species.ts';

/**
 * Ember Saddle, a trade name given to a look. All of it is invented.
 * What the records show: a mixed shipment of which only the country is known, laying dates like `199X`, a swapped female
 * without origin (EM-42), and EM-41, the male that wandered into Río Zancaval.
 */
export const emberSaddle: LinePlan = {
  species: phantasmal,
  name: 'Ember Saddle',
  prefix: 'EM',
  labelKind: 'trade-name',
  policy: 'A name for a look, no place. (Invented.)',
  sources: [
    {
      code: 'S-EM1',
      keeper: keepers.tobiah,
      kind: 'import',
      date: '1994~',
      receivedFrom: 'a mixed shipment of several forms',
      countryOfExport: 'EC',
      labelNote: 'No label. Sorted by looks on arrival; the name came years later.',
      claims: [
        {
          keeper: keepers.tobiah,
          aspect: 'trade-name',
          value: 'Ember Saddle',
          statedBy: 'whoever sorted the shipment by looks',
          countryCode: 'EC',
          evidence: [
            {
              keeper: keepers.tobiah,
              kind: 'importers-list',
              names: 'country',
              reference: 'list of a mixed shipment, one line: "assorted"',
              issuedBy: 'an invented importer',
              dated: '1994~',
              reviewed: {
                by: keepers.orla,
                on: '2023-02-18',
                as: 'accepted',
                reason: 'It names the country of export, and nothing else.',
              },
            },
          ],
        },
      ],
      founders: 'EM-01m EM-02f EM-03m EM-04f',
    },
    {
      code: 'S-EM2',
      keeper: keepers.emeric,
      kind: 'purchase',
      date: '2003-05',
      receivedFrom: 'a fair',
      labelAsReceived: 'Ember Saddle',
      baseKinship: 0.125,
      notes: 'Sold as "probably from one breeder": hence the base kinship of half sibs.',
      founders: 'EM-21m EM-22f',
    },
    {
      code: 'S-EM3',
      keeper: keepers.noor,
      kind: 'purchase',
      date: '2014-09',
      receivedFrom: 'a breeder outside the circle',
      labelAsReceived: 'Ember Saddle',
      founders: 'EM-81m EM-82f',
    },
  ],
  strays: [
    {
      animal: 'EM-42f',
      keeper: keepers.emeric,
      hatched: '200X',
      notes: 'Swapped at a meeting; nobody wrote down with whom.',
    },
  ],
  groups: [
    {
      name: 'Shipment tank',
      keeper: keepers.tobiah,
      since: '1995',
      until: '2000',
      members: ['EM-01', 'EM-02', 'EM-03', 'EM-04'],
      clutches: ['199X EM-05m EM-06f', '1998~ EM-07m EM-08f', '1999 EM-09m EM-10f'],
    },
    {
      name: 'Saddles, front room',
      keeper: keepers.tobiah,
      since: '2001-04',
      until: '2004-12',
      members: ['EM-05', 'EM-08', 'EM-10'],
      clutches: ['2001-10-06 EM-11m EM-12f', '2002-08-17 EM-14m', '2003-09-27 EM-16m'],
    },
    {
      name: 'Saddles, hallway',
      keeper: keepers.matthis,
      since: '2002-03',
      until: '2005-01',
      members: ['EM-07', 'EM-06'],
      clutches: ['2002-11-30 EM-18m EM-19f', '2003-06-14 EM-20f'],
    },
    {
      name: 'Fair pair with EM-12',
      keeper: keepers.emeric,
      since: '2003-10',
      until: '2007-03',
      members: ['EM-21', 'EM-22', 'EM-12'],
      clutches: ['2004-05-22 EM-23m EM-24f', '2005-04-30 EM-25m', '2006-06-10 EM-27m'],
    },
    {
      name: 'Saddles, second trio',
      keeper: keepers.tobiah,
      since: '2005-05',
      until: '2009-06',
      members: ['EM-14', 'EM-19', 'EM-24'],
      clutches: [
        '2005-11-12 EM-29m EM-31f',
        {
          laid: '2007-01-20',
          young: 'EM-32m',
          dams: [
            ['EM-19', 0.7, 'fed the tadpoles'],
            ['EM-24', 0.3],
          ],
        },
        '2008-03-08 EM-34m',
      ],
    },
    {
      name: 'Corvin, left rack',
      keeper: keepers.corvin,
      since: '2007-04',
      until: '2010-05',
      members: ['EM-25', 'EM-20', 'EM-31'],
      clutches: ['2007-09-01 EM-36m EM-38f', '2008-10-11 EM-39f EM-40f EM-41m'],
    },
    {
      name: 'Swap trio',
      keeper: keepers.emeric,
      since: '2009-04',
      until: '2013-09',
      members: ['EM-32', 'EM-38', 'EM-42'],
      clutches: [
        '2009-12-19 EM-43m EM-44f',
        '2011-03-26 EM-45m EM-46f',
        {
          laid: '2012-05-06',
          young: 'EM-48m EM-49f',
          dams: [
            ['EM-42', 0.6, 'laid the week before, too'],
            ['EM-38', 0.4],
          ],
        },
      ],
    },
    {
      name: 'Tobiah, corner',
      keeper: keepers.tobiah,
      since: '2012-06',
      until: '2016-05',
      members: ['EM-45', 'EM-40'],
      clutches: ['2013-04-21 EM-50m EM-51f', '2014-06-15 EM-52m EM-53f EM-54f', '2015-08-30 EM-55m EM-56f'],
    },
    {
      name: 'Noor, saddles',
      keeper: keepers.noor,
      since: '2015-06',
      until: '2020-02',
      members: ['EM-81', 'EM-49', 'EM-54'],
      clutches: ['2016-02-28 EM-57m EM-58f', '2017-05-21 EM-59m EM-60f', '2018-07-15 EM-61m EM-62f'],
    },
    {
      name: 'Corvin, right rack',
      keeper: keepers.corvin,
      since: '2016-07',
      until: '2019-10',
      members: ['EM-55', 'EM-82'],
      clutches: ['2017-03-12 EM-83m EM-84f', '2018-11-04 EM-85m EM-86f'],
    },
    {
      name: 'Tobiah, corner again',
      keeper: keepers.tobiah,
      since: '2018-09',
      until: '2023-03',
      members: ['EM-59', 'EM-56', 'EM-58'],
      notes: 'One of the two females is the sister of the male.',
      clutches: ['2019-04-07 EM-63m EM-64f', '2020-10-18 EM-65m EM-66f', '2022-02-20 EM-67m EM-68f'],
    },
    {
      name: 'Emeric, saddles today',
      keeper: keepers.emeric,
      since: '2023-05',
      members: ['EM-85', 'EM-62'],
      clutches: ['2024-03-17 EM-69m EM-70f', '2025-06-29 EM-71m EM-72f', '2026-05-17 EM-73 EM-74', '2026-10-24'],
    },
    {
      name: 'Noor, saddles today',
      keeper: keepers.noor,
      since: '2024-11',
      members: ['EM-67', 'EM-86', 'EM-70'],
      clutches: ['2025-04-27 EM-75m EM-76f', '2026-06-28 EM-77 EM-78', '2026-11-03'],
    },
  ],
  fates: {
    'EM-41': { status: 'died', died: '2013-08-02', notes: 'Died in the tub over the summer.' },
    'EM-61': { status: 'alive' },
    'EM-68': { status: 'alive' },
    'EM-71': { status: 'alive' },
    'EM-72': { status: 'alive' },
  },
  remarks: [
    {
      about: 'S-EM1',
      on: '2001-09',
      kind: 'note',
      text: 'The only paper left is the customs slip, which names the country.',
      keeper: keepers.tobiah,
    },
    {
      about: 'EM-12',
      on: '2005-02',
      kind: 'health',
      text: 'Thin after winter, fed daily; recovered by April.',
      keeper: keepers.emeric,
    },
    {
      about: 'EM-85',
      on: '2023-06-18',
      kind: 'behaviour',
      text: 'Calls loudest of the whole rack.',
      keeper: keepers.emeric,
    },
  ],
};
