import { FlagAcknowledgement } from './acknowledgements/flag-acknowledgement.entity.ts';
import { Claim } from './claims/claim.entity.ts';
import { Evidence } from './evidence/evidence.entity.ts';
import { StoredFile } from './files/stored-file.entity.ts';
import { Photograph } from './photographs/photograph.entity.ts';

/** Every table of the provenance room. */
export const provenanceEntities = [Claim, Evidence, StoredFile, Photograph, FlagAcknowledgement];
