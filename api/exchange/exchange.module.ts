import { Module, RequestMethod, type MiddlewareConsumer, type NestModule } from '@nestjs/common';
import { ImportUndoService } from './import-undo.service.ts';
import { ImportsController } from './imports.controller.ts';
import { ImportsService } from './imports.service.ts';
import { ReceiveSheet } from './receive-sheet.ts';

/** Register sheets into the register. */
@Module({ controllers: [ImportsController], providers: [ImportsService, ImportUndoService, ReceiveSheet] })
export class ExchangeModule implements NestModule {
  configure(consumer: MiddlewareConsumer): void {
    consumer.apply(ReceiveSheet).forRoutes({ path: 'imports', method: RequestMethod.POST });
  }
}
