import {
  Inject,
  Module,
  RequestMethod,
  type MiddlewareConsumer,
  type NestModule,
  type OnModuleInit,
} from '@nestjs/common';
import { PeopleModule } from '../people/people.module.ts';
import { JournalKinds } from '../journal/journal-kinds.ts';
import { importKind } from './import-kind.ts';
import { ForeignSheetsController } from './foreign/foreign-sheets.controller.ts';
import { ForeignSheetsService } from './foreign/foreign-sheets.service.ts';
import { otherRegisterKind } from './foreign/other-register-kind.ts';
import { OtherRegistersController } from './foreign/other-registers.controller.ts';
import { OtherRegistersService } from './foreign/other-registers.service.ts';
import { RegisterSheetController } from './out/register-sheet.controller.ts';
import { RegisterSheetService } from './out/register-sheet.service.ts';
import { ImportsController } from './imports.controller.ts';
import { ImportUndoService } from './import-undo.service.ts';
import { ImportsService } from './imports.service.ts';
import { ReceiveSheet } from './receive-sheet.ts';

/** Register sheets into the register, and out of it. */
@Module({
  imports: [PeopleModule],
  controllers: [ImportsController, RegisterSheetController, ForeignSheetsController, OtherRegistersController],
  providers: [
    ImportsService,
    ImportUndoService,
    ReceiveSheet,
    RegisterSheetService,
    ForeignSheetsService,
    OtherRegistersService,
  ],
})
export class ExchangeModule implements NestModule, OnModuleInit {
  constructor(@Inject(JournalKinds) private readonly kinds: JournalKinds) {}

  onModuleInit(): void {
    this.kinds.add(importKind);
    this.kinds.add(otherRegisterKind);
  }

  configure(consumer: MiddlewareConsumer): void {
    consumer.apply(ReceiveSheet).forRoutes({ path: 'imports', method: RequestMethod.POST, version: '1' });
  }
}
