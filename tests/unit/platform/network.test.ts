import { describe, expect, it } from 'vitest';
import { networkOf } from '../../../api/platform/network.ts';

describe('requests are counted', () => {
  it.each([
    ['192.0.2.7', '192.0.2.7'],
    ['::ffff:192.0.2.7', '192.0.2.7'],
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2'],
    ['2001:db8:1:2::9', '2001:db8:1:2'],
    ['2001:0DB8:0001:0002::9', '2001:db8:1:2'],
    ['2001:db8::1', '2001:db8:0:0'],
    ['::1', '0:0:0:0'],
    ['fe80::1%eth0', 'fe80:0:0:0'],
    [undefined, 'unknown'],
  ])('those of %s under %s', (address, network) => {
    expect(networkOf(address)).toBe(network);
  });
});
