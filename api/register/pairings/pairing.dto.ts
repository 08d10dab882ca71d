import { OmitType, PartialType } from '@nestjs/swagger';
import { DateField, IdField, ListField, TextField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

/** An animal that joins a pairing. */
export class NewMemberRequest {
  @TextField({ max: 40, description: 'The animal: its id or its registry number.' })
  individualId: string;

  @DateField({ optional: true, nullable: true, description: 'When it joined.' })
  joined?: string | null;

  @DateField({ optional: true, nullable: true, description: 'When it left; left out while it lives there.' })
  left?: string | null;
}

/** Changes of a stay. */
export class MemberChangeRequest extends PartialType(OmitType(NewMemberRequest, ['individualId']), {
  skipNullProperties: false,
}) {}

/** A new pairing. */
export class NewPairingRequest {
  @TextField({ max: 120, description: 'Its name, such as the tank.' })
  name: string;

  @TextField({ max: 10_000, optional: true, nullable: true, description: 'Notes.' })
  notes?: string | null;

  @ListField(() => NewMemberRequest, { max: 100, optional: true, description: 'The animals.' })
  members?: NewMemberRequest[];
}

/** Changes of a pairing; its members have routes of their own. */
export class PairingChangeRequest extends PartialType(OmitType(NewPairingRequest, ['members']), {
  skipNullProperties: false,
}) {}

/** Which pairings to list. */
export class PairingQuery extends PageQuery {
  @IdField({ optional: true, description: 'Pairings of this keeper.' })
  keeperId?: string;

  @IdField({ optional: true, description: 'Pairings in which this animal lives or lived.' })
  individualId?: string;

  @TextField({ max: 100, optional: true, description: 'Part of the name.' })
  q?: string;
}
