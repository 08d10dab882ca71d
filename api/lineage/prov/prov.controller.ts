import { Controller, Get, Inject, Param, Query } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import { Needs } from '../../people/permission.guard.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { provStatements, type ProvDocument } from './prov-document.ts';
import { ProvQuery } from './prov.dto.ts';
import { ProvService } from './prov.service.ts';
import { AsItStands } from '../../platform/readers-words.interceptor.ts';

const attributes = {
  type: 'object',
  description: 'Attributes by their names; a value is a literal, or `$` with its `type`.',
  additionalProperties: {},
};

const document = {
  type: 'object',
  required: ['prefix', 'entity'],
  properties: {
    prefix: { type: 'object', description: 'What each prefix stands for.', additionalProperties: { type: 'string' } },
    ...Object.fromEntries(
      provStatements.map((statement) => [
        statement,
        {
          type: 'object',
          description: `Statements of the kind ${statement}, by their names.`,
          additionalProperties: attributes,
        },
      ]),
    ),
  },
};

@ApiTags('lineage')
@AsItStands()
@Controller('individuals/:id/provenance')
export class ProvController {
  constructor(@Inject(ProvService) private readonly provenance: ProvService) {}

  @Needs('read', 'lineage')
  @Get()
  @ApiOperation({
    summary: 'Where an animal comes from, as W3C PROV',
    description:
      'PROV-JSON (W3C Member Submission of 24 April 2013) of the model PROV-DM (Recommendation of 30 April 2013). Entities are the animal, its ancestors, clutches and sources, ' +
      'claims and accepted evidence; activities are arrival, laying, hatching and entry into the register; agents are keepers and whoever papers name. ' +
      'Each candidate parent is a wasDerivedFrom with lk:probability, above 0, at most 1; evidence of a primary document is prov:PrimarySource, of a secondary one prov:Quotation. ' +
      'Private records are concealed:… and tell nothing. Strangers see no agents and no evidence, and places generalised.',
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiOkResponse({ description: 'A document of PROV-JSON.', schema: document })
  @ApiProblems(404, 422)
  getProvenance(@Param('id') id: string, @Query() query: ProvQuery): Promise<ProvDocument> {
    return this.provenance.of(id, query.generations);
  }
}
