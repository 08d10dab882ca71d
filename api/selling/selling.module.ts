import { Inject, Module, type OnModuleInit } from '@nestjs/common';
import { JournalKinds } from '../journal/journal-kinds.ts';
import { LineageModule } from '../lineage/lineage.module.ts';
import { PublishedKeysController } from './signing-keys/published-keys.controller.ts';
import { signingKeyKind } from './signing-keys/signing-key-kind.ts';
import { SigningKeysController } from './signing-keys/signing-keys.controller.ts';
import { SigningKeys } from './signing-keys/signing-keys.service.ts';

/** Animals that change hands, and the papers that go with them. */
@Module({
  imports: [LineageModule],
  controllers: [SigningKeysController, PublishedKeysController],
  providers: [SigningKeys],
})
export class SellingModule implements OnModuleInit {
  constructor(@Inject(JournalKinds) private readonly kinds: JournalKinds) {}

  onModuleInit(): void {
    this.kinds.add(signingKeyKind);
  }
}
