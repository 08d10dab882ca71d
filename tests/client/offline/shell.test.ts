import { describe, expect, it } from 'vitest';
import { answererOf, cacheName, keptFiles, outdated } from '../../../client/src/service-worker/shell.ts';

const origin = 'https://club.example';
const kept = new Set(['/', '/mark.svg', '/_app/immutable/a.js']);
const asked = (path: string, mode = 'cors', method = 'GET') =>
  answererOf({ url: new URL(path, origin).href, mode, method }, origin, kept);

describe('without a network', () => {
  it.each([
    ['/', 'navigate', 'shell'],
    ['/animals/1?x=2', 'navigate', 'shell'],
    ['/s/token', 'navigate', 'shell'],
    ['/mark.svg', 'no-cors', 'kept'],
    ['/_app/immutable/a.js', 'cors', 'kept'],
    ['/_app/immutable/of-another-version.js', 'cors', 'kept'],
    ['/_app/version.json', 'cors', 'network'],
    ['/check-sheet.html', 'navigate', 'network'],
    ['/api/v1/individuals', 'cors', 'network'],
    ['/api/docs', 'navigate', 'network'],
    ['/api/v1/individuals/1/audit.pdf', 'navigate', 'network'],
    ['/.well-known/jwks.json', 'navigate', 'network'],
    ['https://elsewhere.example/', 'navigate', 'network'],
  ])('%s, opened by %s, is answered from: %s', (path, mode, answerer) => expect(asked(path, mode)).toBe(answerer));

  it('nothing is written by what is kept', () => expect(asked('/mark.svg', 'cors', 'POST')).toBe('network'));
});

describe('the kept files of a version', () => {
  it('are the page, scripts, styles and the fonts of most names, not what one page alone needs', () => {
    const built = [
      '/_app/a.js',
      '/_app/countries-50m.json',
      '/_app/brygada-latin-ext-wght.woff2',
      '/_app/brygada-cyrillic-wght.woff2',
    ];
    expect(keptFiles(built, ['/mark.svg', '/icons/mark-512.png'])).toEqual([
      '/',
      '/_app/a.js',
      '/_app/brygada-latin-ext-wght.woff2',
      '/mark.svg',
    ]);
  });

  it('of the version before are left, for tabs that still work with it', () => {
    const names = ['fonts-of-another', cacheName('1'), cacheName('2'), cacheName('3')];
    expect(outdated(names, cacheName('3'))).toEqual([cacheName('1')]);
    expect(outdated([cacheName('1')], cacheName('1'))).toEqual([]);
  });
});
