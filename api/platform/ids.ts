import { randomBytes } from 'node:crypto';

/**
 * A new record id: a UUID version 7 (RFC 9562), whose first 48 bits are the time in milliseconds, so that rows written
 * together stand together in the index.
 */
export function newId(): string {
  const bytes = randomBytes(16);
  bytes.writeUIntBE(Date.now(), 0, 6);
  bytes.writeUInt8(((bytes[6] ?? 0) & 0x0f) | 0x70, 6);
  bytes.writeUInt8(((bytes[8] ?? 0) & 0x3f) | 0x80, 8);
  const hex = bytes.toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

/** Whether a text has the form of a record id. */
export function isId(text: string): boolean {
  return uuid.test(text);
}
