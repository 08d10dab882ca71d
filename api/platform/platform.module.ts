import { Global, Module, type DynamicModule } from '@nestjs/common';
import { HealthController } from './health.controller.ts';
import { IdempotencyInterceptor } from './idempotency.interceptor.ts';
import { FileStore } from './file-store.ts';
import { openFileStore } from './open-file-store.ts';
import { EventStreams } from './event-streams.ts';
import { Jobs } from './jobs.ts';
import { LongWork } from './long-work.ts';
import { Metrics } from './metrics.ts';
import { MetricsDoor } from './metrics-door.ts';
import { ProgressStream } from './progress-stream.ts';
import { RateLimits } from './rate-limits.ts';
import { TimeLimitInterceptor } from './time-limits.ts';
import { settingsKey, type Settings } from './settings.ts';

/** What every room stands on. */
@Global()
@Module({})
export class PlatformModule {
  static with(settings: Settings): DynamicModule {
    const shared = [
      Metrics,
      MetricsDoor,
      RateLimits,
      LongWork,
      Jobs,
      EventStreams,
      ProgressStream,
      IdempotencyInterceptor,
      TimeLimitInterceptor,
    ];
    return {
      module: PlatformModule,
      controllers: [HealthController],
      providers: [
        { provide: settingsKey, useValue: settings },
        { provide: FileStore, useFactory: () => openFileStore(settings) },
        ...shared,
      ],
      exports: [settingsKey, FileStore, ...shared],
    };
  }
}
