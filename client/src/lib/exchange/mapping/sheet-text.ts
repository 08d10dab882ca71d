export type SheetEncoding = 'UTF-8' | 'UTF-16' | 'Windows-1252';

/** A sheet as text, and how its bytes had to be read. */
export interface SheetText {
  readonly text: string;
  readonly encoding: SheetEncoding;
}

/**
 * Reads the bytes of a sheet as text: UTF-16 where its mark or its many zero bytes say so, UTF-8 where all of it is, else
 * Windows-1252, as older spreadsheet programs save.
 */
export function readText(bytes: Uint8Array): SheetText {
  const wide = wideLabel(bytes);
  if (wide !== null) return { text: new TextDecoder(wide).decode(bytes), encoding: 'UTF-16' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'Windows-1252' };
  }
}

/** Text of letters that all have one byte, written in two: every other byte is zero. */
function wideLabel(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const zeros = [0, 0];
  const head = bytes.subarray(0, 512);
  head.forEach((byte, at) => {
    if (byte === 0) zeros[at % 2] = (zeros[at % 2] ?? 0) + 1;
  });
  const many = head.length / 4;
  if ((zeros[1] ?? 0) > many) return 'utf-16le';
  return (zeros[0] ?? 0) > many ? 'utf-16be' : null;
}
