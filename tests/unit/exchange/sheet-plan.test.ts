import { describe, expect, test } from 'vitest';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { sourceValues } from '../../../api/exchange/planned-sources.ts';
import { broods, knowing, knownAnimal, planOf, refusals, warningsOf } from './plan-of.ts';

describe('who hatched with whom', () => {
  test('rows with the same clutch code are clutch-mates, ignoring case', async () => {
    const plan = await planOf('code,clutch,sire,dam\nA,,,\nB,,,\nC,c-1,A,B\nD,C-1,A,B\nE,C-2,A,B');
    expect(broods(plan)).toEqual([['C', 'D'], ['E']]);
  });

  test('without a code, the same two certain parents and the same date of laying make clutch-mates', async () => {
    const plan = await planOf(
      'code,sire,dam,laid,hatched\nA,,,,\nB,,,,\nC,A,B,2021-04-12,2021-04-26\nD,A,B,2021-04-12,2021-04-27\nE,A,B,2021-04-19,\nF,a,b,2021-04-12,',
    );
    expect(broods(plan)).toEqual([['C', 'D', 'F'], ['E']]);
  });

  test('else the same date of hatching', async () => {
    const plan = await planOf(
      'code,sire,dam,laid,hatched\nA,,,,\nB,,,,\nC,A,B,,2021-04-26\nD,A,B,,2021-04-26\nE,A,B,2021-04-26,',
    );
    expect(broods(plan)).toEqual([['C', 'D'], ['E']]);
  });

  test.each([
    ['no date', 'C,A,B,\nD,A,B,'],
    ['an unknown dam', 'C,A,,2021\nD,A,?,2021'],
    ['two candidates', 'C,A,B/E,2021\nD,A,B/E,2021'],
    ['an uncertain parent', 'C,A,B/?,2021\nD,A,B/?,2021'],
  ])('rows with %s are clutches of their own', async (_, rows) => {
    expect(broods(await planOf(`code,sire,dam,laid\nA,,,\nB,,,\nE,,,\n${rows}`))).toEqual([['C'], ['D']]);
  });

  test('a row without a parent is no clutch, unless it has a clutch code', async () => {
    const plan = await planOf('code,sire,dam,clutch\nA,?,?,\nB,,,\nC,,,K\nD,?,?,K');
    expect(broods(plan)).toEqual([['C', 'D']]);
    expect(plan.clutches[0]).toMatchObject({ sires: [], dams: [], group: [] });
  });

  test('a clutch-mate takes from the others what its row leaves empty', async () => {
    const plan = await planOf('code,clutch,sire,dam,laid\nA,,,,\nB,,,,\nC,K,,,\nD,K,A,,2021\nE,K,,B,');
    expect(plan.clutches).toMatchObject([
      { sires: [{ parent: 0, probability: 1 }], dams: [{ parent: 1, probability: 1 }], laid: '2021' },
    ]);
  });

  test('clutch-mates that disagree are refused where they do', async () => {
    const problems = await refusals(
      'code,clutch,sire,dam,laid\nA,,,,\nB,,,,\nX,,,,\nC,K,A,B,2021\nD,K,X,B,2021\nE,K,A,B,2022',
    );
    expect(problems).toHaveLength(2);
    expect(problems[0]).toMatch(/^6 sire: Rows of the clutch K disagree.*row 5/);
    expect(problems[1]).toMatch(/^7 laid: /);
  });
});

