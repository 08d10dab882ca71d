import { Module, type MiddlewareConsumer, type NestModule } from '@nestjs/common';
import { ImportsController } from './imports.controller.ts';
import { ImportsService } from './imports.service.ts';
import { ReceiveSheet } from './receive-sheet.ts';

/** Register sheets into the register. */
@Module({ controllers: [ImportsController], providers: [ImportsService, ReceiveSheet] })
export class ExchangeModule implements NestModule {
  configure(consumer: MiddlewareConsumer): void {
    consumer.apply(ReceiveSheet).forRoutes(ImportsController);
  }
}
