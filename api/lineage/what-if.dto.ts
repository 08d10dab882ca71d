import { PickType } from '@nestjs/swagger';
import { IdField, ListField, NumberField } from '../platform/fields.ts';
import { NewClutchRequest } from '../register/clutches/clutch.dto.ts';

/** A source whose founders are taken to be more or less akin. */
export class AssumedSource {
  @IdField({ description: 'The source.' })
  id: string;

  @NumberField({ min: 0, max: 1, description: 'Kinship assumed between any two animals that came together, 0 to 1.' })
  baseKinship: number;
}

/** A clutch with other possible parents: a side that is left out stays as recorded. */
export class AssumedClutch extends PickType(NewClutchRequest, ['sires', 'dams', 'pairs']) {
  @IdField({ description: 'The clutch.' })
  id: string;
}

/** What is assumed for one answer; nothing of it is recorded. */
export class WhatIfRequest {
  @ListField(() => AssumedSource, { max: 100, optional: true, description: 'Sources with another base kinship.' })
  sources: AssumedSource[] = [];

  @ListField(() => AssumedClutch, {
    max: 20,
    optional: true,
    description: 'Clutches with other parents, or other odds, in the form in which a clutch records them.',
  })
  clutches: AssumedClutch[] = [];
}
