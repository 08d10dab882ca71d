import { afterEach, describe, expect, it } from 'vitest';
import { forgetEarly, takeEarly } from '$lib/api/asked-early.ts';

const answer = (text: string): Promise<Response> => Promise.resolve(new Response(text));
const asked = (keeper: string | null): void => {
  globalThis.askedEarly = {
    keeper,
    answers: new Map([
      ['/session', answer('who')],
      ['/today', answer('due')],
    ]),
  };
};

describe('an answer that was asked for early', () => {
  afterEach(forgetEarly);

  it('is given once, to whoever reads that address first', async () => {
    asked('mine');
    expect(await (await takeEarly('/today', 'mine'))?.text()).toBe('due');
    expect(takeEarly('/today', 'mine')).toBeUndefined();
  });

  it('is given to nobody in whose name it was not asked for', () => {
    asked('mine');
    expect(takeEarly('/today', 'other')).toBeUndefined();
    expect(takeEarly('/today', null)).toBeUndefined();
  });

  it('is given to whom the cookie stands for, where the browser knew nobody', async () => {
    asked(null);
    expect(await (await takeEarly('/today', 'mine'))?.text()).toBe('due');
  });

  it('tells who is signed in to a page that does not know it', async () => {
    asked('gone');
    expect(await (await takeEarly('/session', null))?.text()).toBe('who');
  });

  it('is old once the first page stands, and holds no connection', async () => {
    asked('mine');
    let isLeft = false;
    const unread = new ReadableStream({ cancel: () => void (isLeft = true) });
    globalThis.askedEarly?.answers.set('/register', Promise.resolve(new Response(unread)));
    forgetEarly();
    expect(takeEarly('/today', 'mine')).toBeUndefined();
    await expect.poll(() => isLeft).toBe(true);
  });
});
