import { Module } from '@nestjs/common';
import { AcknowledgementsService } from '../provenance/acknowledgements/acknowledgements.service.ts';
import { AcknowledgingController } from './acknowledgements/acknowledging.controller.ts';
import { CurrentFlags } from './acknowledgements/current-flags.service.ts';
import { LineAuditController } from './audit/line-audit.controller.ts';
import { LineAuditService } from './audit/line-audit.service.ts';
import { LineOverTimeController } from './over-time/line-over-time.controller.ts';
import { LineOverTimeService } from './over-time/line-over-time.service.ts';
import { FiguresInterceptor } from './figures.interceptor.ts';
import { FiguresProgressController } from './figures-progress.controller.ts';
import { FiguresProgressService } from './figures-progress.service.ts';
import { FiguresKeeper } from './figures-keeper.ts';
import { FiguresUpkeep } from './figures-upkeep.ts';
import { DescendantsService } from './descendants/descendants.service.ts';
import { CommonAncestorsService } from './common-ancestors.service.ts';
import { InbreedingLoopsService } from './inbreeding-loops.service.ts';
import { FiguresService } from './figures.service.ts';
import { ForecastService } from './forecast.service.ts';
import { InbreedingSpreadController } from './inbreeding-spread.controller.ts';
import { InbreedingSpreadService } from './inbreeding-spread.service.ts';
import { IndividualLineageController } from './individual-lineage.controller.ts';
import { IndividualLineageService } from './individual-lineage.service.ts';
import { KinshipService } from './kinship.service.ts';
import { LineageController } from './lineage.controller.ts';
import { LineageSetController } from './lineage-set.controller.ts';
import { LineageSetService } from './lineage-set.service.ts';
import { PedigreeChartService } from './pedigree-chart.service.ts';
import { ProvController } from './prov/prov.controller.ts';
import { ProvService } from './prov/prov.service.ts';
import { SourceLivingController } from './source-living/source-living.controller.ts';
import { SourceLivingService } from './source-living/source-living.service.ts';
import { Snapshots } from './snapshots.service.ts';
import { WhatIfController } from './what-if.controller.ts';
import { WhatIfService } from './what-if.service.ts';

/** The lineage: ancestors, inbreeding, kinship, shares and flags, computed from the register. */
@Module({
  controllers: [
    IndividualLineageController,
    ProvController,
    InbreedingSpreadController,
    WhatIfController,
    LineageController,
    LineageSetController,
    LineAuditController,
    LineOverTimeController,
    SourceLivingController,
    AcknowledgingController,
    FiguresProgressController,
  ],
  providers: [
    Snapshots,
    FiguresKeeper,
    CommonAncestorsService,
    DescendantsService,
    InbreedingLoopsService,
    FiguresProgressService,
    FiguresUpkeep,
    FiguresInterceptor,
    IndividualLineageService,
    InbreedingSpreadService,
    WhatIfService,
    PedigreeChartService,
    ProvService,
    KinshipService,
    ForecastService,
    FiguresService,
    LineageSetService,
    LineAuditService,
    LineOverTimeService,
    SourceLivingService,
    CurrentFlags,
    AcknowledgementsService,
  ],
  exports: [Snapshots, IndividualLineageService],
})
export class LineageModule {}
