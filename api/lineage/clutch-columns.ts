import { Column } from './column.ts';
import type { ClutchFacts } from './kernel/clutch-facts.ts';
import type { ClutchFigures } from './kernel/figures.ts';

/** Everything known of clutches in one state of the register. */
export interface ClutchKnowledge {
  readonly figures: ClutchFigures;
  readonly facts: ClutchFacts;
  /** m: 1 where the figures do not follow the newest changes yet. */
  readonly stale: Uint8Array;
}

type Views = { -readonly [Name in keyof ClutchFigures]: Float64Array };

const figureNames = ['clutchExpected', 'clutchLeast', 'clutchGreatest', 'clutchWithin', 'clutchResidual'] as const;

/** Figures and facts of all clutches, one number a clutch each; what was shown of them never changes. */
export class ClutchColumns {
  readonly #figures: readonly Column<Float64Array>[];
  readonly #whole: readonly Column<Int32Array>[];
  readonly #equivalents: Column<Float64Array>;
  readonly #stale: Column<Uint8Array>;
  #length: number;

  /** @param knowledge what is known already; arrays over shared memory */
  constructor(knowledge?: ClutchKnowledge) {
    const { figures, facts, stale } = knowledge ?? {};
    this.#figures = figureNames.map((name) => new Column(Float64Array, 64, figures?.[name]));
    this.#whole = [facts?.depth, facts?.fullDepth, facts?.filial].map((filled) => new Column(Int32Array, 64, filled));
    this.#equivalents = new Column(Float64Array, 64, facts?.equivalents);
    this.#stale = new Column(Uint8Array, 64, stale);
    this.#length = stale?.length ?? 0;
  }

  /** Makes room for new clutches; their figures and facts are 0 for now. */
  grow(clutches: number): void {
    for (; this.#length < clutches; this.#length++)
      for (const column of [...this.#figures, ...this.#whole, this.#equivalents, this.#stale]) column.push(0);
  }

  /** To be written at clutches from `first` on; good until the next call of anything here. */
  writable(first: number): ClutchKnowledge {
    return this.#views((column) => column.writable(first));
  }

  /** As it is now; what is written later is not seen in it. */
  show(): ClutchKnowledge {
    return this.#views((column) => column.show());
  }

  #views(
    view: <Numbers extends Float64Array | Int32Array | Uint8Array>(column: Column<Numbers>) => Numbers,
  ): ClutchKnowledge {
    const figures: Partial<Views> = {};
    figureNames.forEach((name, place) => (figures[name] = view(column(this.#figures, place))));
    return {
      figures: figures as ClutchFigures,
      facts: {
        depth: view(column(this.#whole, 0)),
        fullDepth: view(column(this.#whole, 1)),
        filial: view(column(this.#whole, 2)),
        equivalents: view(this.#equivalents),
      },
      stale: view(this.#stale),
    };
  }
}

function column<Numbers extends Float64Array | Int32Array | Uint8Array>(
  columns: readonly Column<Numbers>[],
  place: number,
): Column<Numbers> {
  const found = columns[place];
  if (!found) throw new RangeError(`There is no column ${place}.`);
  return found;
}
