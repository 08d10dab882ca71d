import { traitNames, traits, type CitesAppendix, type Trait } from '$shared/vocabulary.ts';
import type { Species } from '../api/types.ts';

const bounds = ['extremeLeast', 'usualLeast', 'usualMost', 'extremeMost'] as const;
export type Bound = (typeof bounds)[number];

/** One life-history range as it is typed. */
interface TypedRange {
  readonly trait: Trait;
  readonly unit: string;
  values: Record<Bound, string>;
  source: string;
}

/** A species profile as it is typed: everything is text until it is sent. */
export class SpeciesDraft {
  scientificName = $state('');
  commonName = $state('');
  citesAppendix = $state<CitesAppendix | ''>('');
  nativeRange = $state('');
  ranges = $state<TypedRange[]>([]);

  constructor(species: Species) {
    this.scientificName = species.scientificName;
    this.commonName = species.commonName ?? '';
    this.citesAppendix = species.citesAppendix ?? '';
    this.nativeRange = species.nativeRange.join(' ');
    this.ranges = traitNames.map((trait) => {
      const known = species.ranges.find((range) => range.trait === trait);
      const typed = (bound: Bound): string => known?.[bound]?.toString() ?? '';
      return {
        trait,
        unit: traits[trait],
        values: {
          extremeLeast: typed('extremeLeast'),
          usualLeast: typed('usualLeast'),
          usualMost: typed('usualMost'),
          extremeMost: typed('extremeMost'),
        },
        source: known?.source ?? '',
      };
    });
  }

  /** Ranges of which anything is said, in the order in which they are sent. */
  get said(): TypedRange[] {
    return this.ranges.filter((range) => bounds.some((bound) => range.values[bound].trim() !== ''));
  }

  /** What is wrong, by the pointers of the service. */
  problems(): Record<string, string> {
    const found: Record<string, string> = {};
    if (this.scientificName.trim().length < 3)
      found['/scientificName'] = 'Write the scientific name, such as Epipedobates anthonyi.';
    if (this.#countries().some((code) => !/^[A-Z]{2}$/.test(code)))
      found['/nativeRange'] = 'Write the two letters of each country, with spaces between them, such as EC PE.';
    this.said.forEach((range, at) => {
      const numbers = bounds.map((bound) => asNumber(range.values[bound])).filter((value) => value !== null);
      if (numbers.some((value) => !(value >= 0))) found[`/ranges/${at}`] = `Write numbers of ${range.unit}, 0 or more.`;
      else if (numbers.some((value, place) => value < (numbers[place - 1] ?? 0)))
        found[`/ranges/${at}`] = 'The values must grow from the least ever known to the greatest ever known.';
      if (range.source.trim() === '')
        found[`/ranges/${at}/source`] = 'Write where this is published, or “common practice”.';
    });
    return found;
  }

  /** What is sent; `ranges` replaces all that were there. */
  get body(): Record<string, unknown> {
    return {
      scientificName: this.scientificName.trim(),
      commonName: this.commonName.trim() || null,
      citesAppendix: this.citesAppendix || null,
      nativeRange: this.#countries(),
      ranges: this.said.map(({ trait, values, source }) => ({
        trait,
        ...Object.fromEntries(bounds.map((bound) => [bound, asNumber(values[bound])])),
        source: source.trim(),
      })),
    };
  }

  /** The pointer of a range among those that are sent; empty where nothing is said of it. */
  pointerOf(range: TypedRange): string {
    const at = this.said.findIndex(({ trait }) => trait === range.trait);
    return at === -1 ? '' : `/ranges/${at}`;
  }

  #countries(): string[] {
    return this.nativeRange
      .toUpperCase()
      .split(/[\s,;]+/)
      .filter((code) => code !== '');
  }
}

function asNumber(text: string): number | null {
  const trimmed = text.trim().replace(',', '.');
  return trimmed === '' ? null : Number(trimmed);
}
