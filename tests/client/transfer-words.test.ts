import { describe, expect, it } from 'vitest';
import type { Transfer, TransferItem } from '../../client/src/lib/api/types.ts';
import {
  ageInWords,
  doneInWords,
  stateInWords,
  transferTitle,
  warningsInWords,
} from '../../client/src/lib/transfers/transfer-words.ts';

const transfer = (fields: Partial<TransferItem> = {}): Transfer =>
  ({
    kind: 'handover',
    state: 'offered',
    from: { id: 'a', name: 'Anna' },
    to: { id: 'b', name: 'Ben' },
    count: 3,
    ...fields,
  }) as Transfer;
const gone = { kind: 'departure', state: 'accepted', to: null } as const;

describe('a transfer in words', () => {
  it('is called by how many animals it takes where', () => {
    expect(transferTitle(transfer())).toBe('Three animals for Ben');
    expect(transferTitle(transfer({ ...gone, count: 1 }))).toBe('One animal that left the club');
  });

  it.each<[Partial<TransferItem>, string, string]>([
    [{}, 'a', 'waits for the answer of Ben'],
    [{}, 'b', 'waits for your answer'],
    [{ state: 'accepted' }, 'b', 'you accepted'],
    [{ state: 'accepted' }, 'a', 'Ben accepted'],
    [{ state: 'declined' }, 'a', 'Ben declined'],
    [{ state: 'withdrawn' }, 'a', 'you withdrew it'],
    [{ state: 'withdrawn' }, 'b', 'Anna withdrew it'],
    [gone, 'a', 'left the club'],
    [{ ...gone, state: 'withdrawn' }, 'a', 'put back: had not left'],
  ])('%o tells %s: %s', (fields, me, words) => {
    expect(stateInWords(transfer(fields), me)).toBe(words);
  });

  it('says how long it waits', () => {
    const now = Date.parse('2026-05-10T12:00:00Z');
    expect(ageInWords('2026-05-10T03:00:00Z', now)).toBe('since today');
    expect(ageInWords('2026-05-08T03:00:00Z', now)).toBe('for 2 days');
  });

  it('says what was done, of one and of several', () => {
    expect(doneInWords(transfer({ count: 1 }), 'accept')).toBe('1 animal from Anna: you keep it now.');
    expect(doneInWords(transfer(), 'add')).toBe('3 animals offered to Ben.');
    expect(doneInWords(transfer(gone), 'withdraw')).toBe('3 animals put back as before.');
  });

  it('says once what is to think of for many animals', () => {
    const inWater = (count: number): Transfer['warnings'] =>
      Array.from({ length: count }, (_, at) => ({ individualId: `${at}`, code: 'in-water', detail: `${at} in water` }));
    const stay = { individualId: 'x', code: 'stay-ends', detail: 'lives in Tank 3' } as const;
    expect(warningsInWords([...inWater(2), stay])).toEqual(['0 in water', '1 in water', 'lives in Tank 3']);
    expect(warningsInWords([...inWater(30), stay])).toEqual([
      'lives in Tank 3',
      'Of 30 animals nobody noted that they left the water. Are they still tadpoles?',
    ]);
  });
});
