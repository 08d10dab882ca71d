import {
  Inject,
  Module,
  RequestMethod,
  type MiddlewareConsumer,
  type NestModule,
  type OnModuleInit,
} from '@nestjs/common';
import { JournalKinds } from '../journal/journal-kinds.ts';
import { PeopleModule } from '../people/people.module.ts';
import { WithdrawalService } from '../register/withdrawal.service.ts';
import { AcknowledgementsController } from './acknowledgements/acknowledgements.controller.ts';
import { AcknowledgementsService } from './acknowledgements/acknowledgements.service.ts';
import { ClaimsController } from './claims/claims.controller.ts';
import { ClaimsService } from './claims/claims.service.ts';
import { OccurrenceController } from './darwin-core/occurrence.controller.ts';
import { OccurrenceService } from './darwin-core/occurrence.service.ts';
import { EvidenceController } from './evidence/evidence.controller.ts';
import { EvidenceService } from './evidence/evidence.service.ts';
import { EvidenceFilesController } from './files/evidence-files.controller.ts';
import { EvidenceFilesService } from './files/evidence-files.service.ts';
import { FileIntake } from './files/file-intake.service.ts';
import { PictureTurns } from './files/picture-turns.ts';
import { ReceiveFile } from './files/receive-file.ts';
import { SmallPictures } from './files/small-pictures.ts';
import { PhotographsController } from './photographs/photographs.controller.ts';
import { PhotographsService } from './photographs/photographs.service.ts';
import { LabelHistoryController } from './label-history/label-history.controller.ts';
import { LabelHistoryService } from './label-history/label-history.service.ts';
import { PlacesController } from './places/places.controller.ts';
import { provenanceKinds } from './provenance-kinds.ts';

/** Where animals come from: claims, and the evidence that bears on them. */
@Module({
  imports: [PeopleModule],
  controllers: [
    ClaimsController,
    EvidenceController,
    EvidenceFilesController,
    PhotographsController,
    PlacesController,
    LabelHistoryController,
    OccurrenceController,
    AcknowledgementsController,
  ],
  providers: [
    WithdrawalService,
    ClaimsService,
    EvidenceService,
    ReceiveFile,
    FileIntake,
    PictureTurns,
    SmallPictures,
    EvidenceFilesService,
    PhotographsService,
    LabelHistoryService,
    OccurrenceService,
    AcknowledgementsService,
  ],
  exports: [SmallPictures],
})
export class ProvenanceModule implements NestModule, OnModuleInit {
  constructor(@Inject(JournalKinds) private readonly kinds: JournalKinds) {}

  onModuleInit(): void {
    for (const kind of provenanceKinds) this.kinds.add(kind);
  }

  configure(consumer: MiddlewareConsumer): void {
    consumer
      .apply(ReceiveFile)
      .forRoutes(
        { path: 'photographs', method: RequestMethod.POST, version: '1' },
        { path: 'evidence/:id/file', method: RequestMethod.PUT, version: '1' },
      );
  }
}
