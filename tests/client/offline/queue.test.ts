import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  discarded,
  goingWith,
  isOpen,
  putBack,
  recognised,
  resent,
  rewritten,
  type Queue,
} from '$lib/offline/queue.ts';
import type { QueueEntry } from '$lib/offline/queue-entry.ts';
import { CutWorld, type Fate } from './cut-world.ts';

const fate = fc.constantFrom<Fate>(
  'passes',
  'cut before',
  'cut after',
  'killed before',
  'killed after',
  'fault',
  'busy',
);
const step = fc.oneof(
  fc.record({ do: fc.constant('note a clutch' as const), sent: fc.option(fate) }),
  fc.record({ do: fc.constant('count' as const), of: fc.nat(9), sent: fc.option(fate) }),
  fc.record({ do: fc.constant('remark' as const), of: fc.nat(9), sent: fc.option(fate) }),
  fc.record({ do: fc.constant('send' as const), fates: fc.array(fate, { maxLength: 6 }) }),
  fc.record({ do: fc.constant('meddle' as const), of: fc.nat(9) }),
  fc.record({ do: fc.constant('refuse' as const), of: fc.nat(9) }),
  fc.record({
    do: fc.constant('throw away' as const),
    of: fc.nat(9),
    undoAfter: fc.option(fc.array(fate, { maxLength: 3 })),
  }),
  fc.record({ do: fc.constant('write anew' as const), of: fc.nat(9) }),
  fc.record({ do: fc.constant('decide' as const) }),
  fc.record({ do: fc.constant('wait' as const), days: fc.constantFrom(1, 8) }),
);
type Step = typeof step extends fc.Arbitrary<infer One> ? One : never;

/** What a keeper wrote, and what they threw away for good. */
interface Meant {
  readonly marks: Set<string>;
  readonly thrown: Set<string>;
  /** Put back only after others had been sent: these may come later than they were written. */
  readonly late: Set<string>;
}

const openOf = (queue: Queue): QueueEntry[] => queue.filter(({ state }) => state !== 'done');
const pick = <T>(list: readonly T[], at: number): T | undefined => list[at % Math.max(1, list.length)];

/** A clutch to write about: one that waits itself, or one of which the device knows that it is in the register. */
function target(world: CutWorld, at: number): { entry: QueueEntry } | { id: string } {
  const own = world.queue
    .filter(({ kind }) => kind === 'clutch')
    .map((entry) => (entry.state === 'done' ? { id: entry.record?.split('/')[1] ?? '' } : { entry }));
  return pick([{ id: 'c0' }, ...own], at) ?? { id: 'c0' };
}

async function perform(world: CutWorld, meant: Meant, { ...step }: Step): Promise<void> {
  const open = openOf(world.queue);
  const entry = 'of' in step ? pick(open, step.of) : undefined;
  if (step.do === 'note a clutch') meant.marks.add(world.write('clutch', null, step.sent));
  else if (step.do === 'count') meant.marks.add(world.write('counts', target(world, step.of), null));
  else if (step.do === 'remark') meant.marks.add(world.write('note', target(world, step.of), step.sent));
  else if (step.do === 'send') await world.run(step.fates);
  else if (step.do === 'wait') world.days(step.days);
  else if (step.do === 'meddle') world.meddle(pick([...world.clutches.keys()], step.of) ?? '');
  else if (step.do === 'decide') decide(world);
  else if (!entry) return;
  else if (step.do === 'refuse') world.refused.add(entry.words);
  else if (step.do === 'write anew')
    world.queue = rewritten(world.queue, entry.id, { words: entry.words }, world.newKey());
  else if (isOpen(entry)) await throwAway(world, meant, entry, step.undoAfter);
}

async function throwAway(world: CutWorld, meant: Meant, entry: QueueEntry, undoAfter: Fate[] | null): Promise<void> {
  const before = world.queue;
  const gone = [entry, ...goingWith(before, entry.id)];
  world.queue = discarded(before, entry.id);
  if (undoAfter === null) for (const one of gone) meant.thrown.add(one.words);
  else {
    await world.run(undoAfter);
    for (const one of gone) meant.late.add(one.words);
    world.queue = putBack(world.queue, before, entry.id);
  }
}

