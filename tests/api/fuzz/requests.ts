import type { OpenAPIObject } from '@nestjs/swagger';
import fc from 'fast-check';
import { entriesOf, headerText, hostileTexts, hostileValue } from './hostile.ts';

/** A request as it goes over the wire. */
export interface Wire {
  readonly method: string;
  readonly path: string;
  readonly headers: Record<string, string>;
  readonly body: string | null;
  /** Whether it carries the token of a keeper who may do everything. */
  readonly isKeeper: boolean;
}

interface Schema {
  readonly $ref?: string;
  readonly type?: string | string[];
  readonly enum?: unknown[];
  readonly items?: Schema;
  readonly properties?: Record<string, Schema>;
  readonly required?: string[];
  readonly allOf?: Schema[];
  readonly oneOf?: Schema[];
  readonly minimum?: number;
  readonly maximum?: number;
}

interface Operation {
  readonly parameters?: { name: string; in: string; schema?: Schema }[];
  readonly requestBody?: { content: Record<string, { schema?: Schema }> };
}

/** Gives a right thing, or a wrong one as often as the request is hostile. */
type Mostly = <T>(right: fc.Arbitrary<T>, wrong: fc.Arbitrary<unknown>) => fc.Arbitrary<unknown>;

const mostlyRight =
  (of: number): Mostly =>
  (right, wrong) =>
    fc.oneof({ weight: of - 1, arbitrary: right }, { weight: 1, arbitrary: wrong });

/**
 * Makes requests to every route that the document describes; `known` has ids of records that exist, under the names of their
 * resources.
 */
export function requestsOf(document: OpenAPIObject, known: Readonly<Record<string, string[]>>): fc.Arbitrary<Wire> {
  // many wrong fields hide each other, so most requests have one or two, and some have nothing but
  return fc.oneof(...[4, 8, 8, 30].map((of) => requestsWith(mostlyRight(of), document, known)));
}

