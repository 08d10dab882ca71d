import { Module } from '@nestjs/common';
import { PeopleController } from './people.controller.ts';

/** Keepers, and who acts. */
@Module({ controllers: [PeopleController] })
export class PeopleModule {}
