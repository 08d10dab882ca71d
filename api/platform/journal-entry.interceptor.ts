import { Injectable, type CallHandler, type ExecutionContext, type NestInterceptor } from '@nestjs/common';
import type { Response } from 'express';
import { tap, type Observable } from 'rxjs';
import { currentRequest } from './acting.ts';

/** Gives every answer to a write the id of its entry in the journal, by which it can be undone. */
@Injectable()
export class JournalEntryInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const response = context.switchToHttp().getResponse<Response>();
    const asked = currentRequest();
    return next.handle().pipe(
      tap(() => {
        if (asked?.journalEntryId !== undefined) response.setHeader('Journal-Entry', asked.journalEntryId);
      }),
    );
  }
}
