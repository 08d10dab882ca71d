import type { LinePlan } from '../engine/plan.ts';
import { keepers } from './keepers.ts';
import { phantasmal } from './species.ts';

/** A line without a label, kept small, with origins nobody knows. All of it is invented. */
export const korrandStock: LinePlan = {
  species: phantasmal,
  name: 'Korrand stock',
  prefix: 'KS',
  labelKind: 'unlabelled',
  sources: [
    {
      code: 'S-KS1',
      keeper: keepers.matthis,
      kind: 'purchase',
      date: '199X',
      receivedFrom: 'a pet shop that closed',
      baseKinship: 0.125,
      founders: 'KS-01m KS-02f',
    },
    {
      code: 'S-KS2',
      keeper: keepers.matthis,
      kind: 'unknown',
      date: '../2004',
      notes: 'Was in the house before lists were kept.',
      founders: 'KS-10f',
    },
  ],
  strays: [
    {
      animal: 'KS-05f',
      keeper: keepers.matthis,
      hatched: '2000/2001',
      notes: 'Found among plants from a dissolved collection.',
    },
    { animal: 'KS-31f', keeper: keepers.matthis, hatched: '2023~', notes: 'Handed in at a meeting without a word.' },
  ],
  groups: [
    {
      name: 'Korrand, first',
      keeper: keepers.matthis,
      since: '1999',
      until: '2001',
      members: ['KS-01', 'KS-02'],
      clutches: ['2000 KS-03m KS-04f'],
    },
    {
      name: 'Korrand, kitchen',
      keeper: keepers.matthis,
      since: '2002-01',
      until: '2005-06',
      members: ['KS-03', 'KS-05'],
      clutches: ['2003-02-22 KS-06m KS-07f', '2004-07-10 KS-08m KS-09f'],
    },
    {
      name: 'Korrand, stairs',
      keeper: keepers.matthis,
      since: '2005-08',
      until: '2009-02',
      members: ['KS-06', 'KS-10'],
      clutches: ['2006-08-26 KS-11m KS-12f', '2008-05-24 KS-13m KS-14f'],
    },
    {
      name: 'Korrand, bench',
      keeper: keepers.matthis,
      since: '2010-03',
      until: '2013-01',
      members: ['KS-13', 'KS-09'],
      clutches: ['2010-11-27 KS-15m KS-16f', '2012-09-09 KS-17m KS-18f'],
    },
    {
      name: 'Korrand, bench two',
      keeper: keepers.matthis,
      since: '2013-09',
      until: '2016-03',
      members: ['KS-17', 'KS-14'],
      clutches: ['2014-04-06 KS-19m KS-20f', '2015-10-04 KS-21f'],
    },
    {
      name: 'Korrand, last pair',
      keeper: keepers.matthis,
      since: '2017-04',
      until: '2022-05',
      members: ['KS-19', 'KS-21'],
      notes: 'Nothing else was left of the line.',
      clutches: ['2018-09-16 KS-22m KS-23', '2019-11-24 KS-24f', '2021-05-02'],
    },
  ],
  fates: {
    'KS-31': { status: 'alive' },
    'KS-22': { status: 'alive' },
    'KS-24': { status: 'alive' },
    'KS-23': { status: 'died', died: '2019-03-30', notes: 'Never grew; died before it could be sexed.' },
  },
  remarks: [],
};
