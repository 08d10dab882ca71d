import { TextField } from '../platform/fields.ts';

/** Why a record is withdrawn. */
export class WithdrawalRequest {
  @TextField({ max: 500, description: 'Why it is withdrawn, 1 to 500 characters; it stays with the record.' })
  reason: string;
}
