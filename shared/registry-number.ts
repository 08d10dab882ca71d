/**
 * Registry numbers: digits, a dash and a check character of ISO/IEC 7064 MOD 11-2 (a digit or X), as in `10704-4`.
 * The check character catches every single wrong digit and every swap of two digits.
 */

/** Check character of a string of decimal digits (ISO/IEC 7064, pure system MOD 11-2). */
export function checkCharacter(digits: string): string {
  let remainder = 0;
  for (const digit of digits) remainder = ((remainder + Number(digit)) * 2) % 11;
  const check = (12 - remainder) % 11;
  return check === 10 ? 'X' : String(check);
}

/** Writes a serial (a positive whole number) as a registry number: `10704` becomes `10704-4`. */
export function formatRegistryNumber(serial: number | string): string {
  const digits = String(serial);
  return `${digits}-${checkCharacter(digits)}`;
}

/**
 * Reads a registry number as people write it: the dash may be missing or be a space, x may be small.
 * Gives the serial, or null where the text is no registry number or its check character is wrong.
 */
export function parseRegistryNumber(text: string): number | null {
  const match = /^\s*([1-9]\d{0,11})\s*[-–]?\s*([\dXx])\s*$/.exec(text);
  const digits = match?.[1];
  const check = match?.[2];
  if (digits === undefined || check === undefined) return null;
  return checkCharacter(digits) === check.toUpperCase() ? Number(digits) : null;
}