describe('candidate parents', () => {
  test('odds are equal without weights, as given with them, and an unknown parent can be a candidate', async () => {
    const plan = await planOf('code,sire,dam\nA,,\nB,,\nC,,\nD,A/B/?,C\nE,A:0.7/B:0.3,c:0.25/?:0.75');
    expect(plan.clutches[0]?.sires).toEqual([0, 1, -1].map((parent) => ({ parent, probability: 1 / 3 })));
    expect(plan.clutches[1]).toMatchObject({
      sires: [
        { parent: 0, probability: 0.7 },
        { parent: 1, probability: 0.3 },
      ],
      dams: [
        { parent: 2, probability: 0.25 },
        { parent: -1, probability: 0.75 },
      ],
    });
  });

  test('two lists reach the kernel multiplied out', async () => {
    const { pedigree } = await planOf('code,sire,dam\nA,,\nB,,\nC,,\nE,A:0.75/B:0.25,C:0.5/?:0.5');
    expect([...pedigree.pairSire]).toEqual([0, 0, 1, 1]);
    expect([...pedigree.pairDam]).toEqual([2, -1, 2, -1]);
    expect([...pedigree.pairProbability]).toEqual([0.375, 0.375, 0.125, 0.125]);
  });

  test('a group that cannot be sexed becomes all its pairs, equally likely', async () => {
    const { pedigree } = await planOf('code,parents\nA,\nB,\nC,\nE,A/B/C');
    expect(
      [...pedigree.pairSire].map((sire, pair) => [sire, pedigree.pairDam[pair], pedigree.pairProbability[pair]]),
    ).toEqual([
      [0, 1, 1 / 3],
      [0, 2, 1 / 3],
      [1, 2, 1 / 3],
    ]);
  });

  test.each([
    ['A', 'at least two'],
    ['A/?', '? cannot stand'],
    ['A:0.5/B:0.5', 'Leave the weights out'],
    ['A/B/A', 'named twice'],
    ['A/M1/M2', 'are both male'],
  ])('the group %j is refused', async (group, said) => {
    const problems = await refusals(`code,sex,parents\nA,,\nB,,\nM1,m,\nM2,m,\nE,,${group}`);
    expect(problems.join('\n')).toContain(said);
    expect(problems[0]).toMatch(/^6 parents: /);
  });

  test('parents are found wherever they stand, ignoring case, or in the registry by code or number', async () => {
    const number = formatRegistryNumber(10704);
    const known = knowing([
      knownAnimal({ number, tier: 6, sex: 'female' }),
      knownAnimal({ number: '2', code: 'old-1', tier: 2 }),
    ]);
    const plan = await planOf(`code,sire,dam\nC,b,${number}\nB,OLD-1,`, known);
    expect(plan.clutches[0]).toMatchObject({ sires: [{ parent: 1 }], dams: [{ parent: -2 }] });
    expect(plan.animals.registered(-2)?.number).toBe(number);
    expect([...plan.tiers.ofAnimal]).toEqual([8, 4]);
    expect([...plan.tiers.ofClutch]).toEqual([7, 3]);
  });

  test('an unknown parent is refused with what may have been meant', async () => {
    const problems = await refusals(
      'code,sire,dam\nEA-01,,\nEA-02,,\nEA-13,,\nX1,EA01,EA-3\nX2,EA-O2,ZZ-99\nX3,EA-10,?',
    );
    expect(problems).toEqual([
      expect.stringMatching(/^5 sire: EA01 is neither .* Did you mean EA-01\?/),
      expect.stringMatching(/^5 dam: EA-3 .* Did you mean EA-13\?/),
      expect.stringMatching(/^6 sire: EA-O2 .* Did you mean EA-02\?/),
      expect.stringMatching(/^6 dam: ZZ-99 is neither in this file nor in the registry\. Add a row/),
      expect.stringMatching(/^7 sire: EA-10 .* Did you mean EA-01 or EA-13\?/),
    ]);
  });
});