/** The keeper decides what has stopped: mine on top of theirs, mended, or sent again once it is known whether it is there. */
function decide(world: CutWorld): void {
  for (const entry of openOf(world.queue)) {
    const { state, refusal, body } = entry;
    const version = Number(refusal?.current?.['version'] ?? 0);
    world.refused.delete(entry.words);
    if (state === 'changed')
      world.queue = rewritten(world.queue, entry.id, { body }, world.newKey(), { version, base: null });
    if (state === 'refused') world.queue = rewritten(world.queue, entry.id, { body }, world.newKey());
    if (state === 'unsure' && !world.written.includes(entry.words))
      world.queue = resent(world.queue, entry.id, world.newKey());
    else if (state === 'unsure') settleByHand(world, entry);
  }
}

/** It is there: of a clutch its keeper says which it is, and what belongs to it goes there; anything else they throw away here. */
function settleByHand(world: CutWorld, entry: QueueEntry): void {
  const clutch = [...world.clutches.values()].find(({ said }) => said[0] === entry.words);
  if (entry.refusal?.status === 500) world.queue = resent(world.queue, entry.id);
  else if (entry.kind === 'clutch' && clutch) world.queue = recognised(world.queue, entry.id, clutch, world.now());
  else world.queue = discarded(world.queue, entry.id);
}

describe('what is written down without a network', () => {
  it('ends in the register exactly once, or is still there to be seen, whatever is cut, killed or changed meanwhile', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 25 }), async (steps) => {
        const world = new CutWorld();
        const meant: Meant = { marks: new Set(), thrown: new Set(), late: new Set() };
        for (const one of steps) await perform(world, meant, one);
        // nothing is ever done twice, and nothing is ever lost
        const shown = (mark: string): boolean => openOf(world.queue).some(({ words }) => words === mark);
        const times = (mark: string): number => world.written.filter((one) => one === mark).length;
        for (const mark of meant.marks) {
          expect(times(mark), mark).toBeLessThanOrEqual(1);
          if (meant.thrown.has(mark)) expect([mark, times(mark)]).toEqual([mark, 0]);
          else expect([mark, times(mark) === 1 || shown(mark)]).toEqual([mark, true]);
        }
        // and in the end everything is there
        for (let at = 0; at < 40 && openOf(world.queue).length > 0; at++) {
          await world.run([]);
          decide(world);
        }
        expect(openOf(world.queue)).toEqual([]);
        // what was written of one clutch, in the order in which it was written
        for (const { said } of world.clutches.values()) {
          const punctual = said.filter((mark) => !meant.late.has(mark)).map((mark) => Number(mark.slice(1)));
          expect(punctual).toEqual(punctual.toSorted((a, b) => a - b));
        }
      }),
      { numRuns: 1500 },
    );
  });

  it('comes back whole when a clutch is put back that two counts waited for, one behind the other', async () => {
    const world = new CutWorld();
    world.write('clutch', null, null);
    const [clutch] = world.queue;
    if (!clutch) throw new Error('Nothing waits.');
    world.write('counts', { entry: clutch }, null);
    world.write('counts', { entry: clutch }, null);
    const before = world.queue;
    world.queue = putBack(discarded(before, clutch.id), before, clutch.id);
    expect(world.queue).toEqual(before);
    await world.run([]);
    expect(world.written).toEqual(before.map(({ words }) => words));
  });

  it('goes on behind a clutch that its keeper found in the register', async () => {
    const world = new CutWorld();
    world.write('clutch', null, 'cut after');
    const [clutch] = world.queue;
    if (!clutch) throw new Error('Nothing waits.');
    world.write('counts', { entry: clutch }, null);
    world.write('note', { entry: clutch }, null);
    world.days(8);
    await world.run([]);
    expect(world.queue.map(({ state }) => state)).toEqual(['unsure', 'waiting', 'waiting']);
    world.meddle([...world.clutches.keys()].at(-1) ?? '');
    const there = [...world.clutches.values()].at(-1);
    if (!there) throw new Error('The register has no clutch.');
    world.queue = recognised(world.queue, clutch.id, { id: there.id, version: there.version }, world.now());
    // said twice, as by two tabs, it is said once
    expect(recognised(world.queue, clutch.id, { id: 'c0', version: 1 }, world.now())).toEqual(world.queue);
    await world.run([]);
    expect(openOf(world.queue)).toEqual([]);
    expect(there.said).toEqual([clutch.words, world.queue[1]?.words]);
    expect(world.written).toHaveLength(3);
  });
});
