import type { GroupPlan } from '../engine/plan.ts';
import { keepers } from './keepers.ts';

/** Río Zancaval at Saskia Brunmoor and those she exchanged animals with: no ancestor from another line. All of it is invented. */
export const cleanRow: readonly GroupPlan[] = [
  {
    name: 'Clean row, first pair',
    keeper: keepers.saskia,
    since: '2008-07',
    until: '2013-04',
    members: ['ZV-39', 'ZV-45'],
    clutches: ['2008-11-23 ZV-101m', '2010-02-14 ZV-103m ZV-104f', '2011-03-06'],
  },
  {
    name: 'Attic pair',
    keeper: keepers.matthis,
    since: '2012-05',
    until: '2015-02',
    members: ['ZV-103', 'ZV-64'],
    clutches: ['2012-08-19 ZV-105m ZV-106f', '2014-05-11 ZV-108m ZV-109f'],
  },
  {
    name: 'Old shelf pair',
    keeper: keepers.matthis,
    since: '2012-11',
    until: '2015-06',
    members: ['ZV-46', 'ZV-104'],
    clutches: ['2013-07-07 ZV-114m ZV-115f', '2014-10-12 ZV-116f'],
  },
  {
    name: 'Clean row, second pair',
    keeper: keepers.saskia,
    since: '2015-04',
    until: '2018-01',
    members: ['ZV-108', 'ZV-67'],
    clutches: ['2015-09-20 ZV-110m ZV-111f', '2017-06-04 ZV-112m ZV-113f'],
  },
  {
    name: 'Clean and bought',
    keeper: keepers.matthis,
    since: '2017-03',
    until: '2021-06',
    members: ['ZV-147', 'ZV-111'],
    clutches: ['2018-09-02 ZV-151m ZV-152f', '2020-02-23 ZV-153m ZV-154f'],
  },
  {
    name: 'Clean row, trio',
    keeper: keepers.saskia,
    since: '2018-03',
    until: '2021-09',
    members: ['ZV-112', 'ZV-115', 'ZV-116'],
    clutches: ['2018-05-20 ZV-117m ZV-118f', '2019-08-11 ZV-119m ZV-120f', '2021-03-28 ZV-121m ZV-122f'],
  },
  {
    name: 'Clean row, today',
    keeper: keepers.saskia,
    since: '2022-03',
    members: ['ZV-153', 'ZV-122', 'ZV-120 2023-10'],
    clutches: ['2023-02-12 ZV-123m ZV-124f', '2024-09-15 ZV-125m ZV-126f', '2026-04-12 ZV-127 ZV-128', '2026-10-31'],
  },
];
