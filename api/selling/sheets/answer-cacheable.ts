import { createHash } from 'node:crypto';
import type { Request, Response } from 'express';

/**
 * Gives an answer that is the same for everybody caching headers: a minute, and a tag of its content. Undefined with 304 where whoever asks has
 * that content already. What answers a request with a cookie may carry one, so that no cache between keeps it.
 */
export function answerCacheable<Answer extends object>(
  request: Request,
  response: Response,
  answer: Answer,
): Answer | undefined {
  const tag = `"${createHash('sha256').update(JSON.stringify(answer)).digest('base64url').slice(0, 32)}"`;
  const isShared = request.headers.cookie === undefined;
  response.set({ 'Cache-Control': `${isShared ? 'public' : 'private'}, max-age=60`, ETag: tag, Vary: 'Cookie' });
  const held = (request.headers['if-none-match'] ?? '').split(',').map((one) => one.trim().replace(/^W\//u, ''));
  if (!held.includes(tag)) return answer;
  response.status(304);
  return undefined;
}
