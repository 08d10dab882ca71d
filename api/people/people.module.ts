import { Module } from '@nestjs/common';
import { Admission } from './admission.ts';
import { DataSource } from 'typeorm';
import { MetricsController } from './metrics.controller.ts';
import { poolOf } from '../platform/data-source.ts';
import { AccountController } from './account.controller.ts';
import { ClubService } from './club.service.ts';
import { JoiningService } from './joining.service.ts';
import { KeepersService } from './keepers.service.ts';
import { LinksController } from './links.controller.ts';
import { LinksService } from './links.service.ts';
import { PassphraseChangeService } from './passphrase-change.service.ts';
import { TokensService } from './tokens.service.ts';
import { Passphrases } from './passphrases.ts';
import { PeopleController } from './people.controller.ts';
import { SessionController } from './session.controller.ts';
import { SessionService } from './session.service.ts';
import { SessionStore } from './session-store.ts';
import { SetupService } from './setup.service.ts';

/** Keepers, how they sign in, and who acts. */
@Module({
  controllers: [PeopleController, SessionController, LinksController, AccountController, MetricsController],
  providers: [
    Admission,
    Passphrases,
    SessionService,
    SetupService,
    KeepersService,
    ClubService,
    LinksService,
    JoiningService,
    PassphraseChangeService,
    TokensService,
    {
      provide: SessionStore,
      inject: [DataSource],
      useFactory: (dataSource: DataSource) => new SessionStore(poolOf(dataSource)),
    },
  ],
  exports: [Admission],
})
export class PeopleModule {}
