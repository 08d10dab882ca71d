import { readEvents, type StreamEvent } from '../api/event-stream.ts';
import { ProblemError } from '../api/problem.ts';

/** How long a lost stream waits before it is asked for again, in ms: at first, and at most. */
const [shortest, longest] = [1000, 30_000];
/** Why a stream is left: all figures are current. */
const done = new DOMException('All figures are current.', 'AbortError');

/**
 * Follows the recomputing of figures from the first answer that says `current: false`, be it of a record or of a look after a change, until the service says that all are current again.
 * No stream is open otherwise, nor while the page is hidden: a browser opens only a few connections to one service.
 */
export class Recomputing {
  /** Figures are being recomputed now. */
  isOn = $state(false);
  /** Part that is done, 0 to 1; null while nobody has said. */
  part = $state<number | null>(null);
  /** Grows each time that all figures have become current: pages that show some read them again. */
  finished = $state(0);
  readonly #address: string;
  #wait = shortest;
  #isLooking = false;

  constructor(address = '/api/v1/lineage/progress') {
    this.#address = address;
  }

  /** Hears every answer of the service; one with old figures begins the watch, a change may have made some old. */
  readonly hear = (answer: unknown, isChange = false): void => {
    if (isChange) void this.look();
    const said = currencyOf(answer);
    if (said === false && !this.isOn) void this.#watch();
    else if (said === true && !this.isOn) this.#wait = shortest;
  };

  /** Asks once whether the stored figures are current. What cannot be told is left for the next time. */
  async look(): Promise<void> {
    if (this.isOn || this.#isLooking) return;
    this.#isLooking = true;
    try {
      const answer = await fetch(this.#address, { cache: 'no-store', headers: { Accept: 'application/json' } });
      if (answer.ok) this.hear(await answer.json());
    } catch {
      // no connection: what the reader asks for next says so
    } finally {
      this.#isLooking = false;
    }
  }

  async #watch(): Promise<void> {
    this.isOn = true;
    this.part = null;
    while (this.isOn) {
      await shown();
      const left = new AbortController();
      const hide = (): void => {
        if (document.hidden) left.abort();
      };
      document.addEventListener('visibilitychange', hide);
      try {
        await readEvents(this.#address, (event) => this.#take(event, left), { signal: left.signal });
      } catch (error) {
        // A refusal will not change by asking again; a lost connection or a free line may come back.
        if (error instanceof ProblemError && error.status >= 400 && error.status < 500 && error.status !== 429)
          this.isOn = false;
      } finally {
        document.removeEventListener('visibilitychange', hide);
      }
      // Also before pages read again: answers that stay old must not turn this into a race.
      await pause(this.#wait);
      this.#wait = Math.min(longest, this.#wait * 2);
      if (left.signal.reason === done) this.#end();
    }
  }

  #take({ name, data }: StreamEvent, left: AbortController): void {
    if (name !== 'progress') return;
    const { current, done: recomputed, total } = data as { current?: unknown; done?: unknown; total?: unknown };
    if (typeof recomputed === 'number' && typeof total === 'number' && total > 0)
      this.part = Math.min(0.99, Math.max(0, recomputed / total));
    if (current === true) left.abort(done);
  }

  #end(): void {
    this.isOn = false;
    this.finished++;
  }
}

/** What the screens share. */
export const recomputing = new Recomputing();

/** Whether an answer, or any entry of a list, says that its figures are current; undefined where it says nothing. */
export function currencyOf(answer: unknown): boolean | undefined {
  const said = saidBy(answer);
  if (said !== undefined || typeof answer !== 'object' || answer === null || !('items' in answer)) return said;
  if (!Array.isArray(answer.items)) return undefined;
  const each = (answer.items as unknown[]).map(saidBy);
  if (each.includes(false)) return false;
  return each.includes(true) ? true : undefined;
}

function saidBy(one: unknown): boolean | undefined {
  if (typeof one !== 'object' || one === null || !('current' in one)) return undefined;
  return typeof one.current === 'boolean' ? one.current : undefined;
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Resolves as soon as the page is in sight. */
async function shown(): Promise<void> {
  while (document.hidden)
    await new Promise<void>((resolve) =>
      document.addEventListener('visibilitychange', () => resolve(), { once: true }),
    );
}
