import { applyDecorators } from '@nestjs/common';
import { ApiExtraModels, ApiOkResponse, getSchemaPath } from '@nestjs/swagger';
import { IntegerField, FlagField, TextField } from './fields.ts';
import { InvalidProblem } from './problem.ts';
import { say } from './say.ts';

/** What every list takes. */
export class PageQuery {
  @IntegerField({ min: 1, max: 200, optional: true, description: 'How many items at most; 50 if left out.' })
  limit = 50;

  @TextField({ max: 1000, optional: true, description: 'Go on after this point: the `next` of the page before.' })
  after?: string;

  @FlagField({ optional: true, description: 'Also count all items that match.' })
  total = false;
}

/** One page of a list; `next` is null at the end. */
export interface Page<T> {
  readonly items: T[];
  readonly next: string | null;
  readonly total?: number;
}

export type CursorValue = string | number | null;

/** An opaque mark of where a page ended: the order of the list and the last row's sort values (its id last). */
export function encodeCursor(sort: string, values: readonly CursorValue[]): string {
  return Buffer.from(JSON.stringify([sort, ...values])).toString('base64url');
}

/** Reads a cursor back. One that was not made by this list in this order is the sender's mistake: 422. */
export function decodeCursor(sort: string, count: number, text: string): CursorValue[] {
  const parsed = parseJson(Buffer.from(text, 'base64url').toString('utf8'));
  const isOurs =
    Array.isArray(parsed) &&
    parsed.length === count + 1 &&
    parsed[0] === sort &&
    parsed.every(
      (value) => value === null || (typeof value === 'string' && !value.includes('\0')) || Number.isFinite(value),
    );
  if (isOurs) return (parsed as CursorValue[]).slice(1);
  const detail = say`This is not the \`next\` of a page of this list in this order. Start again without \`after\`.`;
  throw new InvalidProblem(detail, [{ pointer: '/after', detail }]);
}

/**
 * Makes a page of rows that were asked for with one more than the limit: the extra row only tells whether the list goes on.
 */
export function toPage<Row, Item>(
  rows: Row[],
  limit: number,
  toItem: (row: Row) => Item,
  cursorOf: (row: Row) => string,
  total?: number,
): Page<Item> {
  const shown = rows.slice(0, limit);
  const last = shown.at(-1);
  const next = rows.length > limit && last !== undefined ? cursorOf(last) : null;
  return { items: shown.map(toItem), next, ...(total === undefined ? {} : { total }) };
}

/** Describes a page of a view for OpenAPI. */
export function ApiPage(view: new () => unknown): MethodDecorator {
  return applyDecorators(
    ApiExtraModels(view),
    ApiOkResponse({
      description: 'One page of the list.',
      schema: {
        type: 'object',
        required: ['items', 'next'],
        properties: {
          items: { type: 'array', items: { $ref: getSchemaPath(view) } },
          next: {
            type: ['string', 'null'] as unknown as 'string',
            description: 'Send it as `after` to go on; null at the end.',
          },
          total: { type: 'integer', description: 'How many match in all; only with `total=true`.' },
        },
      },
    }),
  );
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
