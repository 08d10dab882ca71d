import { readPublishedKeys, type SheetKey } from '$shared/sheet/sheet-keys.ts';
import { verifySheet, type SheetVerdict } from '$shared/sheet/verify-sheet.ts';
import { offerFile } from '../charts/svg-export.ts';

/** Most bytes of a sheet that are looked at. */
const mostBytes = 1_000_000;

/** Checks a sheet file with keys, here in the browser: nothing is sent anywhere. */
export class SheetCheck {
  verdict = $state.raw<SheetVerdict | null>(null);
  problem = $state('');
  /** Where the keys come from, in words. */
  keysFrom = $state('');
  #keys: SheetKey[] = [];
  #file: Uint8Array | null = null;

  /** Takes the keys that this register publishes, where it can be reached. */
  async takePublished(): Promise<void> {
    try {
      const answer = await fetch('/.well-known/jwks.json');
      if (answer.ok) await this.#takeKeys(await answer.text(), 'this register');
    } catch {
      this.keysFrom = '';
    }
  }

  /** Takes keys from a file that somebody handed over. */
  async takeKeys(file: File): Promise<void> {
    this.problem = '';
    await this.#takeKeys(await textOf(file), file.name);
    await this.#check();
  }

  /** Takes the sheet. */
  async take(file: File): Promise<void> {
    this.problem = '';
    this.verdict = null;
    if (file.size > mostBytes) {
      this.problem = 'This file has more than 1 MB: it is no provenance sheet.';
      return;
    }
    this.#file = new Uint8Array(await file.arrayBuffer());
    await this.#check();
  }

  /** The page that does the same without any site, with the published keys in it. */
  async keepPage(): Promise<void> {
    try {
      const [page, keys] = await Promise.all(
        ['/check-sheet.html', '/.well-known/jwks.json'].map(async (address) => {
          const answer = await fetch(address);
          if (!answer.ok) throw new Error(`${address} was answered ${answer.status}`);
          return answer.text();
        }),
      );
      const place = 'id="kept-keys">';
      const held = JSON.stringify(JSON.parse(keys ?? '')).replaceAll('<', '\\u003c');
      offerFile(
        (page ?? '').replace(place, () => place + held),
        'check-sheet.html',
        'text/html',
      );
    } catch {
      this.problem = 'The page could not be fetched. Look whether this register can be reached, then try again.';
    }
  }

  async #takeKeys(text: string, from: string): Promise<void> {
    try {
      this.#keys = await readPublishedKeys(JSON.parse(text));
      this.keysFrom = from;
    } catch (error) {
      this.problem = `The keys of ${from} cannot be read: ${error instanceof Error ? error.message : 'they are no JSON'}`;
    }
  }

  async #check(): Promise<void> {
    if (!this.#file) return;
    // browsers lend their cryptography to pages with https only, and to those of the machine itself
    if (!globalThis.isSecureContext)
      this.problem =
        'This browser checks signatures only on pages with https. Keep the page below and open it from your disk, or use npm run sheet:verify.';
    else this.verdict = await verifySheet(this.#file, this.#keys);
  }
}

const textOf = (file: File): Promise<string> => (file.size > mostBytes ? Promise.resolve('') : file.text());