describe('parents that cannot be', () => {
  test.each([
    ['its own parent', 'A,f,,\nB,m,B,A', /^3 sire: B is named as its own parent/],
    ['one animal on both sides', 'A,u,,\nB,,A,A', /^3 dam: A \(row 2\) is named as sire and as dam/],
    [
      'one animal among the candidates of both sides',
      'A,,,\nB,,,\nC,,A/B,B/?',
      /^4 dam: B \(row 3\) is named as sire and as dam/,
    ],
    ['a male dam', 'A,m,,\nB,,?,A', /^3 dam: A \(row 2\) is male and cannot be the dam/],
    ['a female among the sires', 'A,f,,\nB,m,,\nC,,A/B,', /^4 sire: A \(row 2\) is female and cannot be the sire/],
  ])('%s', async (_, rows, said) => {
    expect(await refusals(`code,sex,sire,dam\n${rows}`)).toEqual([expect.stringMatching(said)]);
  });

  test('an animal of the registry in the role of the other sex', async () => {
    const known = knowing([knownAnimal({ number: '1', code: 'OLD', sex: 'male' })]);
    expect(await refusals('code,dam\nA,OLD', known)).toEqual([
      expect.stringMatching(/^2 dam: OLD \(1 of the registry\) is male/),
    ]);
  });

  test('every loop is refused with its members', async () => {
    const problems = await refusals('code,sire,dam\nA,C,\nB,A,\nC,B,X\nX,,\nP,,Q\nQ,,P\nR,P,');
    expect(problems).toEqual([
      expect.stringMatching(/^2 sire: A would be its own ancestor: A \(row 2\) → B \(row 3\) → C \(row 4\) → A,/),
      expect.stringMatching(/^6 dam: P would be its own ancestor: P \(row 6\) → Q \(row 7\) → P,/),
    ]);
  });

  test('a loop through a clutch-mate is found too', async () => {
    expect(await refusals('code,clutch,sire\nA,K,\nB,K,A\n')).toEqual([
      expect.stringMatching(/^2 clutch: A would be its own ancestor/),
    ]);
  });

  test('a parent that certainly hatched after its young is refused, one that may have is not', async () => {
    const rows = 'A,,,2020,\nB,,,202X,\nC,,,2022/..,\nE,A/B,C,2021-05-01,2021-04-12\n';
    expect(await refusals(`code,sire,dam,hatched,laid\n${rows}`)).toEqual([
      expect.stringMatching(/^5 dam: C \(row 4\) hatched after E was laid/),
    ]);
    expect(await refusals('code,sire,hatched\nA,,2021-05\nB,A,2020~')).toEqual([
      expect.stringMatching(/^3 sire: A \(row 2\) hatched after B was hatched/),
    ]);
  });

  test('parents together with sire or dam', async () => {
    expect(await refusals('code,sire,parents\nA,,\nB,,\nC,,\nD,A,B/C')).toEqual([
      expect.stringMatching(/^5 parents: A row has either parents/),
    ]);
  });

  test('an unsexed animal that is the only sire here and the only dam there is worth a look', async () => {
    expect(await warningsOf('code,species,sire,dam\nA,Abc def,,\nB,,A,\nC,,,A')).toEqual([
      expect.stringMatching(/^4 dam: A \(row 2\) is the only dam here and the only sire of another clutch/),
    ]);
  });
});

describe('codes', () => {
  test('missing, twice, a question mark, or known to the registry', async () => {
    const known = knowing([knownAnimal({ number: '1009-9', code: 'Old' })]);
    expect(await refusals('code,sex\n,m\nA,m\na,f\n?,u\nOLD,u', known)).toEqual([
      expect.stringMatching(/^2 code: This animal has no code/),
      expect.stringMatching(/^4 code: The code a stands in row 3 too/),
      expect.stringMatching(/^5 code: "\?" means an unknown animal/),
      expect.stringMatching(/^6 code: You already have an animal with the code OLD in the registry: 1009-9/),
    ]);
  });
});

