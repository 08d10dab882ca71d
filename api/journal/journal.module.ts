import { Global, Inject, Module, type OnModuleInit } from '@nestjs/common';
import { JournalController } from './journal.controller.ts';
import { JournalKinds } from './journal-kinds.ts';
import { JournalService } from './journal.service.ts';
import { peopleKinds } from './people-kinds.ts';
import { ReversalService } from './reversal.service.ts';
import { Sealer } from './sealer.ts';

/** The journal: who changed what, when and why; and the way back. */
@Global()
@Module({
  controllers: [JournalController],
  providers: [JournalKinds, JournalService, ReversalService, Sealer],
  exports: [JournalKinds],
})
export class JournalModule implements OnModuleInit {
  constructor(@Inject(JournalKinds) private readonly kinds: JournalKinds) {}

  onModuleInit(): void {
    for (const kind of peopleKinds) this.kinds.add(kind);
  }
}
