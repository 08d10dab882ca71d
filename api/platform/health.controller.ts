import { Controller, Get, Inject, VERSION_NEUTRAL } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiServiceUnavailableResponse, ApiTags } from '@nestjs/swagger';
import { DataSource } from 'typeorm';
import { ForAnyone } from './for-anyone.ts';
import { Problem } from './problem.ts';
import { say } from './say.ts';

/** For those who watch the service. */
@ApiTags('health')
@Controller({ version: VERSION_NEUTRAL })
export class HealthController {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  @ForAnyone()
  @Get('health/live')
  @ApiOperation({ summary: 'Whether the process runs' })
  @ApiOkResponse({ description: 'It runs.' })
  live(): { status: 'up' } {
    return { status: 'up' };
  }

  @ForAnyone()
  @Get('health/ready')
  @ApiOperation({ summary: 'Whether the service can answer: its database does' })
  @ApiOkResponse({ description: 'It can.' })
  @ApiServiceUnavailableResponse({ description: 'The database does not answer.' })
  async ready(): Promise<{ status: 'up' }> {
    try {
      await this.dataSource.query('select 1');
    } catch {
      throw new Problem('unavailable', 503, say`Not now`, say`The database does not answer.`);
    }
    return { status: 'up' };
  }
}
