import { Module } from '@nestjs/common';
import { MetricsController } from './metrics.controller.ts';
import { PeopleController } from './people.controller.ts';

/** Keepers, and who acts. */
@Module({ controllers: [PeopleController, MetricsController] })
export class PeopleModule {}