describe('words and dates', () => {
  test('sex and status by letters and words of any case', async () => {
    const { cells } = await planOf(
      'code,sex,status,died\nA,M,ALIVE,\nB,Female,gone,\nC,u,,\nD,,,2020\nE,unsexed,Unknown,\nF,?,died,',
    );
    expect([0, 1, 2, 3, 4, 5].map((animal) => cells.sex(animal))).toEqual([
      'male',
      'female',
      'unsexed',
      'unsexed',
      'unsexed',
      'unsexed',
    ]);
    expect([0, 1, 2, 3, 4, 5].map((animal) => cells.status(animal))).toEqual([
      'alive',
      'gone',
      'alive',
      'died',
      'unknown',
      'died',
    ]);
  });

  test.each([
    ['sex', 'x', /no sex\. Write m, f or u/],
    ['status', 'dead', /no status\. Write alive, died, gone, unknown/],
    ['hatched', '2021-02-30', /no date that can be read\. Write year-month-day/],
    ['hatched', '12.04.2021', /Write 2021-04-12\./],
    ['laid', '04/12/2021', /Write 2021-12-04 or 2021-04-12\./],
    ['laid', '13/04/2021', /Write 2021-04-13\./],
    ['out of water', '44298', /Write 2021-04-12\./],
    ['died', '2021-4-2', /Write 2021-04-02\./],
    ['source date', 'about 1994', /Write 1994~\./],
    ['source kind', 'shipment', /no kind of source\. Write import, wild-collection, purchase, unknown/],
    ['source base kinship', '1.5', /from 0 \(unrelated\) to 1/],
    ['source base kinship', 'some', /from 0 \(unrelated\) to 1/],
    ['country of export', 'Ecuador', /Write EC\./],
    ['country of export', 'QX', /two letters by ISO 3166/],
    ['species', 'E', /too short for a species/],
  ])('%s %j is refused', async (column, text, said) => {
    const [problem, ...others] = await refusals(`code,${column}\nA,${text}`);
    expect(problem).toMatch(new RegExp(`^2 ${column}: `));
    expect(problem).toMatch(said);
    expect(others).toEqual([]);
  });

  test.each([
    ['alive and dead', 'died,status', '2021,alive', /^2 status: The status is alive, yet a date of death/],
    ['hatched before laid', 'laid,hatched', '2021-04-12,2021-04-11', /^2 hatched: "hatched" comes before "laid"/],
    ['out of water before hatched', 'hatched,out of water', '2021-04,2021-03', /^2 out of water: /],
    ['dead before out of water', 'out of water,died', '2021,2020', /^2 died: /],
  ])('%s is refused', async (_, columns, cells, said) => {
    expect(await refusals(`code,${columns}\nA,${cells}`)).toEqual([expect.stringMatching(said)]);
  });
});

describe('sources', () => {
  test('rows that share a code arrived together; the first row that has a detail tells it', async () => {
    const { sources, sourceOf } = await planOf(
      'code,source,source kind,source date,source base kinship,country of export,label,label standing note\n' +
        'A,S-1,,,,,,\nB,s-1,Wild Collection,1994~,"0,125",ec,Quebrada Honda,on a list\nC,S-2,,,,,,',
    );
    expect([...sourceOf]).toEqual([0, 0, 1]);
    expect(sources.map(sourceValues)).toEqual([
      {
        kind: 'wild-collection',
        date: '1994~',
        baseKinship: 0.125,
        countryOfExport: 'EC',
        label: 'Quebrada Honda',
        labelNote: 'on a list',
      },
      { kind: 'unknown', date: null, baseKinship: 0, countryOfExport: null, label: null, labelNote: null },
    ]);
  });

  test('later details that differ are reported, not taken', async () => {
    expect(
      await warningsOf('code,species,source,label,source base kinship\nA,Abc def,S,Azul,0.5\nB,Abc def,S,Verde,"0,50"'),
    ).toEqual([
      expect.stringMatching(/^3 label: The source S has "Azul" as label from row 2; "Verde" here is not taken/),
    ]);
  });

  test('details without a code are a source of their own, on a row with parents they are kept as notes', async () => {
    const text = 'code,species,sire,label\nA,Abc def,,Azul\nB,Abc def,,Azul\nC,Abc def,A,Azul\n';
    const { sources, sourceOf } = await planOf(text);
    expect([sources.length, ...sourceOf]).toEqual([2, 0, 1, -1]);
    expect(await warningsOf(text)).toEqual([expect.stringMatching(/^4 label: 1 animals that hatched from parents/)]);
  });

  test.each(['sire', 'dam', 'clutch'])('a source together with a %s is refused', async (column) => {
    expect(await refusals(`code,source,${column}\nA,,\nB,S,A`)).toEqual([
      expect.stringMatching(/^3 source: An animal comes from a source or from parents/),
    ]);
  });
});

