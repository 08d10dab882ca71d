import { expect } from 'vitest';

/** The body of an answer as the view that it should be; supertest itself knows it as anything. */
export function bodyOf<View>(answer: { readonly body: unknown }): View {
  return answer.body as View;
}

/** A problem document as the tests read it. */
export interface ProblemBody {
  readonly type: string;
  readonly status: number;
  readonly detail: string;
  readonly errors: readonly { readonly pointer: string; readonly detail: string }[];
}

/** Stands for any text in what is expected. */
export const anyText = expect.any(String) as string;

/** Stands for any text with a part in it. */
export function textWith(part: string): string {
  return expect.stringContaining(part) as string;
}

/** Stands for any text of a form. */
export function textLike(pattern: RegExp): string {
  return expect.stringMatching(pattern) as string;
}

/** Stands for any object that has these fields. */
export function having<Fields extends object>(fields: Fields): Fields {
  return expect.objectContaining<object>(fields) as Fields;
}
