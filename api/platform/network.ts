import { isIPv6 } from 'node:net';

/**
 * What stands for the one who sends from an address when requests are counted: an IPv4 address itself; of an IPv6 address the
 * first 64 bits, since every household has as many addresses behind them as it likes.
 */
export function networkOf(address: string | undefined): string {
  if (address === undefined) return 'unknown';
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1];
  if (mapped !== undefined) return mapped;
  if (!isIPv6(address)) return address;
  const [head = '', tail] = (address.split('%')[0] ?? '').toLowerCase().split('::');
  const before = head === '' ? [] : head.split(':');
  const after = tail === undefined || tail === '' ? [] : tail.split(':');
  const between = tail === undefined ? [] : Array<string>(Math.max(0, 8 - before.length - after.length)).fill('0');
  return [...before, ...between, ...after]
    .slice(0, 4)
    .map((part) => part.replace(/^0+(?=.)/, ''))
    .join(':');
}
