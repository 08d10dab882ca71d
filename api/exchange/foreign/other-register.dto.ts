import { FileTextField, TextField } from '../../platform/fields.ts';

const keys =
  'The keys that it publishes (a JWK set, RFC 7517), as the text of the file from its well-known address. Compare their names with somebody there by another way than the file came.';

/** A register of another club whose sheets are to be believed. */
export class NewOtherRegisterRequest {
  @TextField({ max: 120, description: 'What it is called here.' })
  name: string;

  @TextField({
    max: 300,
    optional: true,
    nullable: true,
    description: 'Where people find it. The service never asks there.',
  })
  address?: string | null;

  @FileTextField({ max: 200_000, description: keys })
  keys: string;
}

/** Keys that a register took up since. */
export class MoreKeysRequest {
  @FileTextField({
    max: 200_000,
    description: `${keys} Those that are known stay; when one was used is taken from here.`,
  })
  keys: string;
}
