/** How a forecast is made: what stands in the address of the page, numbers as they are typed. */
export interface ForecastWish {
  generations: string;
  youngKept: string;
  seed: string;
}

/** The least and the greatest of each, and what counts where nothing is said. */
export const forecastNumbers = {
  generations: { least: 1, most: 10, usual: '5' },
  youngKept: { least: 2, most: 20, usual: '4' },
  seed: { least: 0, most: 2 ** 32 - 1, usual: '1' },
} as const;
const fields = Object.keys(forecastNumbers) as (keyof ForecastWish)[];

/** Reads the wish from an address. */
export function forecastWishOf(parameters: URLSearchParams): ForecastWish {
  const said = (field: keyof ForecastWish): string => parameters.get(field)?.trim() ?? forecastNumbers[field].usual;
  return { generations: said('generations'), youngKept: said('youngKept'), seed: said('seed') };
}

/** The wish as an address writes it; what counts without being said is left out. */
export function forecastParameters(wish: ForecastWish): Map<string, string> {
  return new Map(
    fields.flatMap((field): [string, string][] =>
      wish[field].trim() === forecastNumbers[field].usual ? [] : [[field, wish[field].trim()]],
    ),
  );
}

/** What is wrong with a wish, by field, in sentences. */
export function forecastRefusals(wish: ForecastWish): Partial<Record<keyof ForecastWish, string>> {
  return Object.fromEntries(
    fields.flatMap((field) => {
      const { least, most } = forecastNumbers[field];
      const value = /^\d{1,10}$/.test(wish[field].trim()) ? Number(wish[field]) : NaN;
      return value >= least && value <= most ? [] : [[field, `Write a whole number from ${least} to ${most}.`]];
    }),
  );
}

/** The wish as a part of the question to the service; only for one without refusals. */
export function forecastQuestion(wish: ForecastWish): object {
  return Object.fromEntries(fields.map((field) => [field, Number(wish[field])]));
}
