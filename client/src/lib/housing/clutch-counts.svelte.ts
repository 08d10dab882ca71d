import { lossCauses, type LossCause } from '$shared/vocabulary.ts';
import type { Clutch } from '../api/types.ts';
import { sameValue } from '../offline/outcome.ts';
import { dateProblem } from '../ui/typed-dates.ts';

const counts = ['eggs', 'fertile', 'hatched', 'outOfWater'] as const;
const texts = ['laid', 'hatchedOn', 'site', 'code', 'notes'] as const;

/** What is counted and said of a clutch, as far as it is corrected in one form. */
export type CountedClutch = Pick<Clutch, (typeof counts)[number] | (typeof texts)[number]> & {
  losses: readonly { cause: LossCause; count: number }[];
};

type Said = Record<(typeof counts)[number] | (typeof texts)[number], string>;

/** The counts of a clutch and what else is corrected of it, while it is typed. */
export class ClutchCounts {
  /** The clutch as it was when the form was opened: what is sent is the difference. */
  readonly of: CountedClutch;
  said = $state() as Said;
  losses = $state() as Record<LossCause, string>;

  static readonly pointers = /^\/(eggs|fertile|hatched|outOfWater|laid|hatchedOn|site|code|notes)$/;

  /** `shown`: what the form begins with, if that is not the clutch as it is. */
  constructor(of: CountedClutch, shown: CountedClutch = of) {
    this.of = of;
    const text = (value: string | number | null): string => (value === null ? '' : String(value));
    const each = <Name extends string>(names: readonly Name[], value: (name: Name) => string): Record<Name, string> =>
      Object.fromEntries(names.map((name) => [name, value(name)])) as Record<Name, string>;
    this.said = each([...counts, ...texts], (name) => text(shown[name]));
    this.losses = each(lossCauses, (cause) => text(shown.losses.find((loss) => loss.cause === cause)?.count ?? null));
  }

  problems(): Record<string, string> {
    const found: Record<string, string> = {};
    for (const name of counts)
      if (!isCount(this.said[name])) found[`/${name}`] = 'Write a number in digits, or leave it empty.';
    for (const name of ['laid', 'hatchedOn'] as const) {
      const wrongDate = dateProblem(this.said[name]);
      if (wrongDate) found[`/${name}`] = wrongDate;
    }
    for (const cause of lossCauses)
      if (!isCount(this.losses[cause])) found[`/losses/${cause}`] = 'Write a number in digits.';
    return found;
  }

  /** The fields that are said otherwise than the clutch has them; what nobody touched is left to others. */
  changes(): Record<string, unknown> {
    const all: Record<string, unknown> = {
      ...Object.fromEntries(counts.map((name) => [name, number(this.said[name])])),
      ...Object.fromEntries(texts.map((name) => [name, this.said[name].trim() || null])),
      losses: lossCauses.flatMap((cause) => {
        const count = number(this.losses[cause]);
        return count ? [{ cause, count }] : [];
      }),
    };
    const of: Record<string, unknown> = { ...this.of };
    return Object.fromEntries(Object.entries(all).filter(([name, value]) => !sameValue(of[name], value)));
  }

  /** What the register has in the fields that are changed. */
  base(): Record<string, unknown> {
    const changed = this.changes();
    return Object.fromEntries(Object.entries(this.of).filter(([name]) => name in changed));
  }
}

/** What of a clutch its counting form needs, and nothing else of it. */
export function plainCounts({ losses, ...clutch }: CountedClutch): CountedClutch {
  const { eggs, fertile, hatched, outOfWater, laid, hatchedOn, site, code, notes } = clutch;
  return {
    ...{ eggs, fertile, hatched, outOfWater, laid, hatchedOn, site, code, notes },
    losses: losses.map(({ cause, count }) => ({ cause, count })),
  };
}

const isCount = (typed: string): boolean => typed.trim() === '' || /^\d{1,5}$/.test(typed.trim());
const number = (typed: string): number | null => (typed.trim() === '' ? null : Number(typed));
