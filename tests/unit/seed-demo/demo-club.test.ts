import { afterEach, describe, expect, it, vi } from 'vitest';
import { boundsOf, daysFrom, middleOf } from '../../../seed-demo/engine/calendar.ts';
import { buildClub, draftClub } from '../../../seed-demo/engine/build-club.ts';
import { animalOf, type Animal } from '../../../seed-demo/engine/draft.ts';
import { parentCodes } from '../../../seed-demo/engine/find-parents.ts';
import { isHousedOn } from '../../../seed-demo/engine/house-animals.ts';
import type { ClubPlan } from '../../../seed-demo/engine/plan.ts';
import { club } from '../../../seed-demo/scenario/club.ts';
import { coupleCount, SlowPedigree } from './slow-pedigree.ts';

const draft = draftClub(club);
const animals = [...draft.animals.values()];
const pedigree = new SlowPedigree(draft);
const linesOf = (codes: Iterable<string>): Set<string> =>
  new Set([...codes].map((code) => animalOf(draft, code).line.prefix));
const monthsOld = (animal: Animal, day: string): number => daysFrom(animal.bornAbout, day) / 30.4;
/** The one clutch with a slip of the pen, and the one whose early date was confirmed. */
const slip = '2018-02-11';
const confirmed = '2014-05-04';

