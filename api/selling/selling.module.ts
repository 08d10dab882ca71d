import { Module } from '@nestjs/common';
import { LineageModule } from '../lineage/lineage.module.ts';

/** Animals that change hands, and the papers that go with them. */
@Module({
  imports: [LineageModule],
})
export class SellingModule {}
