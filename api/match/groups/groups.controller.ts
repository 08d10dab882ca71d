import { Body, Controller, HttpCode, Inject, Post } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { Needs } from '../../people/permission.guard.ts';
import { asking, Costs, entries } from '../../platform/allowances.ts';
import { ApiProblems } from '../../platform/api-problems.ts';
import { GroupRequest } from './groups.dto.ts';
import { GroupsService } from './groups.service.ts';
import { GroupView } from './groups.view.ts';

@ApiTags('match')
@Controller('match/group')
export class GroupsController {
  constructor(@Inject(GroupsService) private readonly groups: GroupsService) {}

  @Needs('ask', 'lineage')
  @Costs(asking, (request) => 10 + entries(request, 'individuals'))
  @Post()
  @HttpCode(200)
  @ApiOperation({
    summary: 'How well a group fits, whom to take out or add, and the best group of a size',
    description:
      'These animals often live in groups, where nobody knows who breeds with whom: every male counts as likely as any other, every female too. ' +
      'It changes nothing, and is POSTed only because it can be long. ' +
      "The figures advise; the animals' welfare and the keeper's eye decide.",
  })
  @ApiOkResponse({ type: GroupView })
  @ApiProblems(400, 422, 503)
  look(@Body() request: GroupRequest): Promise<GroupView> {
    return this.groups.of(request);
  }
}
