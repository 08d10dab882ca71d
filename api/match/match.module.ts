import { Inject, Module, type OnModuleInit } from '@nestjs/common';
import { JournalKinds } from '../journal/journal-kinds.ts';
import { LineageModule } from '../lineage/lineage.module.ts';
import { WithdrawalService } from '../register/withdrawal.service.ts';
import { PlanForecastController } from './forecast/plan-forecast.controller.ts';
import { PlanForecastService } from './forecast/plan-forecast.service.ts';
import { GroupsController } from './groups/groups.controller.ts';
import { GroupsService } from './groups/groups.service.ts';
import { AcceptPairsService } from './kept-plans/accept-pairs.service.ts';
import { keptPlanJournalKind } from './kept-plans/kept-plan-kind.ts';
import { KeptPlansController } from './kept-plans/kept-plans.controller.ts';
import { KeptPlansService } from './kept-plans/kept-plans.service.ts';
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

/** Choosing pairings: who for whom, what would come of it, and plans that were kept. */
@Module({
  imports: [LineageModule],
  controllers: [
    AtRiskController,
    ExchangeController,
    GroupsController,
    KeptPlansController,
    MatesController,
    NewBloodController,
    PlanController,
    PlanForecastController,
  ],
  providers: [
    AcceptPairsService,
    AtRiskService,
    ExchangeService,
    GroupsService,
    KeptPlansService,
    MatesService,
    NewBloodService,
    PlanService,
    PlanForecastService,
    WithdrawalService,
  ],
})
export class MatchModule implements OnModuleInit {
  constructor(@Inject(JournalKinds) private readonly kinds: JournalKinds) {}

  onModuleInit(): void {
    this.kinds.add(keptPlanJournalKind);
  }
}
