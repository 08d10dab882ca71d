import { ProblemError } from '$lib/api/problem.ts';
import { namesOf, outcomeOf } from '$lib/offline/outcome.ts';
import { added, type NewEntry, type Outcome, type Queue } from '$lib/offline/queue.ts';
import { recordToCome, type QueueEntry } from '$lib/offline/queue-entry.ts';
import { sendQueue } from '$lib/offline/send-queue.ts';

/** What happens to one request: it passes; the network is cut before or after it was done; the tab is killed at one of four moments. */
export type Fate = 'passes' | 'cut before' | 'cut after' | 'killed before' | 'killed after' | 'fault' | 'busy';

const keeperId = 'orla';
const day = 86_400_000;

class Killed extends Error {}

interface Clutch {
  id: string;
  version: number;
  /** What was written of it, in order. */
  said: string[];
  [field: string]: unknown;
}

/** A register, a device and the way between them. The register is as strict as the service: versions, and keys that it forgets after a week. */
export class CutWorld {
  queue: Queue = [];
  readonly clutches = new Map<string, Clutch>();
  /** Every thing that was written in the register, by the mark that a test gave it. */
  readonly written: string[] = [];
  private readonly answers = new Map<string, { at: number; answer: Record<string, unknown> }>();
  private clock = Date.parse('2026-11-26T08:00:00Z');
  private count = 0;
  /** Bodies that the register will not take. */
  readonly refused = new Set<string>();

  constructor() {
    this.clutches.set('c0', { id: 'c0', version: 1, said: [] });
  }

  readonly change = (change: (queue: Queue) => Queue): Promise<Queue> => {
    this.queue = change(this.queue);
    return Promise.resolve(this.queue);
  };

  newKey = (): string => `k${++this.count}`;

  now = (): Date => new Date(this.clock);

  days(count: number): void {
    this.clock += count * day;
  }

  /** Writes something down on the device. `of`: an entry that makes the clutch, or the clutch itself. */
  write(kind: QueueEntry['kind'], of: { entry: QueueEntry } | { id: string } | null, sentUnder: Fate | null): string {
    const mark = `m${++this.count}`;
    const pending = of && 'entry' in of ? of.entry : null;
    const id = of && 'id' in of ? of.id : null;
    const body = kind === 'note' ? { clutchId: id ?? recordToCome, mark } : { mark };
    const entry: NewEntry = {
      id: mark,
      keeperId,
      writtenAt: new Date(this.clock).toISOString(),
      kind,
      method: kind === 'counts' ? 'PATCH' : 'POST',
      path: kind === 'clutch' ? '/clutches' : kind === 'note' ? '/observations' : `/clutches/${id ?? recordToCome}`,
      body,
      version: kind === 'counts' && id !== null ? (this.clutches.get(id)?.version ?? 0) : null,
      base: null,
      key: this.newKey(),
      of: pending?.id ?? null,
      record: id === null ? null : `clutches/${id}`,
      name: '',
      words: mark,
      draft: null,
      triedAt: null,
    };
    if (sentUnder !== null && pending === null) {
      // the form sent it itself, and no answer came
      if (sentUnder === 'cut after')
        this.answerTo({ ...entry, after: null, place: 0, state: 'waiting', refusal: null, doneAt: null });
      this.queue = added(this.queue, { ...entry, triedAt: new Date(this.clock).toISOString() });
    } else this.queue = added(this.queue, entry);
    return mark;
  }

  /** Somebody else changes a clutch in the register. */
  meddle(id: string): void {
    const clutch = this.clutches.get(id);
    if (clutch) clutch.version++;
  }

  /** Runs the sending once; each request meets the next fate, and passes when there are none left. */
  async run(fates: readonly Fate[]): Promise<void> {
    const left = [...fates];
    const send = (entry: QueueEntry): Promise<Outcome> => this.meet(entry, left.shift() ?? 'passes');
    try {
      await sendQueue(keeperId, { change: this.change, send, now: this.now });
    } catch (error) {
      if (!(error instanceof Killed)) throw error;
    }
  }

  private async meet(entry: QueueEntry, fate: Fate): Promise<Outcome> {
    await Promise.resolve();
    if (fate === 'killed before') throw new Killed();
    if (fate === 'cut before') return { kind: 'again' };
    if (fate === 'busy') return outcomeOf(entry, new ProblemError(409, { type: '/problems/still-at-work' }));
    const answer = this.answerTo(entry);
    if (fate === 'killed after') throw new Killed();
    if (fate === 'cut after') return { kind: 'again' };
    if (fate === 'fault') return outcomeOf(entry, new ProblemError(500, { title: 'A fault' }));
    return answer instanceof ProblemError ? outcomeOf(entry, answer) : { kind: 'done', ...namesOf(answer) };
  }

  /** What the register answers to an entry, after doing what it says. */
  private answerTo(entry: QueueEntry): Record<string, unknown> | ProblemError {
    const before = this.answers.get(entry.key);
    if (before && this.clock - before.at < 7 * day) return before.answer;
    const mark = String(entry.body['mark']);
    if (this.refused.has(mark)) return new ProblemError(422, { title: 'Not valid' });
    const answer = entry.kind === 'note' ? { id: mark, version: 1 } : this.writeClutch(entry, mark);
    if (answer instanceof ProblemError) return answer;
    this.written.push(mark);
    this.answers.set(entry.key, { at: this.clock, answer });
    return answer;
  }

  private writeClutch(entry: QueueEntry, mark: string): Record<string, unknown> | ProblemError {
    if (entry.kind === 'clutch') {
      const id = `c-${mark}-${this.written.length}`;
      this.clutches.set(id, { id, version: 1, said: [mark] });
      return { id, version: 1 };
    }
    const clutch = this.clutches.get(entry.path.split('/')[2] ?? '');
    if (!clutch) return new ProblemError(404, { title: 'Not found' });
    if (clutch.version !== entry.version) return new ProblemError(412, { current: { ...clutch } });
    clutch.version++;
    clutch.said.push(mark);
    clutch['mark'] = mark;
    return { id: clutch.id, version: clutch.version };
  }
}
