import type { LinePlan } from '../engine/plan.ts';
import { keepers } from './keepers.ts';
import { phantasmal } from './species.ts';

/**
 * Quebrada Almíbar, the label that outran its evidence. All of it is invented.
 * What the records show: the founders came without a label, a seller guessed, a tub was written on, and ten years later the
 * guess was a place. Two animals bought back at a fair were full siblings (AL-16 and AL-19): the accidental sib mating.
 */
export const almibar: LinePlan = {
  species: phantasmal,
  name: 'Quebrada Almíbar',
  prefix: 'AL',
  labelKind: 'locality',
  policy: 'Closed line. (Invented.)',
  sources: [
    {
      code: 'S-AL1',
      keeper: keepers.runa,
      kind: 'purchase',
      date: '2004~',
      receivedFrom: 'a private seller',
      labelNote:
        'No label. The seller thought of a stream "near Almíbar or so"; the name was written on the tub in 2006.',
      founders: 'AL-01m AL-02f AL-03f',
    },
    {
      code: 'S-AL2',
      keeper: keepers.runa,
      kind: 'unknown',
      date: '2006/2008',
      labelAsReceived: 'Quebrada Almíbar',
      labelNote: 'Label in the handwriting of the member who passed it on.',
      claims: [
        {
          keeper: keepers.runa,
          aspect: 'locality',
          value: 'Quebrada Almíbar',
          statedBy: 'the member who passed it on',
          statedOn: '2006/2008',
          countryCode: 'EC',
          at: [-1.2, -84.1, 60_000],
          evidence: [
            {
              keeper: keepers.orla,
              kind: 'letter',
              bearing: 'contradicts',
              reference: 'letter of the same member, found in 2025',
              dated: '2005-11-20',
              notes: 'It says that the male was bought at a fair, with no word of a place.',
              reviewed: {
                by: keepers.tobiah,
                on: '2025-09-12',
                as: 'accepted',
                reason: 'The handwriting is the same, and it is older than the label.',
              },
            },
          ],
        },
      ],
      founders: 'AL-04m',
    },
    {
      code: 'S-AL3',
      keeper: keepers.runa,
      kind: 'purchase',
      date: '2017-09',
      receivedFrom: 'a breeder outside the circle',
      labelAsReceived: 'Quebrada Almíbar',
      baseKinship: 0.25,
      notes: 'Sold as siblings.',
      founders: 'AL-33m AL-34f',
    },
  ],
  strays: [],
  groups: [
    {
      name: 'Runa, entrance',
      keeper: keepers.runa,
      since: '2004-06',
      until: '2008-05',
      members: ['AL-01', 'AL-02', 'AL-03'],
      clutches: ['2005-02-19 AL-11m AL-12f', '2006-04-15 AL-14m AL-15f', '2007-07-29'],
    },
    {
      name: 'Runa, entrance pair',
      keeper: keepers.runa,
      since: '2008-09',
      until: '2012-10',
      members: ['AL-04', 'AL-15'],
      clutches: ['2009-06-27 AL-16m', '2010-09-18 AL-18m AL-19f', '2011-08-06 AL-20m AL-21f'],
    },
    {
      name: 'Two from the fair',
      keeper: keepers.saskia,
      since: '2011-10',
      until: '2014-06',
      members: ['AL-16', 'AL-19'],
      notes: 'Bought from two tables, as unrelated. Their codes were matched in 2019.',
      clutches: ['2012-01-28 AL-22m AL-23f', '2013-03-02 AL-25m AL-26f'],
    },
    {
      name: 'Noor, almíbar',
      keeper: keepers.noor,
      since: '2014-07',
      until: '2017-12',
      members: ['AL-25', 'AL-21'],
      clutches: ['2014-11-01 AL-27m AL-28f', '2016-01-23 AL-29m AL-30f', '2017-09-10 AL-31m AL-32f'],
    },
    {
      name: 'Runa, new blood',
      keeper: keepers.runa,
      since: '2017-11',
      until: '2020-12',
      members: ['AL-29', 'AL-34'],
      clutches: ['2018-03-25 AL-35m AL-36f', '2019-06-16 AL-37m AL-38f'],
    },
    {
      name: 'Runa, almíbar today',
      keeper: keepers.runa,
      since: '2021-02',
      members: ['AL-33', 'AL-32'],
      clutches: ['2021-10-10 AL-39m AL-40f', '2023-01-15 AL-41m AL-42f', '2024-11-10 AL-43m AL-44f'],
    },
    {
      name: 'Matthis, almíbar',
      keeper: keepers.matthis,
      since: '2024-03',
      members: ['AL-41', 'AL-36'],
      clutches: ['2024-08-04 AL-45m AL-46f', '2026-02-15 AL-47 AL-48', '2026-10-25'],
    },
  ],
  fates: {
    'AL-28': { status: 'died', died: '2015-02-08', notes: 'Put down; spindly forelegs.' },
    'AL-35': { status: 'alive' },
    'AL-39': { status: 'alive' },
    'AL-43': { status: 'alive' },
    'AL-44': { status: 'alive' },
    'AL-45': { status: 'alive' },
  },
  remarks: [
    {
      about: 'S-AL1',
      on: '2006-03',
      kind: 'note',
      text: 'Wrote "Almíbar" on the tub so that we call it something.',
      keeper: keepers.runa,
    },
    {
      about: 'AL-28',
      on: '2015-02-07',
      kind: 'health',
      text: 'Spindly forelegs; taken to the veterinarian.',
      keeper: keepers.noor,
    },
    {
      about: 'Two from the fair',
      on: '2019-04-13',
      kind: 'note',
      text: 'Compared old lists with Runa: both came from her entrance pair.',
      keeper: keepers.saskia,
    },
  ],
};
