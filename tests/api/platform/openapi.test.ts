import { readdir, readFile, writeFile } from 'node:fs/promises';
import { RouteParamtypes } from '@nestjs/common/enums/route-paramtypes.enum.js';
import { ModulesContainer } from '@nestjs/core';
import type { OpenAPIObject } from '@nestjs/swagger';
import openapiTypes, { astToString } from 'openapi-typescript';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../../api/create-app.ts';
import { apiDocument } from '../../../api/platform/openapi.ts';
import { createDatabase, type TestDatabase } from '../../support/database.ts';

const typesFile = new URL('../../../client/src/lib/api/openapi.d.ts', import.meta.url);

let database: TestDatabase;
let app: Awaited<ReturnType<typeof createApp>>;
let document: OpenAPIObject;

beforeAll(async () => {
  database = await createDatabase();
  app = await createApp(database.url, { logLevel: 'silent' });
  await app.init();
  document = apiDocument(app);
});

afterAll(async () => {
  await app.close();
  await database.drop();
});

interface Operation {
  operationId?: string;
  summary?: string;
  responses: Record<string, unknown>;
}

const operations = (): [string, Operation][] =>
  Object.entries(document.paths).flatMap(([path, item]) =>
    Object.entries(item as Record<string, Operation>)
      .filter(([method]) => ['get', 'post', 'patch', 'put', 'delete'].includes(method))
      .map(([method, operation]): [string, Operation] => [`${method} ${path}`, operation]),
  );

describe('the description of the API', () => {
  it('gives the client its types; they are committed as they are generated', async () => {
    const generated = astToString(
      await openapiTypes(JSON.parse(JSON.stringify(document)) as Parameters<typeof openapiTypes>[0]),
    );
    const text = `/** Generated from the API by npm run client:types. */\n${generated}`;
    if (process.env['UPDATE_CLIENT_TYPES']) await writeFile(typesFile, text);
    expect(await readFile(typesFile, 'utf8')).toBe(text);
  });

  it('says of every operation what it does, under a name of its own', () => {
    const all = operations();
    expect(all.length).toBeGreaterThan(30);
    expect(all.filter(([, operation]) => !operation.summary).map(([name]) => name)).toEqual([]);
    const ids = all.map(([, operation]) => operation.operationId);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('knows each shape by a name of its own, since of two with one name the second would be told for both', async () => {
    const api = new URL('../../../api/', import.meta.url);
    const files = (await readdir(api, { recursive: true })).filter((file) => /\.(view|dto)\.ts$/.test(file));
    const texts = await Promise.all(files.map((file) => readFile(new URL(file, api), 'utf8')));
    const names = texts.flatMap((text) =>
      [...text.matchAll(/^export (?:abstract )?class (\w+)/gm)].map(([, name]) => name),
    );
    expect(names.length).toBeGreaterThan(100);
    expect(names.filter((name, place) => names.indexOf(name) !== place)).toEqual([]);
  });

  it('describes every field that goes in or out', () => {
    const schemas = Object.entries(document.components?.schemas ?? {});
    const silent = schemas.flatMap(([name, schema]) =>
      Object.entries('properties' in schema ? (schema.properties ?? {}) : {})
        .filter(([, property]) => !('$ref' in property) && !property.description)
        .map(([field]) => `${name}.${field}`),
    );
    expect(silent).toEqual([]);
  });

  it('names the errors of every route that takes an id or a body', () => {
    const silent = operations().filter(([name, operation]) => {
      const codes = Object.keys(operation.responses);
      return (
        (name.includes('{id}') && !codes.includes('404')) || (/^(post|patch)/.test(name) && !codes.includes('422'))
      );
    });
    expect(silent.map(([name]) => name)).toEqual([]);
  });
});

it('every body and query of a route is checked against a class', () => {
  // a DTO imported with `import type` leaves no class behind, and its checks would silently not run
  const unchecked: string[] = [];
  for (const module of app.get(ModulesContainer).values())
    for (const { metatype } of module.controllers.values()) {
      if (typeof metatype !== 'function') continue;
      const prototype = metatype.prototype as Record<string, unknown>;
      for (const method of Object.getOwnPropertyNames(prototype).filter((name) => name !== 'constructor')) {
        const parameters = (Reflect.getMetadata('__routeArguments__', metatype, method) ?? {}) as Record<
          string,
          { index: number; data?: unknown }
        >;
        const types = (Reflect.getMetadata('design:paramtypes', prototype, method) ?? []) as unknown[];
        for (const [key, { index, data }] of Object.entries(parameters)) {
          const isWhole =
            [RouteParamtypes.BODY, RouteParamtypes.QUERY].map(Number).includes(Number(key.split(':')[0])) &&
            data === undefined;
          if (isWhole && [Object, Function, undefined].includes(types[index] as never))
            unchecked.push(`${metatype.name}.${method}`);
        }
      }
    }
  expect(unchecked).toEqual([]);
});
