import { barKinds, type BarKind } from './bar-parts.ts';
import { litWays, type LitWay } from './line-kin.ts';

/** What one looks at in a line over time, as its address says it. */
export interface LineWish {
  /** Registry number of the picked animal, or its id; empty for none. */
  readonly animal: string;
  readonly lit: LitWay;
  readonly bars: BarKind;
  /** Id of the keeper whose animals are shown in full; empty for everybody's. */
  readonly keeper: string;
  readonly living: boolean;
  /** Whether the table is shown in place of the drawing, and which year of it. */
  readonly table: boolean;
  readonly year: string;
  /** Years of hatching that are drawn, both ends included; empty for all. */
  readonly hatchedFrom: string;
  readonly hatchedTo: string;
}

export const usualWish: LineWish = {
  animal: '',
  lit: 'both',
  bars: 'standing',
  keeper: '',
  living: false,
  table: false,
  year: '',
  hatchedFrom: '',
  hatchedTo: '',
};

/** Reads the wish of an address; what it does not know is as usual. */
export function wishOf(parameters: URLSearchParams): LineWish {
  const said = (name: string): string => (parameters.get(name) ?? '').trim();
  const year = (name: string): string => (/^\d{4}$/.test(said(name)) ? said(name) : '');
  return {
    animal: said('animal'),
    lit: litWays.find((way) => way === said('lit')) ?? usualWish.lit,
    bars: barKinds.find((kind) => kind === said('bars')) ?? usualWish.bars,
    keeper: said('keeper'),
    living: said('living') === 'yes',
    table: said('table') === 'yes',
    year: said('year'),
    hatchedFrom: year('hatchedFrom'),
    hatchedTo: year('hatchedTo'),
  };
}

/** The address of a wish, what is as usual left out: begins with a question mark, or is empty. */
export function wishAddress(wish: LineWish): string {
  const parameters = new URLSearchParams();
  for (const name of Object.keys(usualWish) as (keyof LineWish)[])
    if (wish[name] !== usualWish[name]) parameters.set(name, wish[name] === true ? 'yes' : String(wish[name]));
  const text = parameters.toString();
  return text === '' ? '' : `?${text}`;
}
