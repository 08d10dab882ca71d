import type { GroupPlan } from '../engine/plan.ts';
import { keepers } from './keepers.ts';

/** Río Zancaval in the Holiday tub of 2010, in what came of it, and in the shelves beside it. All of it is invented. */
export const afterTheTub: readonly GroupPlan[] = [
  {
    name: 'Holiday tub',
    keeper: keepers.corvin,
    since: '2010-06',
    until: '2013-08',
    members: ['EM-41', 'ZV-53', 'ZV-48'],
    notes: 'Put together over the summer while the cellar was rebuilt.',
    clutches: ['2011-02-12 ZV-56m ZV-57f', '2012-03-18 ZV-59m ZV-60f'],
  },
  {
    name: 'Shelf three',
    keeper: keepers.orla,
    since: '2010-05',
    until: '2014-03',
    members: ['ZV-41', 'ZV-50', 'ZV-55'],
    clutches: ['2010-11-06 ZV-61m ZV-62f', '2011-10-29 ZV-63m ZV-64f ZV-65f', '2012-12-08 ZV-66m ZV-67f'],
  },
  {
    name: 'Fern wall',
    keeper: keepers.runa,
    since: '2013-02',
    until: '2017-10',
    members: ['ZV-59', 'ZV-62', 'ZV-65'],
    clutches: [
      '2014-01-25 ZV-68m ZV-69f ZV-70f',
      {
        laid: '2015-03-15',
        young: 'ZV-71m ZV-72f',
        dams: [
          ['ZV-65', 0.75, 'seen beside the eggs'],
          ['ZV-62', 0.25],
        ],
      },
      '2016-04-03 ZV-73m ZV-74f',
    ],
  },
  {
    name: 'South window',
    keeper: keepers.noor,
    since: '2013-05',
    until: '2015-12',
    members: ['ZV-63', 'ZV-57'],
    clutches: ['2013-11-16 ZV-75m ZV-76f ZV-77f', '2014-12-06 ZV-78m ZV-79f'],
  },
  {
    name: 'Tobiah, bought pair',
    keeper: keepers.tobiah,
    since: '2012-11',
    until: '2016-02',
    members: ['ZV-141', 'ZV-142'],
    clutches: ['2013-06-23 ZV-143m ZV-144f', '2014-08-31 ZV-145m ZV-146f', '2015-10-11 ZV-147m ZV-148f'],
  },
  {
    name: 'Warm shelf',
    keeper: keepers.tobiah,
    since: '2014-04',
    until: '2016-03',
    members: ['ZV-61', 'ZV-77'],
    clutches: [
      {
        laid: '2014-05-04',
        eggs: 12,
        young: 'ZV-131m ZV-132f',
        notes: 'A small clutch of a very young female.',
        confirmed: {
          code: 'young-dam',
          detail: 'Laid when the dam ZV-77 was 5 months old; usual is 8 or more, the youngest known was 6 months.',
          reason: 'Eggs photographed with the female on them; she was raised warm and was as large as the male.',
          keeper: keepers.tobiah,
          at: '2014-05-20T19:30:00Z',
        },
      },
      '2015-06-07 ZV-133f',
    ],
  },
  {
    name: 'Loft',
    keeper: keepers.tobiah,
    since: '2016-04',
    until: '2021-05',
    members: ['ZV-143', 'ZV-76', 'ZV-79'],
    clutches: ['2016-12-10 ZV-80m ZV-81f', '2018-01-14 ZV-83m ZV-84f', '2019-02-17 ZV-85m ZV-86f ZV-87f', '2020-03-29'],
  },
  {
    name: 'North window',
    keeper: keepers.noor,
    since: '2019-11',
    until: '2023-04',
    members: ['ZV-73', 'ZV-84', 'ZV-87'],
    clutches: ['2020-06-21 ZV-88m ZV-89f ZV-90', '2021-09-05 ZV-91m ZV-92f', '2022-10-30'],
  },
  {
    name: 'Shelf one',
    keeper: keepers.orla,
    since: '2022-11',
    members: ['ZV-119', 'ZV-89', 'ZV-92'],
    notes: 'The clean row and the rest of the line meet again, in good faith.',
    clutches: [
      '2023-05-14 ZV-93m ZV-94f ZV-95f',
      {
        laid: '2024-07-28',
        young: 'ZV-96m ZV-97f',
        dams: [
          ['ZV-92', 0.65, 'missing from her usual leaf that day'],
          ['ZV-89', 0.35],
        ],
      },
      '2025-12-07 ZV-98 ZV-99',
      '2026-08-16',
      '2026-11-08',
    ],
  },
  {
    name: 'Young pair',
    keeper: keepers.tobiah,
    since: '2025-05',
    members: ['ZV-93', 'ZV-126'],
    notes: 'Set up before anybody asked for the pedigree.',
    clutches: ['2026-02-22 ZV-129 ZV-130', '2026-09-27'],
  },
];
