import type { TestApi } from './api.ts';

/** An event of a stream, its data read as JSON. */
export interface StreamEvent {
  readonly event: string;
  readonly data: unknown;
}

/** Opens a stream of events in the name of whoever holds the token; with a body by POST. */
export function openStream(
  api: TestApi,
  path: string,
  token: string,
  signal?: AbortSignal,
  body?: object,
): Promise<Response> {
  return fetch(`${api.url}${path}`, {
    headers: {
      Accept: 'text/event-stream',
      Authorization: `Bearer ${token}`,
      ...(body ? { 'Content-Type': 'application/json' } : {}),
    },
    ...(body ? { method: 'POST', body: JSON.stringify(body) } : {}),
    ...(signal ? { signal } : {}),
  });
}

/** The events of a stream as they arrive, until it ends; comments are left out. */
export async function* eventsOf(answer: Response): AsyncGenerator<StreamEvent> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const chunk of answer.body as unknown as AsyncIterable<Uint8Array>) {
    text += decoder.decode(chunk, { stream: true });
    const parts = text.split('\n\n');
    text = parts.pop() ?? '';
    for (const part of parts) {
      const [, event = '', data = ''] = /^event: (\S+)\ndata: (.*)$/.exec(part) ?? [];
      if (event !== '') yield { event, data: JSON.parse(data) as unknown };
    }
  }
}

/** All events of a stream. */
export async function allEventsOf(answer: Response): Promise<StreamEvent[]> {
  const events: StreamEvent[] = [];
  for await (const event of eventsOf(answer)) events.push(event);
  return events;
}
