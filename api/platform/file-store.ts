import { createHash } from 'node:crypto';
import type { Readable } from 'node:stream';
import { Problem } from './problem.ts';
import { say } from './say.ts';

/**
 * Keeps bytes under the SHA-256 of what they are, so that nothing is ever overwritten and the same file lies there once. What is no
 * longer named by a record, because a transaction failed, does no harm.
 */
export abstract class FileStore {
  /** Keeps these bytes; there is nothing to do where they are there already. @throws StoreProblem */
  abstract put(hash: string, bytes: Uint8Array): Promise<void>;

  /** The bytes under a hash, as they are read. @throws StoreProblem, also where there are none */
  abstract get(hash: string): Promise<Readable>;

  abstract has(hash: string): Promise<boolean>;
}

/** The name under which bytes are kept: their SHA-256, hexadecimal. */
export function contentHash(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** 503: the place where files are kept does not answer, or lacks one that the register names. */
export class StoreProblem extends Problem {
  override readonly headers = { 'Retry-After': '30' };

  /** @param cause what is noted in the log; no setting is ever part of it */
  constructor(detail: string, cause?: unknown) {
    super('unavailable', 503, 'Not now', detail);
    if (cause instanceof Error) this.stack = `${this.stack}\ncaused by ${cause.name}: ${codeOf(cause)}`;
  }
}

/** Where a file was put once and is gone. */
export function missingFile(): StoreProblem {
  return new StoreProblem(
    say`The register names this file, but it is not where files are kept. Tell an administrator.`,
  );
}

function codeOf(error: Error): string {
  return 'code' in error && typeof error.code === 'string' ? error.code : 'no code';
}
