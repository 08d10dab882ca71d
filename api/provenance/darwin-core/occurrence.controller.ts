import { Controller, Get, Inject, Param, Query, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { Needs } from '../../people/permission.guard.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { DARWIN_CORE, occurrenceTerms } from './darwin-core-terms.ts';
import { OccurrenceQuery } from './occurrence.dto.ts';
import { OccurrenceService } from './occurrence.service.ts';
import { AsItStands } from '../../platform/readers-words.interceptor.ts';

const numbers = ['decimalLatitude', 'decimalLongitude', 'coordinateUncertaintyInMeters'];

const linkedData = {
  type: 'object',
  required: ['@context', '@id', '@type', 'dwc:occurrenceID', 'dwc:basisOfRecord'],
  properties: {
    '@context': {
      type: 'object',
      description: 'What the prefix dwc stands for.',
      additionalProperties: { type: 'string' },
    },
    '@id': { type: 'string', description: 'The record, as an urn:uuid: IRI.' },
    '@type': { type: 'string', description: 'dwc:Occurrence.' },
    ...Object.fromEntries(
      Object.entries(occurrenceTerms).map(([term, description]) => [
        `dwc:${term}`,
        { type: numbers.includes(term) ? 'number' : 'string', description },
      ]),
    ),
  },
};

@ApiTags('claims')
@AsItStands()
@Controller('individuals/:id/occurrence')
export class OccurrenceController {
  constructor(@Inject(OccurrenceService) private readonly occurrences: OccurrenceService) {}

  @Needs('read', 'individual')
  @Get()
  @ApiOperation({
    summary: 'An animal and its claimed place in the terms of Darwin Core',
    description:
      `Terms of ${DARWIN_CORE} (TDWG), as JSON-LD or as Simple Darwin Core in CSV; what is not known is left out. The place is that of the ` +
      'best standing claim of the animal itself or of its source, and none for an animal that was bred. Strangers see it generalised.',
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiOkResponse({
    description: 'The animal.',
    content: {
      'application/ld+json': { schema: linkedData },
      'text/csv': { schema: { type: 'string', description: 'A row of terms and a row of values.' } },
    },
  })
  @ApiProblems(404, 422)
  async getOccurrence(
    @Param('id') id: string,
    @Query() query: OccurrenceQuery,
    @Res({ passthrough: true }) response: Response,
  ): Promise<string> {
    const { type, body } = await this.occurrences.tell(id, query);
    response.setHeader('Content-Type', type);
    return body;
  }
}