function requestsWith(
  mostly: Mostly,
  document: OpenAPIObject,
  known: Readonly<Record<string, string[]>>,
): fc.Arbitrary<Wire> {
  const schemas = (document.components?.schemas ?? {}) as Record<string, Schema>;
  const id = fc.constantFrom(...Object.values(known).flat(), '1-1', '1001-9');
  /** Ids of the records that a route or a field is about, as far as its name tells. */
  const idFor = (name: string): fc.Arbitrary<string> => {
    const [, ids] = Object.entries(known).find(([resource]) => name.includes(resource.slice(0, 5))) ?? [];
    return ids === undefined ? id : fc.constantFrom(...ids);
  };

  function valueOf(schema: Schema, name: string, depth = 0): fc.Arbitrary<unknown> {
    if (depth > 5) return hostileValue;
    if (schema.$ref !== undefined) return valueOf(schemas[schema.$ref.split('/').at(-1) ?? ''] ?? {}, name, depth + 1);
    const parts = schema.allOf ?? schema.oneOf;
    if (parts) return fc.oneof(...parts.map((part) => valueOf(part, name, depth + 1)));
    if (schema.enum) return mostly(fc.constantFrom(...schema.enum), hostileValue);
    const type = [schema.type].flat()[0];
    if (type === 'object' || schema.properties) return mostly(objectOf(schema, depth), hostileValue);
    if (type === 'array')
      return mostly(fc.array(valueOf(schema.items ?? {}, name, depth + 1), { maxLength: 3 }), hostileValue);
    if (type === 'integer' || type === 'number') {
      const number = fc.integer({
        min: Math.ceil(schema.minimum ?? 0),
        max: Math.floor(Math.min(schema.maximum ?? 50, 2 ** 31)),
      });
      return mostly(number, hostileValue);
    }
    if (type === 'boolean') return mostly(fc.boolean(), hostileValue);
    return mostly(textOf(name), hostileValue);
  }

  function objectOf(schema: Schema, depth: number): fc.Arbitrary<unknown> {
    const fields = Object.entries(schema.properties ?? {}).map(([name, field]): [string, fc.Arbitrary<unknown>] => [
      name,
      valueOf(field, name, depth + 1),
    ]);
    const requiredKeys = schema.required?.filter((name) => name in (schema.properties ?? {})) ?? [];
    const record = fc.record(Object.fromEntries(fields), { requiredKeys });
    const odd = fc.tuple(record, entriesOf(fc.constantFrom('__proto__', 'constructor', 'id'), hostileValue));
    return fc.oneof({ weight: 9, arbitrary: record }, { weight: 1, arbitrary: odd.map(([a, b]) => ({ ...a, ...b })) });
  }

  /** A text that its field may well take, by the field's name. */
  function textOf(name: string): fc.Arbitrary<string> {
    if (/id$|^a$|^b$|individual|sires|dams|record|kept|duplicate/i.test(name))
      return fc.oneof(
        { weight: 5, arbitrary: idFor(/^(a|b|sires|dams|kept.*|duplicate.*)$/.test(name) ? 'individuals' : name) },
        { weight: 1, arbitrary: id },
      );
    if (/laid|hatched|date|joined|left|water|observed|sexed|from|to$/i.test(name))
      return fc.constantFrom('2021-04-12', '2018', '199X~', '1993/1996', '../2001', '2099-01-01');
    return fc.constantFrom('Rio Claro', 'Epipedobates anthonyi', 'A-1', 'calls', 'EC', 'import');
  }

  const routes = Object.entries(document.paths).flatMap(([pattern, item]) =>
    Object.entries(item as Record<string, Operation>).map(([method, operation]) => ({ pattern, method, operation })),
  );
  return fc.constantFrom(...routes).chain(({ pattern, method, operation }) => {
    const [media, content] = Object.entries(operation.requestBody?.content ?? {})[0] ?? [];
    const body = media === undefined ? fc.option(hostileValue, { freq: 8 }) : valueOf(content?.schema ?? {}, '');
    return fc
      .record({
        places: fc.array(mostly(idFor(pattern.split('/')[3] ?? ''), fc.constantFrom(...hostileTexts)), {
          minLength: 3,
          maxLength: 3,
        }),
        query: queryOf(operation, valueOf),
        wire: media === 'text/csv' ? sheets : bodies(body),
        headers: headersOf,
        isKeeper: fc.oneof({ weight: 24, arbitrary: fc.constant(true) }, { weight: 1, arbitrary: fc.constant(false) }),
      })
      .map(({ places, query, wire, headers, isKeeper }) => {
        const rest = places.values();
        const path = pattern.replace(/\{\w+\}/g, () => inAddress(String(rest.next().value)));
        const isChange = !['get', 'delete'].includes(method);
        return {
          method: method.toUpperCase(),
          path: path + query,
          headers: { ...(isChange ? { 'content-type': wire.type } : {}), ...headers },
          body: isChange ? wire.text : null,
          isKeeper,
        };
      });
  });
}

/** What stands in an address; some of it as it is, since not everybody escapes. */
function inAddress(text: string): string {
  const short = text.slice(0, 2000);
  if (/^[\w.%-]+$/.test(short)) return short;
  return short.isWellFormed() ? encodeURIComponent(short) : '%ed%a0%80';
}

