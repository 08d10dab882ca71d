import { Module } from '@nestjs/common';
import { LineageModule } from '../lineage/lineage.module.ts';
import { PlanForecastController } from './forecast/plan-forecast.controller.ts';
import { PlanForecastService } from './forecast/plan-forecast.service.ts';
import { GroupsController } from './groups/groups.controller.ts';
import { GroupsService } from './groups/groups.service.ts';
import { MatesController } from './mates/mates.controller.ts';
import { MatesService } from './mates/mates.service.ts';
import { AtRiskController } from './new-blood/at-risk.controller.ts';
import { AtRiskService } from './new-blood/at-risk.service.ts';
import { ExchangeController } from './new-blood/exchange.controller.ts';
import { ExchangeService } from './new-blood/exchange.service.ts';
import { NewBloodController } from './new-blood/new-blood.controller.ts';
import { NewBloodService } from './new-blood/new-blood.service.ts';
import { PlanController } from './plan/plan.controller.ts';
import { PlanService } from './plan/plan.service.ts';

/** Choosing pairings: who for whom, and what would come of it. */
@Module({
  imports: [LineageModule],
  controllers: [
    AtRiskController,
    ExchangeController,
    GroupsController,
    MatesController,
    NewBloodController,
    PlanController,
    PlanForecastController,
  ],
  providers: [
    AtRiskService,
    ExchangeService,
    GroupsService,
    MatesService,
    NewBloodService,
    PlanService,
    PlanForecastService,
  ],
})
export class MatchModule {}
