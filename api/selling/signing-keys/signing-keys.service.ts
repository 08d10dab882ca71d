import { Inject, Injectable, Logger } from '@nestjs/common';
import { importJWK, type CryptoKey } from 'jose';
import { DataSource, type EntityManager } from 'typeorm';
import { publishedKeys, thumbprintOf, type PublishedKeys, type SheetKey } from '../../../shared/sheet/sheet-keys.ts';
import { writeEntry } from '../../platform/journal-entry.ts';
import { ConflictProblem, NotFoundProblem } from '../../platform/problem.ts';
import { settingsKey } from '../../platform/settings.ts';
import type { SigningKey, SigningSettings } from '../../platform/signing-settings.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { openSigningKey, replaceSigningKey, SigningKeyProblem } from './signing-key-file.ts';
import type { SigningKeyRecord } from './signing-key.entity.ts';
import { addSigningKey, endSigningKey, holdSigningKey, readSigningKeys } from './signing-keys.queries.ts';
import type { SigningKeyView } from './signing-keys.view.ts';
import { say } from '../../platform/say.ts';

/** A key to sign with, held as in use until the transaction ends. */
export interface HeldKey {
  readonly id: string;
  readonly kid: string;
  readonly privateKey: CryptoKey;
}

/** The private key of this copy of the service, and the public keys of all. */
@Injectable()
export class SigningKeys {
  readonly #log = new Logger('SigningKeys');

  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(settingsKey) private readonly settings: SigningSettings,
  ) {}

  /**
   * Sees to it that this copy has a key to sign with, and that its public part is known. Called at the start, and before each signing.
   *
   * @throws SigningKeyProblem saying why it has none
   */
  async ready(): Promise<void> {
    const own = await this.#own();
    if (!own.record.usedUntil) return;
    if (!this.#isOurs) throw retired(own.record);
    await this.renew('it was retired');
  }

  /** The key to sign with, in a transaction that has to end soon. @throws SigningKeyProblem */
  async hold(manager: EntityManager): Promise<HeldKey> {
    const own = await openSigningKey(this.settings);
    const kid = await thumbprintOf(own.x);
    const record = await holdSigningKey(manager, kid, 'share');
    // it was made ready a moment ago
    if (!record || record.usedUntil) throw new SigningKeyProblem(say`The key was replaced at this moment. Try again.`);
    return { id: record.id, kid, privateKey: await privateKeyOf(own) };
  }

  /**
   * Puts a new key in the place of this copy's own one. What the old one signed stays genuine. Copies on the same folder take the new one; of
   * several that renew at once one does it.
   *
   * @throws ConflictProblem where the key was set from outside
   */
  async renew(reason: string): Promise<SigningKeyView> {
    if (!this.#isOurs)
      throw new ConflictProblem(
        say`The key was set from outside (SIGNING_KEY or SIGNING_KEY_FILE). Set another one, start the service again, and retire this one.`,
      );
    const old = await this.#own();
    await inTransaction(this.dataSource, async (manager) => {
      const held = await holdSigningKey(manager, old.kid, 'change');
      // another copy renewed it while this one waited
      if (!held || (await thumbprintOf((await openSigningKey(this.settings)).x)) !== old.kid) return;
      const { x } = await replaceSigningKey(this.settings);
      await this.#note(manager, await thumbprintOf(x), x, { old: held, reason });
      if (!held.usedUntil) await endSigningKey(manager, held.id, reason);
    });
    return this.#viewOf((await this.#own()).record);
  }

  /** Retires a key: nothing is signed with it any more, and what says that it was signed later is not genuine. 404, 409. */
  async retire(kid: string, reason: string): Promise<SigningKeyView> {
    await inTransaction(this.dataSource, async (manager) => {
      const held = await holdSigningKey(manager, kid, 'change');
      if (!held) throw new NotFoundProblem(say`key`, kid);
      if (held.usedUntil) throw new ConflictProblem(say`This key was retired on ${held.usedUntil.toISOString()}.`);
      await endSigningKey(manager, held.id, reason);
      await writeEntry(manager, {
        action: 'key-retired',
        kind: 'signing_key',
        recordId: held.id,
        before: { kid },
        after: null,
        reason,
      });
    });
    const found = (await this.list()).find((key) => key.kid === kid);
    if (!found) throw new NotFoundProblem(say`key`, kid);
    return found;
  }

  /** Every key that ever signed, the newest first, and which of them this copy signs with. */
  async list(): Promise<SigningKeyView[]> {
    const [records, own] = await Promise.all([readSigningKeys(this.dataSource.manager), this.#ownKid()]);
    return records.map((record) => toView(record, own));
  }

  /** The public keys with their times of use, for checking. */
  async known(): Promise<SheetKey[]> {
    return (await readSigningKeys(this.dataSource.manager)).map(({ kid, x, usedFrom, usedUntil }) => ({
      kid,
      x,
      usedFrom: usedFrom.toISOString(),
      usedUntil: usedUntil?.toISOString() ?? null,
    }));
  }

  /** The public keys as they are published. */
  async published(): Promise<PublishedKeys> {
    return publishedKeys(await this.known());
  }

  /** Whether the key lies where this service may replace it. */
  get #isOurs(): boolean {
    return this.settings.signingKey === null && this.settings.isSigningKeyMade;
  }

  /** This copy's own key, noted as in use if nobody knew it. */
  async #own(): Promise<{ kid: string; record: SigningKeyRecord }> {
    const { x } = await openSigningKey(this.settings);
    const kid = await thumbprintOf(x);
    const known = (await readSigningKeys(this.dataSource.manager)).find((record) => record.kid === kid);
    if (known) return { kid, record: known };
    await inTransaction(this.dataSource, (manager) => this.#note(manager, kid, x));
    const record = (await readSigningKeys(this.dataSource.manager)).find((one) => one.kid === kid);
    if (!record) throw new Error('the key that was noted is not there');
    return { kid, record };
  }

  /** Notes a key as in use, in place of an old one if that is given. */
  async #note(
    manager: EntityManager,
    kid: string,
    x: string,
    replaced?: { readonly old: SigningKeyRecord; readonly reason: string },
  ): Promise<void> {
    const id = await addSigningKey(manager, kid, x);
    if (id === null) return;
    this.#log.log(`Sheets are signed with the key ${kid} from now on.`);
    await writeEntry(manager, {
      action: 'key-made',
      kind: 'signing_key',
      recordId: id,
      before: replaced ? { kid: replaced.old.kid } : null,
      after: { kid },
      reason: replaced?.reason ?? null,
    });
  }

  async #ownKid(): Promise<string | null> {
    try {
      return await thumbprintOf((await openSigningKey(this.settings)).x);
    } catch (error) {
      if (error instanceof SigningKeyProblem) return null;
      throw error;
    }
  }

  async #viewOf(record: SigningKeyRecord): Promise<SigningKeyView> {
    return toView(record, await this.#ownKid());
  }
}

const retired = ({ kid, usedUntil }: SigningKeyRecord): SigningKeyProblem =>
  new SigningKeyProblem(
    say`The key ${kid}, which is set for signing, was retired on ${usedUntil?.toISOString().slice(0, 10)}. Set another one and start the service again.`,
  );

function toView({ kid, usedFrom, usedUntil, reason }: SigningKeyRecord, own: string | null): SigningKeyView {
  return { kid, usedFrom, usedUntil, reason, isOwn: kid === own };
}

async function privateKeyOf({ key }: SigningKey): Promise<CryptoKey> {
  // a key of two parts never comes out as bytes
  return (await importJWK(key.export({ format: 'jwk' }), 'EdDSA')) as CryptoKey;
}
