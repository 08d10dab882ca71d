import { Injectable } from '@nestjs/common';
import { hash, verify } from '@node-rs/argon2';
import { Problem } from '../platform/problem.ts';
import { say } from '../platform/say.ts';

/** The library's kind is Argon2id. Above the least that OWASP asks of it (19 MiB, 2 passes, 1 lane): about a tenth of a second. */
const cost = { memoryCost: 32_768, timeCost: 3, parallelism: 1 } as const;

/** Each takes 32 MiB and a thread; two leave the service and its files the others. */
const atOnce = 2;
const mostWaiting = 100;

/** Makes and checks what is stored of passphrases: Argon2id, a few at once, so that many sign-ins cannot exhaust the machine. */
@Injectable()
export class Passphrases {
  #running = 0;
  readonly #waiting: (() => void)[] = [];
  #nobody: Promise<string> | undefined;

  /** What is stored of a passphrase. 503 while too many wait. */
  async hash(passphrase: string): Promise<string> {
    return this.#inTurn(() => hash(formOf(passphrase), cost));
  }

  /**
   * Whether a passphrase is the one that `stored` was made of; where nothing is stored, no, after the same time. 503 while too many
   * wait.
   */
  async matches(stored: string | null, passphrase: string): Promise<boolean> {
    this.#nobody ??= hash('the passphrase of nobody', cost);
    const compared = stored ?? (await this.#nobody);
    const isSame = await this.#inTurn(() => verify(compared, formOf(passphrase)));
    return isSame && stored !== null;
  }

  /** Whether `stored` was made with other figures than those of today. */
  isOutdated(stored: string): boolean {
    return !stored.startsWith(`$argon2id$v=19$m=${cost.memoryCost},t=${cost.timeCost},p=${cost.parallelism}$`);
  }

  async #inTurn<T>(work: () => Promise<T>): Promise<T> {
    if (this.#running >= atOnce) {
      if (this.#waiting.length >= mostWaiting)
        throw new Problem(
          'unavailable',
          503,
          say`Not now`,
          say`Too many sign in at this moment. Try again in a minute.`,
        );
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    } else this.#running++;
    try {
      return await work();
    } finally {
      // a place is handed on, not given back, where somebody waits for it
      const next = this.#waiting.shift();
      if (next) next();
      else this.#running--;
    }
  }
}

/** The same passphrase typed on another keyboard may come in another form of the same letters. */
const formOf = (passphrase: string): string => passphrase.normalize('NFKC');
