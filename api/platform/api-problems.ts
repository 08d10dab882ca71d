import { applyDecorators } from '@nestjs/common';
import { ApiExtraModels, ApiHeader, ApiProperty, ApiResponse, getSchemaPath } from '@nestjs/swagger';

/** One thing that is wrong, as a problem document names it. */
class ProblemErrorView {
  @ApiProperty({ required: false, description: 'JSON pointer of the field.' })
  pointer?: string;

  @ApiProperty({ required: false, type: 'integer', minimum: 1, description: 'Row of a sheet; its header is row 1.' })
  row?: number;

  @ApiProperty({ required: false, description: 'Column of a sheet, as its header names it.' })
  column?: string;

  @ApiProperty({ description: 'What is wrong and what to do about it.' })
  detail: string;
}

/** A problem document, RFC 9457. */
class ProblemView {
  @ApiProperty({ description: 'Address that names the kind of problem: /api/problems/<slug>.' })
  type: string;

  @ApiProperty({ description: 'The kind of problem in words.' })
  title: string;

  @ApiProperty({ type: 'integer', minimum: 400, maximum: 599, description: 'The HTTP status.' })
  status: number;

  @ApiProperty({ description: 'What happened here, and what to do about it.' })
  detail: string;

  @ApiProperty({ description: 'The address that was asked.' })
  instance: string;

  @ApiProperty({ required: false, type: [ProblemErrorView], description: 'Each wrong field.' })
  errors?: ProblemErrorView[];
}

interface DescribedProblem {
  description: string;
  content: Record<string, { schema: { $ref: string } }>;
}

const meanings: Record<number, string> = {
  400: 'malformed: the request cannot be read as JSON.',
  401: 'sign-in: only a member may do this, or the token is unknown, revoked or expired.',
  403: 'forbidden: your role or your token does not include this, or the record is another keeper’s.',
  404: 'not-found: there is no such record.',
  409: 'conflict or loop: a rule of the register stands against it as things are now; the records in the way are named.',
  410: 'gone: it was there once and is not given again.',
  412: 'stale: somebody changed the record meanwhile; `current` is the record as it is now.',
  413: 'too-large: the request is larger than this address takes.',
  415: 'unsupported-media-type: the body is of a type that is not read here.',
  422: 'invalid: a field cannot be taken; each is named in `errors`.',
  428: 'precondition-required: the If-Match header is missing.',
  429: 'too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again.',
  503: 'unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again.',
};

export type ProblemStatus = 400 | 401 | 403 | 404 | 409 | 410 | 412 | 413 | 415 | 422 | 428 | 429 | 503;

/** What a problem of a status means, and the document that tells it. */
export function describeProblem(status: ProblemStatus): DescribedProblem {
  return {
    description: meanings[status] ?? 'A problem.',
    content: { 'application/problem+json': { schema: { $ref: getSchemaPath(ProblemView) } } },
  };
}

/** Describes the problems that a route answers with. 401, 403 and 429 are described for every route by themselves. */
export function ApiProblems(...statuses: ProblemStatus[]): MethodDecorator {
  return applyDecorators(
    ApiExtraModels(ProblemView),
    ...statuses.map((status) => ApiResponse({ status, ...describeProblem(status) })),
  );
}

/** Describes the If-Match header of a change. */
export function ApiIfMatch(): MethodDecorator {
  return ApiHeader({
    name: 'If-Match',
    required: true,
    description: 'ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there.',
  });
}
