import { noAnswer, problemFrom } from './problem.ts';

/** Reads a file from the service. Throws `ProblemError`, so that a refusal is told on the page and never saved as if it were the file. */
export async function readFile(path: string): Promise<Blob> {
  let answer: Response;
  try {
    answer = await fetch(`/api/v1${path}`, { cache: 'no-store' });
  } catch {
    throw noAnswer();
  }
  if (!answer.ok) throw problemFrom(answer.status, await answer.text());
  return answer.blob();
}
