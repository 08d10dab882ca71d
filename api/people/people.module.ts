import { Module } from '@nestjs/common';
import { MetricsController } from './metrics.controller.ts';
import { DataSource } from 'typeorm';
import { poolOf } from '../platform/data-source.ts';
import { Passphrases } from './passphrases.ts';
import { PeopleController } from './people.controller.ts';
import { SessionController } from './session.controller.ts';
import { SessionService } from './session.service.ts';
import { SessionStore } from './session-store.ts';
import { SetupService } from './setup.service.ts';

/** Keepers, how they sign in, and who acts. */
@Module({
  controllers: [PeopleController, SessionController, MetricsController],
  providers: [
    Passphrases,
    SessionService,
    SetupService,
    {
      provide: SessionStore,
      inject: [DataSource],
      useFactory: (dataSource: DataSource) => new SessionStore(poolOf(dataSource)),
    },
  ],
})
export class PeopleModule {}
