import { error } from '@sveltejs/kit';
import { ProblemError } from '../api/problem.ts';
import { session } from './session.svelte.ts';

/**
 * Reads what a page shows, once it is known who asks. A refusal becomes the error page with the service's status (503 where no service
 * answered).
 */
export async function readPage<T>(read: () => Promise<T>): Promise<T> {
  await session.start();
  try {
    return await read();
  } catch (problem) {
    if (!(problem instanceof ProblemError)) throw problem;
    error(problem.status === 0 ? 503 : problem.status, problem.detail);
  }
}
