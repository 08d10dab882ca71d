import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { idOfShort, shortId } from '../../../shared/short-id.ts';

describe('the short form of an id', () => {
  it('is the base64url of its bytes, 22 characters', () => {
    const id = '01a21706-1803-73e0-bf57-6b389a42f731';
    expect(shortId(id)).toBe(Buffer.from(id.replaceAll('-', ''), 'hex').toString('base64url'));
  });

  it('leads back to every id', () => {
    fc.assert(fc.property(fc.uuid(), (id) => idOfShort(shortId(id)) === id));
  });

  it.each(['', 'AaIXBhgDc-C_V2s4mkL3M', 'AaIXBhgDc-C_V2s4mkL3MQQ', 'AaIXBhgDc-C_V2s4mkL3MB', 'AaIXBhgDc+C/V2s4mkL3MQ'])(
    'is not “%s”',
    (text) => expect(idOfShort(text)).toBeNull(),
  );
});
