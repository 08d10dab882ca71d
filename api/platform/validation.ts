import { ValidationPipe, type ValidationError } from '@nestjs/common';
import { InvalidProblem, type ProblemError } from './problem.ts';
import { say } from './say.ts';

/** Checks what comes in against the DTOs; unknown fields are refused and named. */
export function validationPipe(): ValidationPipe {
  return new ValidationPipe({
    whitelist: true,
    forbidNonWhitelisted: true,
    transform: true,
    exceptionFactory: (errors) =>
      new InvalidProblem(
        say`Some fields cannot be taken; each is named below.`,
        errors.flatMap((error) => flatten(error, '')),
      ),
  });
}

function flatten(error: ValidationError, parent: string): ProblemError[] {
  const pointer = `${parent}/${error.property.replaceAll('~', '~0').replaceAll('/', '~1')}`;
  const own = Object.entries(error.constraints ?? {}).map(([rule, message]) => ({
    pointer,
    detail: rule === 'whitelistValidation' ? say`There is no such field here.` : sentence(error.property, message),
  }));
  return [...own.slice(0, 1), ...(error.children ?? []).flatMap((child) => flatten(child, pointer))];
}

/** Our messages are predicates ("must be a text"); the library's own already begin with the field's name. */
function sentence(property: string, message: string): string {
  return message.startsWith(property) ? `${message}.` : say`This ${message}.`;
}
