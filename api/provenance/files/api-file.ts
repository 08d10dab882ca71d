import { applyDecorators } from '@nestjs/common';
import { ApiHeader, ApiOkResponse, ApiResponse } from '@nestjs/swagger';

/** Describes an answer that is a file of one of these types. */
export function ApiFile(...mediaTypes: string[]): MethodDecorator {
  const schema = { type: 'string', format: 'binary' };
  return applyDecorators(
    ApiHeader({ name: 'If-None-Match', required: false, description: 'ETag of a copy that is at hand.' }),
    ApiOkResponse({
      description: 'The file. Its name is made here; a document is a download.',
      content: Object.fromEntries(mediaTypes.map((type) => [type, { schema }])),
    }),
    ApiResponse({ status: 304, description: 'The copy at hand is this very file.' }),
  );
}
