import { expect, it } from 'vitest';
import { groupNotation } from '../../../shared/group-notation.ts';

it('writes a group as males.females.unsexed (common practice, no source)', () => {
  expect(groupNotation(['female', 'male', 'female'])).toBe('1.2.0');
  expect(groupNotation(['unsexed', 'unsexed', 'unsexed', 'unsexed'])).toBe('0.0.4');
  expect(groupNotation([])).toBe('0.0.0');
});
