/** What the page asked for before its scripts were there (`app.html`), and in whose name; null: for whom the cookie stands. */
interface AskedEarly {
  readonly keeper: string | null;
  readonly answers: Map<string, Promise<Response>>;
}

declare global {
  var askedEarly: AskedEarly | undefined;
}

/**
 * The answer that was asked for early at an address, for the first who reads it in the same name; undefined where there is none. Where the
 * browser knew nobody, it is the answer to the cookie that says who is signed in, too.
 */
export function takeEarly(address: string, keeperId: string | null): Promise<Response> | undefined {
  const early = globalThis.askedEarly;
  const answer = early?.answers.get(address);
  // who is signed in is asked in nobody's name
  if (!early || !answer || (address !== '/session' && early.keeper !== null && keeperId !== early.keeper))
    return undefined;
  early.answers.delete(address);
  return answer;
}

/** The first page stands: what was asked for it and nobody read is old from now on. */
export function forgetEarly(): void {
  // an answer that nobody reads would keep its connection
  for (const answer of globalThis.askedEarly?.answers.values() ?? [])
    answer.then(({ body }) => body?.cancel()).catch(() => undefined);
  globalThis.askedEarly = undefined;
}
