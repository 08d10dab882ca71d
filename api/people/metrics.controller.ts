import { Controller, Get, Header, Inject, VERSION_NEUTRAL } from '@nestjs/common';
import { ApiOperation, ApiProduces, ApiTags } from '@nestjs/swagger';
import { ApiProblems } from '../platform/api-problems.ts';
import { Metrics } from '../platform/metrics.ts';
import { Needs } from './permission.guard.ts';

/** Figures about the service, for those who may see them. */
@ApiTags('health')
@Controller({ version: VERSION_NEUTRAL })
export class MetricsController {
  constructor(@Inject(Metrics) private readonly metrics: Metrics) {}

  @Needs('read', 'metrics')
  @Get('metrics')
  @ApiOperation({
    summary: 'Figures in the Prometheus text format',
    description:
      'For administrators and for the bearer of METRICS_TOKEN. Open to anyone while that is not set and the service is reached from its own machine only.',
  })
  @ApiProduces('text/plain')
  @ApiProblems(401, 403, 429)
  @Header('Content-Type', 'text/plain; version=0.0.4; charset=utf-8')
  figures(): Promise<string> {
    return this.metrics.registry.metrics();
  }
}
