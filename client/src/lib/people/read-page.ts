import { error } from '@sveltejs/kit';
import { ProblemError } from '../api/problem.ts';
import { session } from './session.svelte.ts';

/** Waits until it is known who asks. Whoever may see nothing is sent to sign in, and nothing is asked in vain. */
export async function beforeReading(): Promise<void> {
  await session.start();
  if (session.isClosed) error(401, 'Sign in first.');
}

/**
 * Reads what a page shows, once it is known who asks. A refusal becomes the error page with the service's status (503 where no service
 * answered).
 */
export async function readPage<T>(read: () => Promise<T>): Promise<T> {
  await beforeReading();
  try {
    return await read();
  } catch (problem) {
    if (!(problem instanceof ProblemError)) throw problem;
    error(problem.status === 0 ? 503 : problem.status, problem.detail);
  }
}
