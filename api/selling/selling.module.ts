import {
  Inject,
  Module,
  RequestMethod,
  type MiddlewareConsumer,
  type NestModule,
  type OnModuleInit,
} from '@nestjs/common';
import { JournalKinds } from '../journal/journal-kinds.ts';
import { LineageModule } from '../lineage/lineage.module.ts';
import { PeopleModule } from '../people/people.module.ts';
import { ProvenanceModule } from '../provenance/provenance.module.ts';
import { PublicSheetsController } from './sheets/public-sheets.controller.ts';
import { PublicSheetsService } from './sheets/public-sheets.service.ts';
import { ReceiveSheetFile } from './sheets/receive-sheet-file.ts';
import { SheetComposer } from './sheets/sheet-composer.service.ts';
import { sheetKind } from './sheets/sheet-kind.ts';
import { SheetsController } from './sheets/sheets.controller.ts';
import { SheetsService } from './sheets/sheets.service.ts';
import { PublishedKeysController } from './signing-keys/published-keys.controller.ts';
import { signingKeyKind } from './signing-keys/signing-key-kind.ts';
import { SigningKeysController } from './signing-keys/signing-keys.controller.ts';
import { SigningKeys } from './signing-keys/signing-keys.service.ts';
import { transferKind } from './transfers/transfer-kind.ts';
import { TransfersController } from './transfers/transfers.controller.ts';
import { TransfersService } from './transfers/transfers.service.ts';

/** Animals that change hands, and the papers that go with them. */
@Module({
  imports: [LineageModule, PeopleModule, ProvenanceModule],
  controllers: [
    SigningKeysController,
    PublishedKeysController,
    SheetsController,
    PublicSheetsController,
    TransfersController,
  ],
  providers: [SigningKeys, SheetComposer, SheetsService, PublicSheetsService, TransfersService],
})
export class SellingModule implements NestModule, OnModuleInit {
  constructor(@Inject(JournalKinds) private readonly kinds: JournalKinds) {}

  onModuleInit(): void {
    for (const kind of [signingKeyKind, sheetKind, transferKind]) this.kinds.add(kind);
  }

  configure(consumer: MiddlewareConsumer): void {
    consumer
      .apply(ReceiveSheetFile)
      .forRoutes({ path: 'sheets/verification', method: RequestMethod.POST, version: '1' });
  }
}
