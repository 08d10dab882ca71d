import { IdField, PassphraseField, TextField } from '../platform/fields.ts';

/** Who signs in. */
export class SignInRequest {
  @TextField({ max: 120, description: 'Name of the keeper, in capitals or not.' })
  name: string;

  @PassphraseField({ max: 200, description: 'The passphrase.' })
  password: string;
}

/** As whom somebody looks around in the demo club. */
export class DemoSignInRequest {
  @IdField({ description: 'Id of one of the invented keepers.' })
  keeperId: string;
}

/** A new club and its first administrator. */
export class SetupRequest {
  @TextField({ max: 40, description: 'The code that the service printed in its terminal when it started.' })
  code: string;

  @TextField({ max: 120, description: 'Name of the club, 1 to 120 characters.' })
  clubName: string;

  @TextField({ max: 120, description: 'Name of the first administrator, 1 to 120 characters.' })
  name: string;

  @PassphraseField({ min: 8, max: 200, description: 'The passphrase of the first administrator, 8 to 200 characters.' })
  password: string;
}
