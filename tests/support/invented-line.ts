import type { LineOverTime } from '../../client/src/lib/api/types.ts';
import { standings, type Sex, type Status } from '../../shared/vocabulary.ts';

/** An animal of an invented line, before it becomes a row of a sheet or of an answer. */
interface InventedAnimal {
  readonly code: string;
  readonly sex: Sex;
  readonly status: Status;
  readonly keeper: number;
  readonly source: number;
  readonly clutch: number;
}

interface InventedClutch {
  readonly laid: string;
  readonly sires: readonly { animal: number; probability: number }[];
  readonly dam: number;
}

/** A made-up line, the same for the same seed: nobody's animals. */
export interface InventedLine {
  readonly animals: readonly InventedAnimal[];
  readonly clutches: readonly InventedClutch[];
  readonly sources: readonly { readonly kind: string; readonly date: string }[];
}

/** A small repeatable source of numbers from 0 to 1 (mulberry32). */
function repeatable(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const DAY = 86_400_000;
const iso = (day: number): string => new Date(day).toISOString().slice(0, 10);

/**
 * A line that begins with some shipments, grows at several keepers and has a clutch more often the more breeders there are: a fifth of the
 * clutches have two possible sires, a tenth are dated to a year or not at all.
 */
export function inventedLine(count: number, seed = 1, years = 22): InventedLine {
  const random = repeatable(seed);
  const pick = (below: number): number => Math.floor(random() * below);
  const start = Date.UTC(2026 - years, 3, 1);
  const sources = [0, 1.4, 3.1, 7.2, 11.5].map((after, at) => ({
    kind: at % 2 === 0 ? 'import' : 'purchase',
    date: iso(start + (after * years * 365 * DAY) / 22),
  }));
  const animals: InventedAnimal[] = [];
  const clutches: InventedClutch[] = [];
  const born: number[] = [];
  const add = (animal: Omit<InventedAnimal, 'code'>, day: number): void => {
    animals.push({ ...animal, code: `OT-${String(animals.length + 1).padStart(4, '0')}` });
    born.push(day);
  };
  sources.forEach(({ date }, source) => {
    for (let founder = 0; founder < ([8, 3, 5, 4, 2][source] ?? 1); founder++)
      add(
        { sex: founder % 2 === 0 ? 'male' : 'female', status: 'died', keeper: source % 6, source, clutch: -1 },
        Date.parse(date) - 300 * DAY,
      );
  });
  const span = years * 365 * DAY;
  for (let day = start + 200 * DAY; animals.length < count;) {
    const part = (day - start) / span;
    const able = animals.flatMap((_, at) =>
      day - (born[at] ?? 0) > 300 * DAY && day - (born[at] ?? 0) < 2400 * DAY ? [at] : [],
    );
    const keeper = pick(6);
    const own = able.filter((at) => animals[at]?.keeper === keeper || random() < 0.04);
    const dams = own.filter((at) => animals[at]?.sex === 'female');
    const sires = own.filter((at) => animals[at]?.sex === 'male');
    // each tank keeps to a few parents
    const dam = dams[Math.min(dams.length - 1, pick(6))];
    const sire = sires[Math.min(sires.length - 1, pick(6))];
    const left = count - animals.length;
    day += Math.max(0.05, ((1.7 - 1.2 * part) * span * 3.2) / (count * 1.25)) * (0.4 + 1.2 * random());
    if (day > start + span) day = start + span * (0.6 + 0.4 * random());
    if (dam === undefined || sire === undefined) continue;
    const other = sires[pick(sires.length)] ?? sire;
    const laid = random() < 0.04 ? '' : random() < 0.06 ? iso(day).slice(0, 4) : iso(day);
    const isUncertain = random() < 0.2 && other !== sire;
    clutches.push({
      laid,
      sires: isUncertain
        ? [
            { animal: sire, probability: 0.6 },
            { animal: other, probability: 0.4 },
          ]
        : [{ animal: sire, probability: 1 }],
      dam,
    });
    const age = (start + span - day) / (365 * DAY);
    for (let young = 0; young < Math.min(left, 1 + pick(7)); young++)
      add(
        {
          sex: age < 1 ? 'unsexed' : random() < 0.5 ? 'male' : 'female',
          status: random() < Math.max(0.05, 0.9 - age / 9) ? 'alive' : random() < 0.8 ? 'died' : 'gone',
          keeper: random() < 0.8 ? keeper : pick(6),
          source: -1,
          clutch: clutches.length - 1,
        },
        day,
      );
  }
  return { animals, clutches, sources };
}

/** The line as a register sheet for the import. */
export function sheetOfLine({ animals, clutches, sources }: InventedLine, name: string): string {
  const code = (animal: number): string => animals[animal]?.code ?? '';
  const rows = animals.map(({ code: own, sex, status, source, clutch }) => {
    const from = clutches[clutch];
    const origin = sources[source];
    const sires = from?.sires.map(({ animal, probability }) => `${code(animal)}:${probability}`).join('/') ?? '';
    const arrived = origin ? `${own.slice(0, 2)}-S${source},${origin.kind},${origin.date},${name}` : ',,,';
    return `${own},Epipedobates anthonyi,${name},${sex},${sires},${from ? code(from.dam) : ''},${from ? `${own.slice(0, 2)}-C${clutch}` : ''},${from?.laid ?? ''},${arrived},${status}`;
  });
  return ['code,species,line,sex,sire,dam,clutch,laid,source,source kind,source date,label,status', ...rows, ''].join(
    '\n',
  );
}

/** The line as the service tells it; standings and inbreeding are made up. */
export function answerOfLine({ animals, clutches, sources }: InventedLine, seed = 1): LineOverTime {
  const random = repeatable(seed + 77);
  const id = (kind: string, at: number): string => `${kind}-${(at * 7919 + 13) % 104729}-${at}`;
  const bounds = (text: string): [string | null, string | null] =>
    text === '' ? [null, null] : text.length === 4 ? [`${text}-01-01`, `${text}-12-31`] : [text, text];
  const shares = clutches.map(() => {
    const parts = standings.map((_, at) => (random() < 0.4 - at * 0.03 ? Math.ceil(random() * 8) : 0));
    const sum = parts.reduce((one, other) => one + other, 0);
    return sum === 0 ? [1, 0, 0, 0, 0, 0] : parts.map((part) => part / sum);
  });
  const inbreeding = clutches.map(() => Math.floor(random() * 17) / 64);
  const parents = clutches.flatMap(({ sires, dam }, clutch) => [
    ...sires.map(({ animal, probability }) => ({ clutch, animal, role: 'sire' as const, probability })),
    { clutch, animal: dam, role: 'dam' as const, probability: 1 },
  ]);
  return {
    members: animals.length,
    animals: {
      id: animals.map((_, at) => id('animal', at)),
      number: animals.map((_, at) => `${1001 + at}-${at % 10}`),
      code: animals.map(({ code }) => code),
      sex: animals.map(({ sex }) => sex),
      status: animals.map(({ status }) => status),
      clutch: animals.map(({ clutch }) => clutch),
      source: animals.map(({ source }) => source),
      keeper: animals.map(({ keeper }) => keeper),
      line: animals.map(() => -1),
      hatched: animals.map(() => null),
      earliest: animals.map(() => null),
      latest: animals.map(() => null),
      inbreeding: animals.map(({ clutch }) => (clutch < 0 ? 0 : (inbreeding[clutch] ?? 0))),
      standing: animals.map(({ source }) => (source < 0 ? null : (standings[source % 4] ?? null))),
    },
    clutches: {
      id: clutches.map((_, at) => id('clutch', at)),
      code: clutches.map(() => null),
      laid: clutches.map(({ laid }) => laid || null),
      earliest: clutches.map(({ laid }) => bounds(laid)[0]),
      latest: clutches.map(({ laid }) => bounds(laid)[1]),
      inbreedingLeast: inbreeding,
      inbreedingGreatest: inbreeding,
      unknownSire: clutches.map(() => 0),
      unknownDam: clutches.map(() => 0),
      standings: Object.fromEntries(
        standings.map((standing, at) => [standing, shares.map((parts) => parts[at] ?? 0)]),
      ) as unknown as LineOverTime['clutches']['standings'],
    },
    parents: {
      clutch: parents.map(({ clutch }) => clutch),
      animal: parents.map(({ animal }) => animal),
      role: parents.map(({ role }) => role),
      probability: parents.map(({ probability }) => probability),
    },
    sources: sources.map(({ date }, at) => ({
      id: id('source', at),
      title: `Import, ${date}`,
      ...{ date, earliest: date, latest: date, standing: standings[at % 4] ?? 'unknown' },
    })),
    keepers: [0, 1, 2, 3, 4, 5].map((at) => ({ id: id('keeper', at), name: `Keeper ${at}` })),
    lines: [],
    current: true,
    asOf: { revision: 1, at: '2026-11-25T08:00:00Z' },
  };
}
