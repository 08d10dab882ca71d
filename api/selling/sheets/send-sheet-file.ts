import { StreamableFile } from '@nestjs/common';
import type { Response } from 'express';

/** The media type of a flattened JWS (RFC 7515, 9.2.1). */
export const sheetMediaType = 'application/jose+json';

/** Answers with the very bytes of a sheet, as a download. */
export function sendSheetFile(
  response: Response,
  { number, bytes }: { readonly number: string; readonly bytes: Buffer },
): StreamableFile {
  response.set({ 'X-Content-Type-Options': 'nosniff' });
  return new StreamableFile(bytes, {
    type: sheetMediaType,
    disposition: `attachment; filename="${number}.json"`,
    length: bytes.length,
  });
}

/** Answers with a sheet on paper, as a download. */
export function sendSheetPaper({ number, bytes }: { readonly number: string; readonly bytes: Buffer }): StreamableFile {
  return new StreamableFile(bytes, {
    type: 'application/pdf',
    disposition: `attachment; filename="${number}.pdf"`,
    length: bytes.length,
  });
}
