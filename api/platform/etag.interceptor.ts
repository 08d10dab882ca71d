import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import type { Response } from 'express';
import { tap, type Observable } from 'rxjs';
import { etagOf } from './etag.ts';

/** Gives every answer that is one record the ETag of its version. */
@Injectable()
export class EtagInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const response = context.switchToHttp().getResponse<Response>();
    return next.handle().pipe(
      tap((answer: unknown) => {
        if (typeof answer === 'object' && answer !== null && 'version' in answer && typeof answer.version === 'number')
          response.setHeader('ETag', etagOf(answer.version));
      }),
    );
  }
}
