import type { EntityManager } from 'typeorm';

/** One column of the order of a list. */
export interface SortColumn {
  readonly sql: string;
  /** The type that a cursor's text is read as. */
  readonly type: 'text' | 'uuid' | 'bigint' | 'integer' | 'double precision' | 'date' | 'timestamptz';
}

/** SQL conditions and their parameters, gathered one by one. */
export class Conditions {
  readonly parameters: unknown[];
  private readonly clauses: string[];

  /** Several sets of conditions of one statement share their parameters. */
  constructor(parameters: unknown[] = [], clauses: string[] = []) {
    this.parameters = parameters;
    this.clauses = clauses;
  }

  /** The same conditions, to add others to. */
  copy(): Conditions {
    return new Conditions([...this.parameters], [...this.clauses]);
  }

  /** Adds a parameter and gives its placeholder. */
  bind(value: unknown): string {
    this.parameters.push(value);
    return `$${this.parameters.length}`;
  }

  add(clause: string): void {
    this.clauses.push(clause);
  }

  /** Keeps the rows after a cursor: a row comparison, so that an index over the same columns answers it. */
  addAfter(columns: readonly SortColumn[], values: readonly unknown[], descending: boolean): void {
    const left = columns.map((column) => column.sql).join(', ');
    const right = columns.map((column, index) => `${this.bind(values[index])}::${column.type}`).join(', ');
    this.add(`(${left}) ${descending ? '<' : '>'} (${right})`);
  }

  /** All conditions joined, fit to stand after `where`. */
  get sql(): string {
    return this.clauses.length === 0 ? 'true' : this.clauses.join(' and ');
  }
}

/** The `order by` list of sort columns. */
export function orderBy(columns: readonly SortColumn[], descending: boolean): string {
  return columns.map((column) => column.sql + (descending ? ' desc' : '')).join(', ');
}

/** A text as a pattern for `like`, its wildcards meaning themselves. */
export function likePattern(text: string): string {
  return `%${text.toLowerCase().replace(/[\\%_]/g, '\\$&')}%`;
}

/** How many rows of a table meet conditions. */
export async function countWhere(manager: EntityManager, from: string, conditions: Conditions): Promise<number> {
  const [row] = await manager.query<{ total: number }[]>(
    `select count(*)::integer as total from ${from} where ${conditions.sql}`,
    conditions.parameters,
  );
  return row?.total ?? 0;
}
