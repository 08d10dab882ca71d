import { Module } from '@nestjs/common';
import { TodayController } from './today.controller.ts';
import { TodayService } from './today.service.ts';

/** What is due at the tanks, put together from the other rooms. */
@Module({ controllers: [TodayController], providers: [TodayService] })
export class TodayModule {}
