import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCharacter, formatRegistryNumber, parseRegistryNumber } from '../../../shared/registry-number.ts';

describe('a registry number', () => {
  it('ends in the check character of ISO/IEC 7064 MOD 11-2', () => {
    // The worked example of ISO/IEC 7064 for this system, 0794 with check character 0, from memory; ORCID ids use the same
    // system: 0000-0002-1825-0097 is the example of their documentation, from memory.
    expect(checkCharacter('0794')).toBe('0');
    expect(checkCharacter('000000021825009')).toBe('7');
    expect(formatRegistryNumber(10704)).toBe('10704-4');
  });

  it('is read back however it was written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999_999_999 }), (serial) => {
        const [digits = '', check = ''] = formatRegistryNumber(serial).split('-');
        for (const text of [
          `${digits}-${check}`,
          `${digits}${check}`,
          ` ${digits} ${check} `,
          `${digits}–${check.toLowerCase()}`,
        ])
          expect(parseRegistryNumber(text)).toBe(serial);
      }),
    );
  });

  it('catches every wrong digit and every swap of two neighbours', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 999_999_999 }),
        fc.nat(),
        fc.integer({ min: 1, max: 9 }),
        (serial, at, by) => {
          const written = formatRegistryNumber(serial);
          const digits = written.slice(0, -2);
          const place = at % digits.length;
          const slip = digits.slice(0, place) + String((Number(digits[place]) + by) % 10) + digits.slice(place + 1);
          expect(parseRegistryNumber(slip + written.slice(-2))).toBeNull();
          const next = (place + 1) % digits.length;
          const swapped = [...digits];
          [swapped[place], swapped[next]] = [digits[next] ?? '', digits[place] ?? ''];
          if (swapped.join('') !== digits) expect(parseRegistryNumber(swapped.join('') + written.slice(-2))).toBeNull();
        },
      ),
    );
  });

  it('is not made of anything else', () => {
    for (const text of ['', '-', 'X', '1', '0-2', 'EA-07', '10704-5', '10704--4', '1e3-4', '9999999999999-1'])
      expect(parseRegistryNumber(text)).toBeNull();
  });
});
