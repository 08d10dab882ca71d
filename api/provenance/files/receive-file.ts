import { Inject, Injectable, type NestMiddleware } from '@nestjs/common';
import type { NextFunction, Response } from 'express';
import multer from 'multer';
import { Admission, type Need } from '../../people/admission.ts';
import { attaching } from '../../platform/allowances.ts';
import { Gate } from '../../platform/gate.ts';
import { InvalidProblem, Problem } from '../../platform/problem.ts';
import { RateLimits } from '../../platform/rate-limits.ts';
import { settingsKey, type Settings } from '../../platform/settings.ts';
import { tooLarge, wrongKind } from './file-fault.ts';
import type { FileRequest, ReceivedFile } from './received-file.ts';
import { say } from '../../platform/say.ts';

/** How many files one copy of the service takes in at a time; each is held in memory. */
const filesAtOnce = 8;

/**
 * Reads a file that is sent, as the field "file" of a form or as the whole body, and holds it in memory. Its name and the type that the
 * sender gives it are not looked at. It runs before everything else that looks at a request, so it asks itself whether the sender may
 * send one, and how many.
 */
@Injectable()
export class ReceiveFile implements NestMiddleware<FileRequest, Response> {
  readonly #gate = new Gate(filesAtOnce);
  readonly #most: number;

  constructor(
    @Inject(Admission) private readonly admission: Admission,
    @Inject(RateLimits) private readonly limits: RateLimits,
    @Inject(settingsKey) settings: Settings,
  ) {
    this.#most = Math.max(settings.documentBytes, settings.pictureBytes);
  }

  use(request: FileRequest, response: Response, next: NextFunction): void {
    this.receive(request, response).then(
      (file) => {
        request.receivedFile = file;
        next();
      },
      (error: unknown) => {
        if (request.destroyed && !request.complete) return; // whoever sent it is gone; nothing was begun
        request.resume(); // let the rest run off, so that the answer is heard
        response.setHeader('Connection', 'close');
        next(asProblem(error, this.#most));
      },
    );
  }

  private async receive(request: FileRequest, response: Response): Promise<ReceivedFile> {
    await this.admit(request);
    const leave = this.#gate.enter();
    response.once('close', leave);
    if ((request.headers['content-encoding'] ?? 'identity') !== 'identity')
      throw wrongKind(say`The body is packed; send the file as it is.`, '');
    const isForm = Boolean(request.is('multipart/form-data'));
    const pointer = isForm ? '/file' : '';
    if (Number(request.headers['content-length'] ?? 0) > this.#most + 20_000) throw largerThan(this.#most, pointer);
    if (isForm) await readForm(request, response, this.#most);
    else if (request.method === 'POST' || request.is('json'))
      throw wrongKind('Send a form (multipart/form-data) with the file as "file".', '');
    const bytes = isForm ? request.file?.buffer : await readBody(request, this.#most);
    if (bytes === undefined) throw noFile();
    if (bytes.length === 0) throw invalid(say`This file is empty. Choose it again.`, pointer);
    // a form's fields are checked as any body is; of a bare file nothing is left to check
    request.body = isForm ? { ...(request.body as object) } : {};
    return { bytes, pointer };
  }

  /** Nothing is read for somebody who may not send it. */
  private async admit(request: FileRequest): Promise<void> {
    const need: Need = request.method === 'PUT' ? ['change', 'evidence'] : ['add', 'photograph'];
    const who = await this.admission.recognise(request);
    await this.admission.require(who, need);
    if (who) await this.limits.spend(attaching, who.id);
  }
}

async function readBody(request: FileRequest, most: number): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let length = 0;
  // A stream that is left early would be destroyed, and with it the way for the answer.
  for await (const chunk of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length > most) throw largerThan(most, '');
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

function readForm(request: FileRequest, response: Response, most: number): Promise<void> {
  const form = multer({
    storage: multer.memoryStorage(),
    limits: { fileSize: most, files: 1, fields: 20, fieldSize: 50_000, fieldNameSize: 100, parts: 22 },
  });
  return new Promise((resolve, reject) => {
    form.single('file')(request, response, (error: unknown) => {
      if (error) reject(error instanceof Error ? error : new Error('the form could not be read'));
      else resolve();
    });
  });
}

function asProblem(error: unknown, most: number): unknown {
  if (error instanceof Problem) return error;
  if (error instanceof multer.MulterError) {
    if (error.code === 'LIMIT_FILE_SIZE') return largerThan(most, '/file');
    if (error.code.startsWith('LIMIT_F') && error.field !== undefined && error.code !== 'LIMIT_FILE_COUNT')
      return invalid(say`A field of the form has a name or a value that is too long.`, `/${error.field.slice(0, 100)}`);
    return noFile();
  }
  // What is left comes from the reader of forms: a body that ends too early or has no boundary.
  const isOfForm = error instanceof Error && /multipart|boundary|form|header/i.test(error.message);
  return isOfForm
    ? new Problem('malformed', 400, say`Not understood`, say`The form is damaged or ends too early. Send it again.`)
    : error;
}

const largerThan = (most: number, pointer: string): Problem =>
  tooLarge(say`A file`, most, say`Save it smaller, then send that.`, pointer);

const noFile = (): Problem => invalid(say`The form must have one file, in the field "file".`, '/file');

const invalid = (detail: string, pointer: string): Problem => new InvalidProblem(detail, [{ pointer, detail }]);
