import type { NestMiddleware } from '@nestjs/common';
import express, { type NextFunction, type Request, type Response } from 'express';
import { SHEET_BYTES_MOST } from '../../../shared/sheet/canonical-json.ts';
import { InvalidProblem, Problem } from '../../platform/problem.ts';
import { sheetMediaType } from './send-sheet-file.ts';
import { say } from '../../platform/say.ts';

const read = express.raw({
  type: [sheetMediaType, 'application/octet-stream'],
  limit: SHEET_BYTES_MOST,
  inflate: false,
});

interface SheetFileRequest extends Request {
  sheetFile?: Uint8Array;
}

/** Reads a sheet file byte for byte: what reads JSON would give back another file. */
export class ReceiveSheetFile implements NestMiddleware {
  use(request: SheetFileRequest, response: Response, next: NextFunction): void {
    if (!request.is([sheetMediaType, 'application/octet-stream'])) {
      next(
        new Problem(
          'unsupported-media-type',
          415,
          say`Not a type that is read here`,
          say`Send the bytes of the file as ${sheetMediaType} or application/octet-stream.`,
        ),
      );
      return;
    }
    read(request, response, (error?: unknown) => {
      const body: unknown = request.body;
      if (Buffer.isBuffer(body)) {
        request.sheetFile = new Uint8Array(body);
        // whatever looks at bodies need not walk through a million bytes
        request.body = {};
      }
      next(error);
    });
  }
}

/** The file that a request brought; 422 where it is empty. */
export function receivedSheetFile(request: SheetFileRequest): Uint8Array {
  if (request.sheetFile && request.sheetFile.length > 0) return request.sheetFile;
  const detail = say`Send the file as the body of the request.`;
  throw new InvalidProblem(detail, [{ pointer: '', detail }]);
}