describe('species and lines', () => {
  test('young without a species have that of their parents, others the only one of the file', async () => {
    const plan = await planOf(
      'code,species,sire,dam\nC,,A,B\nA,Epipedobates anthonyi,,\nB,epipedobates anthonyi,,\nD,Ranitomeya imitator,,\nE,,D,?\nF,,E,?\n',
    );
    expect([...plan.speciesOf].map((species) => plan.species[species])).toEqual([
      ...Array<string>(3).fill('Epipedobates anthonyi'),
      ...Array<string>(3).fill('Ranitomeya imitator'),
    ]);
    const single = await planOf('code,species\nA,Ranitomeya imitator\nB,\n');
    expect([single.species, ...single.speciesOf]).toEqual([['Ranitomeya imitator'], 0, 0]);
  });

  test('where nothing tells the species, that is recorded and reported', async () => {
    expect((await planOf('code\nA')).species).toEqual(['Species not recorded']);
    expect(await warningsOf('code\nA\nB')).toEqual([expect.stringMatching(/^2 species: 2 animals have no species/)]);
  });

  test('young of parents of two species are not given one of them', async () => {
    const plan = await planOf('code,species,sire,dam\nA,Abc def,,\nB,Xyz uvw,,\nC,,A,B\n');
    expect(plan.species[plan.speciesOf[2] ?? -1]).toBe('Species not recorded');
  });

  test('a line belongs to a species, ignoring case', async () => {
    const plan = await planOf('code,species,line\nA,Abc def,Azul\nB,ABC DEF,azul\nC,Xyz uvw,Azul\nD,Xyz uvw,');
    expect(plan.lines).toMatchObject([
      { species: 0, name: 'Azul' },
      { species: 1, name: 'Azul' },
    ]);
    expect([...plan.lineOf]).toEqual([0, 0, 1, -1]);
  });
});

describe('clutches of the registry', () => {
  const known = knowing([], { 'C-1': { id: 'c', tier: 5, laid: null, species: 'Ranitomeya imitator' } });

  test('young are added to a clutch by its code', async () => {
    const plan = await planOf('code,clutch\nA,C-1\nB,C-1', known);
    expect(plan.clutches).toMatchObject([{ existing: { id: 'c' } }]);
    expect([...plan.tiers.ofAnimal]).toEqual([6, 6]);
    expect(plan.species).toEqual(['Ranitomeya imitator']);
  });

  test('its parents are not changed by a sheet', async () => {
    expect(await refusals('code,clutch,sire,laid\nX,,,\nA,C-1,X,2021', known)).toEqual([
      expect.stringMatching(/^3 sire: The clutch C-1 is already in the registry/),
      expect.stringMatching(/^3 laid: /),
    ]);
  });
});

test('every problem of a file comes in one answer, by row', async () => {
  const problems = await refusals(
    'code,sex,sire,dam,hatched,source\nA,m,,,,\nB,f,,,12.4.2021,\nC,x,B,A,,\nA,u,nobody,,,\nE,,A:0.9/?:0.2,B,,S-1\nF,,G,,,\nG,,F,,,\n',
  );
  expect(problems.map((problem) => problem.split(':')[0])).toEqual([
    '3 hatched',
    '4 sex',
    '4 sire',
    '4 dam',
    '5 code',
    '5 sire',
    '6 source',
    '6 sire',
    '7 sire',
  ]);
});
