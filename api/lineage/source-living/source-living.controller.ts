import { Controller, Get, Inject, Param } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Needs } from '../../people/permission.guard.ts';
import { asking, Costs } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { SourceLivingService } from './source-living.service.ts';
import { SourceLivingView } from './source-living.view.ts';

/** What is alive of a source. */
@ApiTags('sources')
@Controller('sources/:id/living')
export class SourceLivingController {
  constructor(@Inject(SourceLivingService) private readonly sources: SourceLivingService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, () => 5)
  @Get()
  @ApiOperation({
    summary: 'Living animals that came from a source or descend from it',
    description:
      'Counts those that whoever asks may see. An animal with candidate parents counts where one of them descends from the source; `certain` tells those that do so whoever the parents were.',
  })
  @ApiOkResponse({ type: SourceLivingView })
  @ApiProblems(404)
  getSourceLiving(@Param('id') id: string): Promise<SourceLivingView> {
    return this.sources.of(id);
  }
}
