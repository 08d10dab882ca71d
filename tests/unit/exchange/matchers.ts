import { expect } from 'vitest';

/* Vitest types its matchers as any; these may stand in an object without making it unsafe. */

export const containing = (text: string): unknown => expect.stringContaining(text);
export const matching = (pattern: RegExp): unknown => expect.stringMatching(pattern);
export const some = (kind: NumberConstructor | StringConstructor): unknown => expect.any(kind);
