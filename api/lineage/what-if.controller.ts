import { Body, Controller, HttpCode, Inject, Param, Post } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import { Needs } from '../people/permission.guard.ts';
import { asking, Costs } from '../platform/allowances.ts';
import { ApiProblems } from '../platform/api-problems.ts';
import { WhatIfRequest } from './what-if.dto.ts';
import { WhatIfService } from './what-if.service.ts';
import { WhatIfView } from './what-if.view.ts';

/** Figures under assumptions. */
@ApiTags('lineage')
@Controller('individuals/:id/lineage')
export class WhatIfController {
  constructor(@Inject(WhatIfService) private readonly whatIf: WhatIfService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 20)
  @Post('what-if')
  @HttpCode(200)
  @ApiOperation({
    summary: 'Figures of one animal under another base kinship of sources, and under other parents of clutches',
    description: [
      'Computed as if it were recorded, and refused as the register would refuse it; nothing is written. Weights of candidates are of any scale.',
      'Sources and clutches outside the ancestry are taken too: they may touch the mean kinship with its line. Without assumptions the answer',
      'tells the figures as recorded, and what can be assumed.',
    ].join(' '),
  })
  @ApiParam({ name: 'id', description: 'Id or registry number of the animal.' })
  @ApiOkResponse({ type: WhatIfView })
  @ApiProblems(400, 404, 409, 422, 503)
  askWhatIf(@Param('id') id: string, @Body() request: WhatIfRequest): Promise<WhatIfView> {
    return this.whatIf.of(id, request);
  }
}
