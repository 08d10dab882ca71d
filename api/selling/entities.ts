import { ProvenanceSheet, ProvenanceSheetAnimal } from './sheets/provenance-sheet.entity.ts';
import { SigningKeyRecord } from './signing-keys/signing-key.entity.ts';
import { TransferAnimal } from './transfers/transfer-animal.entity.ts';
import { Transfer } from './transfers/transfer.entity.ts';

/** Every table of the room of selling. */
export const sellingEntities = [SigningKeyRecord, ProvenanceSheet, ProvenanceSheetAnimal, Transfer, TransferAnimal];
