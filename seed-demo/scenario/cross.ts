import type { LinePlan } from '../engine/plan.ts';
import { keepers } from './keepers.ts';
import { phantasmal } from './species.ts';

/** An honest cross: both sides are named in the label. All of it is invented. */
export const cross: LinePlan = {
  species: phantasmal,
  name: 'Zancaval × Ember Saddle',
  prefix: 'ZX',
  labelKind: 'cross',
  policy: 'Never to be passed on without the word "cross". (Invented.)',
  sources: [],
  strays: [],
  groups: [
    {
      name: 'Corvin, cross tank',
      keeper: keepers.corvin,
      since: '2018-06',
      until: '2021-03',
      members: ['ZV-78', 'EM-60'],
      clutches: ['2019-01-13 ZX-01m ZX-02f ZX-03f', '2020-03-29 ZX-04m ZX-05f'],
    },
    {
      name: 'Corvin, back to saddle',
      keeper: keepers.corvin,
      since: '2021-06',
      members: ['ZX-04', 'EM-64'],
      clutches: ['2022-05-22 ZX-06m ZX-07f', '2023-09-24 ZX-08m ZX-09f', '2026-09-13'],
    },
  ],
  fates: { 'ZX-07': { status: 'alive' }, 'ZX-08': { status: 'alive' } },
  remarks: [
    {
      about: 'ZX-01',
      on: '2020-02-16',
      kind: 'note',
      text: 'Back pattern between the two parents.',
      keeper: keepers.corvin,
    },
  ],
};
