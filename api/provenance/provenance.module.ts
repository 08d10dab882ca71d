import { Inject, Module, type OnModuleInit } from '@nestjs/common';
import { JournalKinds } from '../journal/journal-kinds.ts';
import { WithdrawalService } from '../register/withdrawal.service.ts';
import { ClaimsController } from './claims/claims.controller.ts';
import { ClaimsService } from './claims/claims.service.ts';
import { EvidenceController } from './evidence/evidence.controller.ts';
import { EvidenceService } from './evidence/evidence.service.ts';
import { provenanceKinds } from './provenance-kinds.ts';

/** Where animals come from: claims, and the evidence that bears on them. */
@Module({
  controllers: [ClaimsController, EvidenceController],
  providers: [WithdrawalService, ClaimsService, EvidenceService],
})
export class ProvenanceModule implements OnModuleInit {
  constructor(@Inject(JournalKinds) private readonly kinds: JournalKinds) {}

  onModuleInit(): void {
    for (const kind of provenanceKinds) this.kinds.add(kind);
  }
}
