import { TextField } from '../../platform/fields.ts';

/** Why a key is used no more. */
export class KeyRetirementRequest {
  @TextField({
    max: 500,
    description: 'Why it is used no more. Administrators read it in the journal.',
    example: 'The computer that held it was sold.',
  })
  reason: string;
}
