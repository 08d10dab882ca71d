import { Global, Module } from '@nestjs/common';
import { HealthController } from './health.controller.ts';
import { IdempotencyInterceptor } from './idempotency.interceptor.ts';
import { Metrics } from './metrics.ts';

/** What every room stands on. */
@Global()
@Module({
  controllers: [HealthController],
  providers: [{ provide: Metrics, useFactory: () => new Metrics() }, IdempotencyInterceptor],
  exports: [Metrics, IdempotencyInterceptor],
})
export class PlatformModule {}
