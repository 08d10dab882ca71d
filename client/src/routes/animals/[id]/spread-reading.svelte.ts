import { readEvents } from '$lib/api/event-stream.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { InbreedingSpread } from '$lib/api/types.ts';

/** Assignments that are drawn at first, and those that can be asked for. */
export const sampleSizes = [2000, 20_000, 100_000] as const;

/** The spread of one animal's F as it is drawn by the service; a new question gives up the one before. */
export class SpreadReading {
  /** The newest answer; it stays while the next one is drawn, so that nothing jumps. */
  spread = $state.raw<InbreedingSpread | null>(null);
  /** Part that is done, 0 to 1; null while nothing is drawn. */
  part = $state<number | null>(null);
  problem = $state.raw<ProblemError | null>(null);
  isStopped = $state(false);
  #asked: AbortController | null = null;

  /** Asks for a spread and shows how far it has come. */
  async read(path: string, samples: number, seed: number): Promise<void> {
    this.#asked?.abort();
    const asked = new AbortController();
    this.#asked = asked;
    this.part = 0;
    this.problem = null;
    this.isStopped = false;
    try {
      await readEvents(
        `/api/v1${path}/lineage/spread?samples=${samples}&seed=${seed}`,
        ({ name, data }) => this.#asked === asked && this.#take(name, data),
        { signal: asked.signal },
      );
    } catch (error) {
      if (this.#asked !== asked || (error instanceof DOMException && error.name === 'AbortError')) return;
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error;
    } finally {
      if (this.#asked === asked) this.part = null;
    }
  }

  #take(name: string, data: unknown): void {
    if (name === 'result') this.spread = data as InbreedingSpread;
    else if (name === 'problem') throw new ProblemError(...problemOf(data));
    else if (name === 'progress') {
      const { done, total } = data as { done?: unknown; total?: unknown };
      if (typeof done === 'number' && typeof total === 'number' && total > 0)
        this.part = Math.min(1, Math.max(0, done / total));
    }
  }

  /** Gives up what is being drawn; the service ends it. */
  stop(): void {
    if (this.part === null) return;
    this.close();
    this.isStopped = true;
  }

  /** Leaves the question; called when the page is left. */
  close(): void {
    this.#asked?.abort();
    this.#asked = null;
    this.part = null;
  }
}

/** A seed that was not there before: any of 2³². */
export function freshSeed(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
}

function problemOf(data: unknown): [number, Record<string, unknown>] {
  const document = { ...(data as Record<string, unknown>) };
  return [typeof document['status'] === 'number' ? document['status'] : 500, document];
}
