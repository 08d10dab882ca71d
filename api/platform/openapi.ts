import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';
import { describeProblem } from './api-problems.ts';

type PathItemObject = OpenAPIObject['paths'][string];

/** The description of the API, made from the code. */
export function apiDocument(app: INestApplication): OpenAPIObject {
  const about = new DocumentBuilder()
    .setTitle('Linekeeper')
    .setVersion('1')
    .setOpenAPIVersion('3.1.0')
    .setDescription(
      'Lineage and provenance records for keepers of small frogs and other amphibians. Figures advise and count only what is recorded. ' +
        'Calendar dates are EDTF strings (ISO 8601-2:2019 level 1), instants RFC 3339 in UTC, errors RFC 9457. ' +
        'Coefficients are probabilities without unit, from 0 to 1. Changes need If-Match; a POST or PATCH may carry an Idempotency-Key.',
    )
    .build();
  const document = SwaggerModule.createDocument(app, about, {
    operationIdFactory: (controller, method) => `${method}${controller.replace('Controller', '')}`,
  });
  for (const [path, item] of Object.entries(document.paths))
    if (path.startsWith('/api/v1/')) addProblemsOfEveryRoute(item);
  return document;
}

/** Who asks, what for, and how often is looked at before every route, whatever it does. */
function addProblemsOfEveryRoute(item: PathItemObject): void {
  for (const method of ['get', 'post', 'put', 'patch', 'delete'] as const) {
    const responses = item[method]?.responses;
    if (responses) for (const status of [401, 403, 429] as const) responses[status] ??= describeProblem(status);
  }
}

/** Serves the document at /api/openapi.json and a page to browse it at /api/docs. */
export function serveDocument(app: INestApplication): void {
  SwaggerModule.setup('api/docs', app, () => apiDocument(app), {
    jsonDocumentUrl: 'api/openapi.json',
    customSiteTitle: 'Linekeeper API',
  });
}