function queryOf(
  { parameters = [] }: Operation,
  valueOf: (schema: Schema, name: string) => fc.Arbitrary<unknown>,
): fc.Arbitrary<string> {
  const known = parameters
    .filter((parameter) => parameter.in === 'query')
    .map(({ name, schema }) =>
      fc.option(valueOf(schema ?? {}, name), { freq: 2, nil: undefined }).map((value) => ({ name, value })),
    );
  const odd = fc.constantFrom(
    '',
    '',
    '',
    'limit=1&limit=2',
    '__proto__[x]=1',
    'a[b]=c',
    '%00=%ff',
    '=&&=',
    'limit[]=1',
  );
  return fc.tuple(fc.tuple(...known), odd).map(([sent, extra]) => {
    const pairs = sent
      .filter(({ value }) => value !== undefined)
      .map(({ name, value }) => `${name}=${inAddress(typeof value === 'string' ? value : JSON.stringify(value))}`);
    const all = [...pairs, extra]
      .filter((pair) => pair !== '')
      .join('&')
      .slice(0, 6000);
    return all === '' ? '' : `?${all}`;
  });
}

interface Sent {
  readonly text: string | null;
  readonly type: string;
}

/** A body as JSON, now and then cut off, nested without end, of another type, or with numbers that no program holds. */
function bodies(value: fc.Arbitrary<unknown>): fc.Arbitrary<Sent> {
  const type = fc.oneof(
    { weight: 20, arbitrary: fc.constant('application/json') },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        'text/plain',
        'application/json; charset=utf-16',
        'multipart/form-data; boundary=x',
        '/',
        'text/csv',
      ),
    },
  );
  const text = value.map((held): string | null => (held === undefined ? null : JSON.stringify(held)));
  const spoilt = fc.oneof(
    text.map((whole) => whole?.slice(0, whole.length / 2) ?? ''),
    fc.constantFrom(
      '['.repeat(30_000),
      '{"a":'.repeat(20_000),
      '[1e400]',
      '{"a":1e999}',
      '\ufeff{}',
      '{"a":1,"a":2}',
      'nul',
      '"',
    ),
  );
  return fc.record({
    text: fc.oneof({ weight: 20, arbitrary: text }, { weight: 1, arbitrary: spoilt }),
    type,
  });
}

const cell = fc.oneof(
  fc.constantFrom('A-1', 'A-2', 'Epipedobates anthonyi', 'm', 'f', '?', 'A-1:0.5/A-2:0.5', '2021~', 'S-1'),
  fc.constantFrom(...hostileTexts).map((text) => text.slice(0, 200)),
);
const sheets: fc.Arbitrary<Sent> = fc
  .tuple(
    fc.subarray(['code', 'species', 'line', 'sex', 'sire', 'dam', 'parents', 'source', 'hatched', 'clutch', 'oddity'], {
      minLength: 1,
    }),
    fc.array(fc.array(cell, { minLength: 1, maxLength: 11 }), { maxLength: 4 }),
    fc.constantFrom('text/csv', 'text/csv', 'text/csv', 'text/csv; charset=latin1', 'multipart/form-data; boundary=x'),
  )
  .map(([header, rows, type]) => ({ text: [header, ...rows].map((row) => row.join(',')).join('\n'), type }));

const headersOf: fc.Arbitrary<Record<string, string>> = fc
  .record(
    {
      'if-match': fc.oneof({ weight: 3, arbitrary: fc.constant('*') }, { weight: 1, arbitrary: headerText }),
      'idempotency-key': headerText,
      accept: headerText,
      range: fc.constantFrom('bytes=0-1', 'bytes=-1', 'bytes=9-1,2-'),
      'content-encoding': fc.constantFrom('gzip', 'br', 'identity', 'nonsense'),
      'x-http-method-override': fc.constantFrom('DELETE', 'PATCH'),
      'accept-language': headerText,
      cookie: headerText,
      'sec-fetch-site': fc.constantFrom('same-origin', 'cross-site', 'none'),
      expect: fc.constantFrom('100-continue'),
      'if-none-match': headerText,
    },
    { requiredKeys: [] },
  )
  .chain((all) =>
    // few requests have odd headers, so that one bad header does not hide what the rest of a request would do
    fc
      .subarray(Object.entries(all), { maxLength: 3 })
      .map((some) => ({ 'if-match': '*', ...Object.fromEntries(some) })),
  );
