import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import {
  Injectable,
  StreamableFile,
  type CallHandler,
  type ExecutionContext,
  type NestInterceptor,
} from '@nestjs/common';
import type { Request, Response } from 'express';
import { inReadersWords } from './say.ts';
import { mergeMap, type Observable } from 'rxjs';

const pack = promisify(gzip);

/** Below so many characters an answer fits into a packet or two anyway. */
const WORTH_PACKING = 4096;

/**
 * Compresses a long answer for a reader who takes gzip. Only for answers that repeat nothing of the request: otherwise their length would
 * tell a page of another site what stands beside its own words.
 */
@Injectable()
export class PackedAnswer implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const request = context.switchToHttp().getRequest<Request>();
    const response = context.switchToHttp().getResponse<Response>();
    return next.handle().pipe(
      mergeMap(async (answer: unknown) => {
        response.vary('Accept-Encoding');
        // an answer that is kept, to be given again under its key, is kept as it is
        const isKept = request.headers['idempotency-key'] !== undefined;
        if (isKept || request.acceptsEncodings('gzip') === false) return answer;
        const text = JSON.stringify(inReadersWords(answer));
        if (text.length < WORTH_PACKING) return answer;
        const packed = await pack(text, { level: 5 });
        response.setHeader('Content-Encoding', 'gzip');
        return new StreamableFile(packed, { type: 'application/json; charset=utf-8', length: packed.length });
      }),
    );
  }
}