describe('the rows of the demo club', () => {
  afterEach(() => void vi.restoreAllMocks());

  it('are the same every time, by no chance and no clock', () => {
    const first = buildClub(club);
    vi.spyOn(Math, 'random').mockImplementation(() => expect.unreachable('chance was asked'));
    vi.spyOn(Date, 'now').mockImplementation(() => expect.unreachable('the clock was asked'));
    expect(buildClub(club)).toEqual(first);
  });

  it('carry ids in the form of UUID version 7, each once', () => {
    const ids = Object.values(buildClub(club)).flatMap((rows) =>
      rows.flatMap((row) => ('id' in row ? [String(row['id'])] : [])),
    );
    expect(
      ids.filter((id) => !/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(id)),
    ).toEqual([]);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('the size of the demo club', () => {
  it('is about 400 animals of at least three species and six lines', () => {
    expect(animals.length).toBeGreaterThan(380);
    expect(animals.length).toBeLessThan(460);
    expect(new Set(animals.map((animal) => animal.species.scientificName)).size).toBeGreaterThanOrEqual(3);
    expect(linesOf(draft.animals.keys()).size).toBeGreaterThanOrEqual(6);
    expect(new Set(club.lines.map((line) => line.labelKind))).toEqual(
      new Set(['locality', 'trade-name', 'cross', 'unlabelled']),
    );
  });

  it('has young of every year from 2001 to 2026 and nothing later than the day it is told on', () => {
    const years = new Set(
      animals.filter((animal) => animal.clutch).map((animal) => Number(animal.bornAbout.slice(0, 4))),
    );
    for (let year = 2001; year <= 2026; year += 1) expect(years, `young of ${year}`).toContain(year);
    const dates = Object.values(buildClub(club))
      .flat()
      .flatMap((row) => Object.entries(row));
    const latest = dates
      .filter(([column, day]) => column.endsWith('_earliest') && day !== null)
      .map(([, day]) => String(day));
    expect(latest.filter((day) => day > club.today)).toEqual([]);
  });

  it('says that it is invented', () => {
    expect(club.name).toContain('(invented demo club)');
    expect(JSON.stringify(club)).not.toContain('auratus');
  });

  it('leaves breeders of both sexes alive in most lines, and young that nobody can sex yet', () => {
    const ripe = animals.filter(
      (animal) =>
        animal.status === 'alive' && monthsOld(animal, club.today) > (animal.species.ranges.maturity.usual[1] ?? 0),
    );
    const able = club.lines.filter((line) =>
      (['male', 'female'] as const).every(
        (sex) => ripe.filter((animal) => animal.line === line && animal.sex === sex).length >= 2,
      ),
    );
    expect(able.length).toBeGreaterThanOrEqual(6);
    const young = animals.filter(
      (animal) => animal.sex === 'unsexed' && animal.status === 'alive' && monthsOld(animal, club.today) < 12,
    );
    expect(young.length).toBeGreaterThanOrEqual(10);
  });
});

describe('the lives of the animals', () => {
  it('let nobody breed before half the usual age of maturity but in the two clutches told of', () => {
    const early = draft.clutches.filter((clutch) =>
      parentCodes(clutch.parents).some((code) => {
        const parent = animalOf(draft, code);
        return monthsOld(parent, middleOf(clutch.told.laid)) < (parent.species.ranges.maturity.usual[0] ?? 0) / 2;
      }),
    );
    expect(early.map((clutch) => clutch.told.laid)).toEqual([slip]);
    const young = draft.clutches.find((clutch) => clutch.told.laid === confirmed);
    expect(Math.round(monthsOld(animalOf(draft, 'ZV-77'), confirmed))).toBe(5);
    expect(young?.confirmed?.reason).toMatch(/photographed/);
  });

  it('let every parent live in the group that laid, not dead, not past its lifespan', () => {
    for (const clutch of draft.clutches.filter((each) => each.told.laid !== slip))
      for (const code of parentCodes(clutch.parents)) {
        const parent = animalOf(draft, code);
        const stay = clutch.group.stays.find((each) => each.animal === parent);
        expect(stay && isHousedOn(stay, clutch.told.laid), `${code} housed at ${clutch.code}`).toBe(true);
        const age = monthsOld(parent, middleOf(clutch.told.laid)) / 12;
        expect(age, `age of ${code} at ${clutch.code}`).toBeLessThanOrEqual(
          parent.species.ranges.lifespan.usual[1] ?? 0,
        );
        if (parent.died !== null)
          expect(boundsOf(parent.died).latest >= boundsOf(clutch.told.laid).earliest).toBe(true);
      }
  });

  it('keep counts in order: eggs, fertile, hatched, out of water, young kept', () => {
    for (const { counts, young, code, species } of draft.clutches) {
      const { eggs, fertile, hatched, outOfWater, losses } = counts;
      if (eggs === null) continue;
      expect(eggs, code).toBeLessThanOrEqual(species.ranges['eggs-per-clutch'].extreme?.[1] ?? eggs);
      if (fertile === null || hatched === null) continue;
      expect(fertile <= eggs && hatched <= fertile && (outOfWater ?? 0) <= hatched, code).toBe(true);
      expect(
        losses.reduce((sum, loss) => sum + loss.count, 0),
        code,
      ).toBe(eggs - hatched);
      expect(young.length, code).toBeLessThanOrEqual(outOfWater ?? 0);
    }
  });
});

describe('the stories of the demo club', () => {
  it('Holiday tub: a male of Ember Saddle stands among the ancestors of living Río Zancaval, and the clean row lacks him', () => {
    expect(pedigree.ancestors('ZV-96')).toContain('EM-41');
    expect(animalOf(draft, 'ZV-96').status).toBe('alive');
    expect(linesOf(pedigree.ancestors('ZV-124'))).toEqual(new Set(['ZV']));
  });

  it('Two from the fair: full siblings bred by accident, F of their young 1/4 (full-sib mating of unrelated grandparents; Wright 1922)', () => {
    expect(pedigree.inbreeding('AL-22')).toBeCloseTo(0.25, 12);
    expect(
      animals.filter((animal) => animal.status === 'alive' && pedigree.inbreeding(animal.code) >= 0.2).length,
    ).toBeGreaterThan(0);
  });

  it('Quebrada Almíbar: a locality label of which no founder of the first source carried the name', () => {
    expect(animalOf(draft, 'AL-01').source?.labelAsReceived).toBeUndefined();
    expect(animalOf(draft, 'AL-01').line.labelKind).toBe('locality');
    expect(pedigree.ancestors('AL-45')).toContain('AL-01');
  });

  it('Four unsexed: joint pairs, some with odds and a reason', () => {
    const paired = draft.clutches.flatMap(({ parents }) => (parents.mode === 'pairs' ? [parents.pairs] : []));
    expect(paired.some((pairs) => pairs.length === 6)).toBe(true);
    expect(paired.flat().some(([, , , reason]) => reason !== undefined)).toBe(true);
  });

  it('vague dates: about, a decade, a span, an open beginning', () => {
    const texts = Object.values(buildClub(club))
      .flat()
      .flatMap((row) => [row['date'], row['laid'], row['hatched']]);
    for (const text of ['1994~', '199X', '1993/1996', '../2004', '1999~']) expect(texts).toContain(text);
  });

  it('RV-61, the animal of the picture: a loop, two sources, an unknown origin and uncertain parents among 21 ancestors', () => {
    const ancestors = [...pedigree.ancestors('RV-61')].map((code) => animalOf(draft, code));
    expect(ancestors).toHaveLength(21);
    expect(pedigree.depth('RV-61')).toBe(5);
    expect(new Set(ancestors.flatMap((animal) => animal.source?.code ?? []))).toEqual(new Set(['S-RV1', 'S-RV2']));
    expect(ancestors.filter((animal) => !animal.source && !animal.clutch).map((animal) => animal.code)).toEqual([
      'RV-06',
    ]);
    expect(ancestors.filter((animal) => animal.clutch && coupleCount(animal.clutch) > 1).length).toBeGreaterThanOrEqual(
      3,
    );
    expect(pedigree.inbreeding('RV-61')).toBeGreaterThan(0.1);
  });
});

describe('a scenario that contradicts itself', () => {
  const [first, ...others] = club.lines;
  const groupOf = (members: string[], clutches: string[]): ClubPlan => {
    const group = { name: 'Wrong', keeper: club.keepers[0] ?? '', since: '2010', members, clutches };
    return { ...club, lines: first ? [{ ...first, groups: [...first.groups, group] }, ...others] : [] };
  };

  it('is refused with the animal that is never told of', () => {
    expect(() => draftClub(groupOf(['ZV-999'], []))).toThrow('never tells of: ZV-999');
  });

  it('is refused with the clutch at which a loop closes', () => {
    expect(() => buildClub(groupOf(['ZV-801', 'ZV-802'], ['2012-05-06 ZV-801m ZV-802f']))).toThrow(/loop at ZV-C/);
  });

  it('is refused with the animal that is told of twice', () => {
    expect(() => draftClub(groupOf(['ZV-85', 'ZV-86'], ['2020-05-06 ZV-01m']))).toThrow('tells twice of ZV-01');
  });

  it('is refused with the clutch where nobody was housed', () => {
    expect(() => draftClub(groupOf(['ZV-85 2021', 'ZV-86 2021'], ['2020-05-06']))).toThrow(
      /nobody was housed where ZV-C/,
    );
  });
});
