import type { LinePlan } from '../engine/plan.ts';
import { keepers } from './keepers.ts';
import { phantasmal } from './species.ts';
import { afterTheTub } from './zancaval-after-the-tub.ts';
import { beginnings } from './zancaval-beginnings.ts';
import { cleanRow } from './zancaval-clean-row.ts';

/**
 * Río Zancaval, a locality line, and the club's pride. All of it is invented.
 * What the records show: a vague import and a later collection joined (from 2006), a female without any papers (ZV-07), and the
 * cross that nobody noticed: EM-41, a male of another line, sat in the "Holiday tub" of 2010 to 2013, and his young ZV-56 to
 * ZV-60 went on as Zancaval. The "clean row" at Saskia's never met them.
 */
export const zancaval: LinePlan = {
  species: phantasmal,
  name: 'Río Zancaval',
  prefix: 'ZV',
  labelKind: 'locality',
  policy: 'Bred as one closed line since 2001. Nothing is added without papers that name the place. (Invented.)',
  sources: [
    {
      code: 'S-ZV1',
      keeper: keepers.orla,
      kind: 'import',
      date: '1993/1996',
      receivedFrom: 'an importer whose name is lost',
      receivedBy: 'a founding member',
      countryOfExport: 'EC',
      labelAsReceived: 'Río Zancaval',
      labelNote: 'Written on the tub; no list of the shipment is left.',
      founders: 'ZV-01m ZV-02f ZV-03f',
    },
    {
      code: 'S-ZV2',
      keeper: keepers.saskia,
      kind: 'wild-collection',
      date: '2003-02',
      receivedFrom: 'an invented university station',
      receivedBy: keepers.saskia,
      countryOfExport: 'EC',
      permitReferences: ['invented permit 03-118'],
      labelAsReceived: 'Río Zancaval',
      notes: 'Collected along one stretch of the stream; place generalised here.',
      claims: [
        {
          keeper: keepers.saskia,
          aspect: 'locality',
          value: 'Río Zancaval',
          statedBy: 'the station that collected them',
          statedOn: '2003-02',
          locality: 'Río Zancaval, one stretch of the stream (invented)',
          countryCode: 'EC',
          at: [-3.4, -85.2, 40_000],
          evidence: [
            {
              keeper: keepers.saskia,
              kind: 'collecting-permit',
              reference: 'invented permit 03-118',
              issuedBy: 'an invented authority',
              dated: '2003-01-14',
              reviewed: {
                by: keepers.tobiah,
                on: '2024-05-04',
                as: 'accepted',
                reason: 'Seen as a copy with a stamp; it names the stream.',
              },
            },
          ],
        },
      ],
      founders: 'ZV-11m ZV-12f ZV-13m ZV-14f',
    },
    {
      code: 'S-ZV3',
      keeper: keepers.tobiah,
      kind: 'purchase',
      date: '2012~',
      receivedFrom: 'a breeder outside the circle',
      labelAsReceived: 'Río Zancaval',
      notes: 'Bought as a pair; the breeder had them for years.',
      founders: 'ZV-141m ZV-142f',
    },
  ],
  strays: [
    {
      animal: 'ZV-07f',
      keeper: keepers.orla,
      hatched: '2000~',
      notes: 'Came in a tub with plants when a member gave up the hobby. No papers; looks like Zancaval.',
    },
  ],
  groups: [...beginnings, ...cleanRow, ...afterTheTub],
  fates: {
    'ZV-13': { status: 'died', died: '2007-08', notes: 'Found dead after the heat wave.' },
    'ZV-94': { status: 'gone', notes: 'Given to a school vivarium, 2025.' },
    'ZV-110': { status: 'alive', notes: 'Sits alone since 2018; still calls.' },
    'ZV-98': { status: 'alive' },
    'ZV-99': { status: 'alive' },
    'ZV-124': { status: 'alive' },
    'ZV-97': { status: 'alive' },
    'ZV-96': { status: 'alive' },
  },
  remarks: [
    {
      about: 'S-ZV1',
      on: '2002-01',
      kind: 'note',
      text: 'Asked two founding members; both remember the name on the tub, neither a list.',
      keeper: keepers.orla,
    },
    {
      about: 'ZV-07',
      on: '2002-03',
      kind: 'behaviour',
      text: 'Courts with ZV-04 from the first day.',
      keeper: keepers.orla,
    },
    {
      about: 'Holiday tub',
      on: '2010-07-11',
      kind: 'note',
      text: 'Male moved over from the other rack in the dark. Will label the tub later.',
      keeper: keepers.corvin,
    },
    {
      about: 'ZV-59',
      on: '2013-03-02',
      kind: 'note',
      text: 'Rather orange on the back for a Zancaval. Diet?',
      keeper: keepers.runa,
    },
    {
      about: 'ZV-119',
      on: '2023-01-15',
      kind: 'behaviour',
      text: 'Calls from the coconut hut every morning.',
      keeper: keepers.orla,
    },
    {
      about: 'Shelf one',
      on: '2026-11-09',
      kind: 'note',
      text: 'Eggs on the film canister lid, male sits on them.',
      keeper: keepers.orla,
    },
  ],
};
