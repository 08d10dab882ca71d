import { Inject, Module, type OnModuleInit } from '@nestjs/common';
import { JournalKinds } from '../journal/journal-kinds.ts';
import { ClutchesController } from './clutches/clutches.controller.ts';
import { ClutchesService } from './clutches/clutches.service.ts';
import { OffspringService } from './clutches/offspring.service.ts';
import { IndividualsController } from './individuals/individuals.controller.ts';
import { IndividualsService } from './individuals/individuals.service.ts';
import { LinesController } from './lines/lines.controller.ts';
import { LinesService } from './lines/lines.service.ts';
import { ComparisonService } from './merges/comparison.service.ts';
import { MergesController } from './merges/merges.controller.ts';
import { MergesService } from './merges/merges.service.ts';
import { ObservationsController } from './observations/observations.controller.ts';
import { ObservationsService } from './observations/observations.service.ts';
import { PairingsController } from './pairings/pairings.controller.ts';
import { PairingsService } from './pairings/pairings.service.ts';
import { SourcesController } from './sources/sources.controller.ts';
import { SourcesService } from './sources/sources.service.ts';
import { SpeciesController } from './species/species.controller.ts';
import { SpeciesService } from './species/species.service.ts';
import { registerKinds } from './undo/register-kinds.ts';
import { togetherKind } from './together/together-kind.ts';
import { TogetherController } from './together/together.controller.ts';
import { TogetherService } from './together/together.service.ts';
import { WarningsController } from './warnings/warnings.controller.ts';
import { WarningsService } from './warnings/warnings.service.ts';
import { WithdrawalService } from './withdrawal.service.ts';

/** The register: species, lines, sources, individuals, pairings, clutches and observations. */
@Module({
  controllers: [
    SpeciesController,
    LinesController,
    SourcesController,
    TogetherController,
    IndividualsController,
    PairingsController,
    ClutchesController,
    ObservationsController,
    WarningsController,
    MergesController,
  ],
  providers: [
    WithdrawalService,
    SpeciesService,
    LinesService,
    SourcesService,
    TogetherService,
    IndividualsService,
    PairingsService,
    ClutchesService,
    OffspringService,
    ObservationsService,
    WarningsService,
    ComparisonService,
    MergesService,
  ],
})
export class RegisterModule implements OnModuleInit {
  constructor(@Inject(JournalKinds) private readonly kinds: JournalKinds) {}

  onModuleInit(): void {
    for (const kind of [...registerKinds, togetherKind]) this.kinds.add(kind);
  }
}
