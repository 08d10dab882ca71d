import type { LinePlan } from '../engine/plan.ts';
import { keepers } from './keepers.ts';
import { moss } from './species.ts';

/** Mossy frogs without a label, from a shipment that named its country only. All of it is invented. */
export const mossStock: LinePlan = {
  species: moss,
  name: 'Moss frogs, no label',
  prefix: 'MO',
  labelKind: 'unlabelled',
  sources: [
    {
      code: 'S-MO1',
      keeper: keepers.emeric,
      kind: 'import',
      date: '2005~',
      receivedFrom: 'a wholesaler',
      countryOfExport: 'VN',
      founders: 'MO-01m MO-02f MO-03f',
    },
  ],
  strays: [{ animal: 'MO-11f', keeper: keepers.emeric, hatched: '2007/2009', notes: 'Left behind by a flatmate.' }],
  groups: [
    {
      name: 'Emeric, water part',
      keeper: keepers.emeric,
      since: '2006-03',
      until: '2011-05',
      members: ['MO-01', 'MO-02', 'MO-03'],
      clutches: ['2007-03-18 MO-04m MO-05f', '2008-06-08 MO-07m MO-08f', '2010-04-18 MO-09m MO-10f'],
    },
    {
      name: 'Emeric, water part two',
      keeper: keepers.emeric,
      since: '2011-06',
      until: '2017-03',
      members: ['MO-07', 'MO-11'],
      clutches: ['2012-05-27 MO-12m MO-13f', '2014-02-23 MO-14m MO-15f MO-16f', '2016-03-13 MO-17m MO-18f'],
    },
    {
      name: 'Emeric, water part today',
      keeper: keepers.emeric,
      since: '2018-04',
      until: '2026-02',
      members: ['MO-09', 'MO-13', 'MO-16'],
      clutches: ['2019-03-24 MO-19m MO-20f', '2022-06-05 MO-21m MO-22f', '2025-10-05 MO-23 MO-24'],
    },
  ],
  fates: {
    'MO-09': { status: 'died', died: '2026-02-11', notes: 'Old age.' },
    'MO-10': { status: 'died', died: '2023-10-19', notes: 'Old age.' },
    'MO-21': { status: 'alive' },
    'MO-22': { status: 'alive' },
  },
  remarks: [],
};

/** Lichen Hollow, a trade name; young that could not be sexed bred before anybody knew who is who. All of it is invented. */
export const lichenHollow: LinePlan = {
  species: moss,
  name: 'Lichen Hollow',
  prefix: 'LH',
  labelKind: 'trade-name',
  sources: [
    {
      code: 'S-LH1',
      keeper: keepers.runa,
      kind: 'purchase',
      date: '2011',
      receivedFrom: 'a breeder who gave up',
      labelAsReceived: 'Lichen Hollow',
      baseKinship: 0.0625,
      claims: [
        {
          keeper: keepers.runa,
          aspect: 'trade-name',
          value: 'Lichen Hollow',
          statedBy: 'the breeder who gave up',
          statedOn: '2011',
          evidence: [
            {
              keeper: keepers.runa,
              kind: 'invoice',
              reference: 'invoice 11-07 with four animals under this name',
              issuedBy: 'the breeder who gave up',
              dated: '2011-04',
            },
            {
              keeper: keepers.emeric,
              kind: 'appearance',
              reference: 'all four show the pale saddle of the form',
              dated: '2026-10',
            },
          ],
        },
      ],
      founders: 'LH-01m LH-02f LH-03m LH-04f',
    },
    {
      code: 'S-LH2',
      keeper: keepers.orla,
      kind: 'purchase',
      date: '2020-03',
      receivedFrom: 'a fair',
      founders: 'LH-41m',
    },
  ],
  strays: [],
  groups: [
    {
      name: 'Runa, cave',
      keeper: keepers.runa,
      since: '2011-09',
      until: '2017-08',
      members: ['LH-01', 'LH-02', 'LH-03', 'LH-04'],
      clutches: [
        '2012-07-15 LH-12f',
        '2013-05-26 LH-14m LH-15f',
        '2014-08-24 LH-16 LH-17 LH-18',
        {
          laid: '2016-06-26',
          young: 'LH-19m LH-20f',
          sires: [
            ['LH-03', 0.5],
            ['?', 0.5, 'a male on holiday was in the tank for a week'],
          ],
        },
      ],
    },
    {
      name: 'Orla, three mossy ones',
      keeper: keepers.orla,
      since: '2016-09',
      until: '2019-06',
      members: ['LH-16', 'LH-17', 'LH-15'],
      notes: 'Two of three cannot be sexed.',
      clutches: [
        {
          laid: '2017-05-07',
          young: 'LH-21m LH-22f',
          pairs: [
            ['LH-15', 'LH-16', 0.6, 'in amplexus the night before'],
            ['LH-15', 'LH-17', 0.3],
            ['LH-16', 'LH-17', 0.1],
          ],
        },
        '2018-04-22 LH-24m LH-25f',
      ],
    },
    {
      name: 'Runa, cave two',
      keeper: keepers.runa,
      since: '2018-10',
      until: '2022-03',
      members: ['LH-14', 'LH-22'],
      clutches: ['2019-07-21 LH-26m LH-27f LH-28f', '2021-06-13 LH-29m LH-30f'],
    },
    {
      name: 'Runa, cave three',
      keeper: keepers.runa,
      since: '2022-05',
      members: ['LH-19', 'LH-27'],
      clutches: ['2023-03-12 LH-38m LH-39f', '2026-04-05'],
    },
    {
      name: 'Orla, mossy ones today',
      keeper: keepers.orla,
      since: '2022-04',
      members: ['LH-41', 'LH-25', 'LH-20'],
      clutches: ['2023-04-23 LH-31m LH-32f', '2024-05-26 LH-33m LH-34f LH-35', '2026-03-01 LH-36 LH-37', '2026-11-05'],
    },
  ],
  fates: {
    'LH-16': { status: 'gone', notes: 'Passed on outside the circle, 2019.' },
    'LH-29': { status: 'alive' },
    'LH-31': { status: 'alive' },
    'LH-32': { status: 'alive' },
    'LH-17': { status: 'unknown', notes: 'Not reported since 2019.' },
  },
  remarks: [
    {
      about: 'Orla, three mossy ones',
      on: '2017-05-06',
      kind: 'behaviour',
      text: 'LH-16 on the back of LH-15 under the cork.',
      keeper: keepers.orla,
    },
  ],
};
