import { describe, expect, it } from 'vitest';
import { readCode } from '$lib/scan/read-code.ts';

const here = 'https://register.club.example';
const read = (text: string) => readCode(text, [here, 'http://localhost:3000']);
const id = '01a1961f-5e04-7764-b9be-9023676d70b9';

describe('the code of a label', () => {
  it.each([
    [`${here}/n/1351-5`, '/n/1351-5'],
    [`http://localhost:3000/n/1351-5`, '/n/1351-5'],
    [`HTTPS://REGISTER.CLUB.EXAMPLE/N/1351-5`, '/n/1351-5'],
    [`${here}/animals/${id}`, `/animals/${id}`],
    [`${here}/clutches/${id}?x=1#y`, `/clutches/${id}`],
    [`${here}/pairings/${id}`, `/pairings/${id}`],
    [`${here}/c/AaGWH14Ed2S5vpAjZ21wuQ`, '/c/AaGWH14Ed2S5vpAjZ21wuQ'],
    [`${here}/p/AaGWH14Ed2S5vpAjZ21wuQ/`, '/p/AaGWH14Ed2S5vpAjZ21wuQ/'],
    [`${here}/s/AbCd_-12345678`, '/s/AbCd_-12345678'],
    [' 13515 ', '/n/1351-5'],
    ['1351-5', '/n/1351-5'],
  ])('%s opens %s', (text, path) => expect(read(text)).toEqual({ kind: 'opens', path }));

  it.each([
    'https://elsewhere.example/n/1351-5',
    `${here}.elsewhere.example/n/1351-5`,
    'https://register.club.example@elsewhere.example/n/1351-5',
    'http://register.club.example/n/1351-5',
  ])('%s leads elsewhere and is not opened, but its number may be looked for here', (text) =>
    expect(read(text)).toMatchObject({ kind: 'elsewhere', number: '1351-5' }),
  );

  it.each(['c', 'p', 's'])('a card or a sheet of another register (/%s/) is told as foreign', (kind) =>
    expect(read(`https://elsewhere.example/${kind}/AaGWH14Ed2S5vpAjZ21wuQ`)).toMatchObject({
      kind: 'elsewhere',
      host: 'elsewhere.example',
      number: null,
    }),
  );

  it.each([
    `${here}/c/AaGWH14Ed2S5vpAjZ21wu`,
    'javascript:alert(1)',
    'data:text/html,<b>',
    '//elsewhere.example/n/1351-5',
    `${here}/api/v1/session`,
    `${here}/sign-in?to=/club`,
    `${here}/n/1351-6`,
    '1351-6',
    'a frog',
    '',
  ])('%s opens nothing', (text) => expect(read(text).kind).toBe('unread'));

  it('is told in as many words as fit', () => {
    const long = read(`https://elsewhere.example/${'a'.repeat(500)}`);
    expect(long).toMatchObject({ kind: 'elsewhere', number: null });
    expect('text' in long && long.text).toHaveLength(120);
  });
});
