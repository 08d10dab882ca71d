import {
  Injectable,
  SetMetadata,
  StreamableFile,
  type CallHandler,
  type ExecutionContext,
  type NestInterceptor,
} from '@nestjs/common';
import { map, type Observable } from 'rxjs';
import { inReadersWords } from './say.ts';

const asItStands = 'as-it-stands';

/** The answers of these routes are signed or are read by programs elsewhere: they stay as they are, in English. */
export const AsItStands = (): ClassDecorator & MethodDecorator => SetMetadata(asItStands, true);

/** Puts answers into the words of whoever reads them. */
@Injectable()
export class ReadersWordsInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const staysSo = [context.getHandler(), context.getClass()].some((part) => Reflect.hasMetadata(asItStands, part));
    if (staysSo) return next.handle();
    return next
      .handle()
      .pipe(
        map((answer: unknown) =>
          answer instanceof StreamableFile || Buffer.isBuffer(answer) ? answer : inReadersWords(answer),
        ),
      );
  }
}
