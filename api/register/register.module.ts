import { Module } from '@nestjs/common';
import { IndividualsController } from './individuals/individuals.controller.ts';
import { IndividualsService } from './individuals/individuals.service.ts';
import { LinesController } from './lines/lines.controller.ts';
import { LinesService } from './lines/lines.service.ts';
import { SpeciesController } from './species/species.controller.ts';
import { SpeciesService } from './species/species.service.ts';
import { WithdrawalService } from './withdrawal.service.ts';

/** The register: species, lines, sources, individuals, pairings, clutches and observations. */
@Module({
  controllers: [SpeciesController, LinesController, IndividualsController],
  providers: [WithdrawalService, SpeciesService, LinesService, IndividualsService],
})
export class RegisterModule {}
