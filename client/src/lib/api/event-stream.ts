import { language } from '../words/language.ts';
import { noAnswer, problemFrom } from './problem.ts';

/** One event of a stream: its name and its data, which the service writes as JSON. */
export interface StreamEvent {
  name: string;
  data: unknown;
}

/**
 * Reads a stream of server-sent events to its end. Unlike the browser's own reader it tells a refusal from a lost connection.
 *
 * @param address where the stream is, with the service's base
 * @throws ProblemError if the service refuses, does not answer or breaks off; whatever `onEvent` throws
 */
export async function readEvents(
  address: string,
  onEvent: (event: StreamEvent) => void,
  request: RequestInit = {},
): Promise<void> {
  const headers = new Headers(request.headers);
  headers.set('Accept', 'text/event-stream');
  headers.set('Accept-Language', language);
  let response: Response;
  try {
    response = await fetch(address, { cache: 'no-store', ...request, headers });
  } catch (error) {
    throw lost(error);
  }
  if (!response.ok || !response.body) throw problemFrom(response.status, await response.text());
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  const take = eventReader(onEvent);
  try {
    for (;;) {
      const { value, done } = await reader.read().catch((error: unknown) => {
        throw lost(error);
      });
      if (done) return;
      take(value);
    }
  } finally {
    // whatever ended the reading, the connection is given back
    await reader.cancel().catch(() => undefined);
  }
}

/** Takes the text of a stream in pieces, wherever they are cut, and gives each event once its blank line has come. */
export function eventReader(onEvent: (event: StreamEvent) => void): (piece: string) => void {
  let rest = '';
  let name = '';
  let data: string[] = [];
  const takeLine = (line: string): void => {
    if (line === '') {
      if (data.length > 0) onEvent({ name: name === '' ? 'message' : name, data: JSON.parse(data.join('\n')) });
      name = '';
      data = [];
      return;
    }
    // a line that begins with a colon is a comment that keeps the connection open
    const colon = line.indexOf(':');
    const field = colon < 0 ? line : line.slice(0, colon);
    const value = colon < 0 ? '' : line.slice(colon + 1).replace(/^ /, '');
    if (field === 'event') name = value;
    else if (field === 'data') data.push(value);
  };
  return (piece) => {
    rest += piece;
    // a carriage return at the end may be half of a line's end
    const whole = rest.endsWith('\r') ? rest.slice(0, -1) : rest;
    const lines = whole.split(/\r\n|\r|\n/);
    rest = (lines.pop() ?? '') + rest.slice(whole.length);
    lines.forEach(takeLine);
  };
}

function lost(error: unknown): unknown {
  return error instanceof DOMException && error.name === 'AbortError' ? error : noAnswer();
}
