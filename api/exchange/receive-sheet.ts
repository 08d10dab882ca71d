import { createHash } from 'node:crypto';
import type { Readable } from 'node:stream';
import { Inject, Injectable, type NestMiddleware } from '@nestjs/common';
import type { NextFunction, Request, Response } from 'express';
import multer from 'multer';
import { Admission } from '../people/admission.ts';
import { sending } from '../platform/allowances.ts';
import { Gate } from '../platform/gate.ts';
import { RateLimits } from '../platform/rate-limits.ts';
import { InvalidProblem, Problem } from '../platform/problem.ts';
import type { Sheet } from './sheet-reader.ts';
import { readSheet } from './sheet-reader.ts';
import { say } from '../platform/say.ts';

/** How many sheets one copy of the service reads and works on at a time; a large one needs some hundred megabytes. */
const sheetsAtOnce = 4;

/** Largest register sheet in bytes. */
const largestSheet = 100_000_000;

/** A sheet as it was sent. */
export interface ReceivedSheet extends Sheet {
  /** SHA-256 of its bytes, hexadecimal. */
  readonly sha256: string;
}

/** A request whose body was read as a register sheet. */
export interface SheetRequest extends Request {
  sheet?: ReceivedSheet;
}

/**
 * Reads the body of `POST /imports` while it arrives, so that no copy of the file is held: the sheet's table is all that stays.
 * It runs before everything else that looks at a request, so it asks itself whether the sender may send sheets, and how many. It
 * leaves a fingerprint of the bytes as its body, by which a repeated request is known.
 */
@Injectable()
export class ReceiveSheet implements NestMiddleware<SheetRequest, Response> {
  readonly #gate = new Gate(sheetsAtOnce);

  constructor(
    @Inject(Admission) private readonly admission: Admission,
    @Inject(RateLimits) private readonly limits: RateLimits,
  ) {}

  use(request: SheetRequest, response: Response, next: NextFunction): void {
    this.receive(request, response).then(
      (sheet) => {
        request.sheet = sheet;
        request.body = `sha256 ${sheet.sha256}`;
        next();
      },
      (error: unknown) => {
        if (request.destroyed && !request.complete) return; // whoever sent it is gone; nothing was begun
        request.resume(); // let the rest run off, so that the answer is heard
        response.setHeader('Connection', 'close');
        next(asProblem(error));
      },
    );
  }

  private async receive(request: SheetRequest, response: Response): Promise<ReceivedSheet> {
    await this.admit(request);
    const leave = this.#gate.enter();
    response.once('close', leave);
    const encoding = request.headers['content-encoding'] ?? 'identity';
    if (encoding !== 'identity') throw wrongType(say`The body is packed (${encoding}); send it as it is.`);
    if (Number(request.headers['content-length'] ?? 0) > largestSheet + 10_000) throw tooLarge();
    const type = request.is(['text/csv', 'multipart/form-data']);
    if (type === 'text/csv') {
      refuseOtherCharsets(request.headers['content-type'] ?? '');
      return receive(request);
    }
    if (type === 'multipart/form-data') return receiveFile(request, response);
    throw wrongType(say`Send a register sheet as text/csv, or as the field "file" of multipart/form-data.`);
  }

  /** Nothing of a sheet is read for somebody who may not send it. */
  private async admit(request: SheetRequest): Promise<void> {
    const who = await this.admission.recognise(request);
    await this.admission.require(who, ['add', 'import']);
    if (who) await this.limits.spend(sending, who.id);
  }
}

function refuseOtherCharsets(contentType: string): void {
  const charset = /;\s*charset="?([^";\s]+)/i.exec(contentType)?.[1]?.toLowerCase() ?? 'utf-8';
  if (!['utf-8', 'utf8', 'us-ascii'].includes(charset))
    throw wrongType(say`A register sheet is read as UTF-8, not as ${charset.slice(0, 40)}.`);
}

async function receive(stream: Readable): Promise<ReceivedSheet> {
  const hash = createHash('sha256');
  const sheet = await readSheet(measured(stream, (chunk) => void hash.update(chunk)));
  return { ...sheet, sha256: hash.digest('hex') };
}

async function* measured(stream: Readable, see: (chunk: Buffer) => void): AsyncGenerator<Buffer> {
  let length = 0;
  // A stream that is left early would be destroyed, and with it the way for the answer.
  for await (const chunk of stream.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length > largestSheet) throw tooLarge();
    see(chunk);
    yield chunk;
  }
}

/** Reads the file of a form while it arrives. */
function receiveFile(request: SheetRequest, response: Response): Promise<ReceivedSheet> {
  let received: ReceivedSheet | undefined;
  const storage: multer.StorageEngine = {
    _handleFile: (_request, file, done) => {
      receive(file.stream).then(
        (result) => {
          received = result;
          done(null, {});
        },
        (error: unknown) => done(error),
      );
    },
    _removeFile: (_request, _file, done) => done(null),
  };
  const form = multer({
    storage,
    limits: { fileSize: largestSheet, files: 1, fields: 10, fieldSize: 10_000, parts: 12 },
  });
  return new Promise((resolve, reject) => {
    form.single('file')(request, response, (error: unknown) => {
      if (error) reject(error instanceof Error ? error : new Error('the form could not be read'));
      else if (received) resolve(received);
      else reject(noFile());
    });
  });
}

function asProblem(error: unknown): unknown {
  if (error instanceof Problem) return error;
  if (error instanceof multer.MulterError) {
    if (error.code === 'LIMIT_FILE_SIZE') return tooLarge();
    if (error.code.startsWith('LIMIT_')) return noFile();
  }
  // What is left comes from the reader of forms: a body that ends too early or has no boundary.
  const isOfForm = error instanceof Error && /multipart|boundary|form|header/i.test(error.message);
  return isOfForm
    ? new Problem('malformed', 400, say`Not understood`, say`The form is damaged or ends too early. Send it again.`)
    : error;
}

const tooLarge = (): Problem =>
  new Problem(
    'too-large',
    413,
    say`Too large`,
    say`A register sheet may have ${largestSheet / 1_000_000} MB at most. Divide it into several files.`,
  );

const wrongType = (detail: string): Problem =>
  new Problem('unsupported-media-type', 415, say`Not a type that is read here`, detail);

const noFile = (): Problem => {
  const detail = say`The form must have one file, in the field "file".`;
  return new InvalidProblem(detail, [{ pointer: '/file', detail }]);
};
