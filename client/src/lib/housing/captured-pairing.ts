import type { Ref } from '../api/types.ts';

/** Animals half housed together, as plain values. */
export interface CapturedPairing {
  name: string;
  notes: string;
  members: { animal: Ref; joined: string }[];
}
