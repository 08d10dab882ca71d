import { Module, type DynamicModule } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { TypeOrmModule } from '@nestjs/typeorm';
import { ExchangeModule } from './exchange/exchange.module.ts';
import { ForeignRecord } from './exchange/foreign/foreign-record.entity.ts';
import { OtherRegister } from './exchange/foreign/other-register.entity.ts';
import { RegisterImport } from './exchange/register-import.entity.ts';
import { journalEntities } from './journal/journal.entities.ts';
import { JournalModule } from './journal/journal.module.ts';
import { LineageModule } from './lineage/lineage.module.ts';
import { matchEntities } from './match/match.entities.ts';
import { MatchModule } from './match/match.module.ts';
import { PermissionGuard } from './people/permission.guard.ts';
import { peopleEntities } from './people/people.entities.ts';
import { PeopleModule } from './people/people.module.ts';
import { dataSourceOptions } from './platform/data-source.ts';
import { PlatformModule } from './platform/platform.module.ts';
import { RateLimitGuard } from './platform/rate-limit.guard.ts';
import type { Settings } from './platform/settings.ts';
import { provenanceEntities } from './provenance/entities.ts';
import { ProvenanceModule } from './provenance/provenance.module.ts';
import { registerEntities } from './register/entities.ts';
import { RegisterModule } from './register/register.module.ts';
import { sellingEntities } from './selling/entities.ts';
import { SellingModule } from './selling/selling.module.ts';
import { TodayModule } from './today/today.module.ts';

/** Every table that has an entity. */
export const entities = [
  ...peopleEntities,
  ...journalEntities,
  ...registerEntities,
  ...provenanceEntities,
  ...matchEntities,
  ...sellingEntities,
  RegisterImport,
  OtherRegister,
  ForeignRecord,
];

/** The rooms of the house, on a database. */
@Module({})
export class AppModule {
  static on(databaseUrl: string, settings: Settings): DynamicModule {
    return {
      module: AppModule,
      imports: [
        TypeOrmModule.forRoot(dataSourceOptions(databaseUrl, entities)),
        PlatformModule.with(settings),
        PeopleModule,
        JournalModule,
        RegisterModule,
        ProvenanceModule,
        LineageModule,
        MatchModule,
        SellingModule,
        TodayModule,
        ExchangeModule,
      ],
      // in this order: first who asks, then how much
      providers: [
        { provide: APP_GUARD, useClass: PermissionGuard },
        { provide: APP_GUARD, useClass: RateLimitGuard },
      ],
    };
  }
}
