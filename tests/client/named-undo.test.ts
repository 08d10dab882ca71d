import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Every file of the client that is written by hand. */
const files: ReadonlyMap<string, string> = new Map(
  readdirSync('client/src', { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(svelte|ts)$/.test(file) && !file.endsWith('openapi.d.ts'))
    .map((file) => [file.replaceAll('\\', '/'), readFileSync(join('client/src', file), 'utf8')]),
);
const textOf = (file: string): string => files.get(file) ?? '';

/** A request that changes something; questions that are put by POST go by `api.ask`. */
const writes = /\b(?:api|intent)\.(?:post|patch|put|delete)\b/;
/** Saying by name what was done, with the way back. */
const offers = /undoOffer\.(?:offer|offerAll|say|reverse)\(|\bwithdraw\(/;

/** Files that write and hand the answer to the one that tells of it. */
const toldBy: Readonly<Record<string, string>> = {
  'lib/claims/claim-form.svelte': 'lib/claims/claim-list.svelte',
  'lib/claims/evidence-form.svelte': 'lib/claims/claim-entry.svelte',
  'lib/claims/paper-form.svelte': 'lib/claims/evidence-row.svelte',
  'lib/claims/review-form.svelte': 'lib/claims/evidence-row.svelte',
  'lib/merge/merge-state.svelte.ts': 'routes/merge/+page.svelte',
  'lib/offline/write-or-wait.ts': 'lib/housing/note-clutch.svelte',
  'lib/photographs/photograph-form.svelte': 'lib/photographs/photograph-strip.svelte',
  'lib/records/line-dialog.svelte': 'lib/records/animal-fields.svelte',
  'lib/records/source-dialog.svelte': 'lib/records/animal-origin.svelte',
  'lib/records/species-dialog.svelte': 'lib/records/animal-fields.svelte',
  'lib/round/round-entry.svelte.ts': 'lib/round/round-desk.svelte',
  'lib/together/edit-together.svelte.ts': 'routes/register/+page.svelte',
  'lib/transfers/transfer-draft.svelte.ts': 'lib/transfers/write-transfer.svelte',
};

/** What cannot be taken back, and why. */
const withoutWayBack: Readonly<Record<string, string>> = {
  'lib/offline/send-for.ts': 'what waited is sent later, when nobody may be there: the journal takes it back',
  'lib/people/session.svelte.ts': 'coming and going changes nothing in the register',
  'lib/people/tokens.svelte.ts': 'a secret that was shown or revoked cannot be made unseen',
  'lib/sheets/sheet-row.svelte': 'a sheet that was revoked may be gone from the hands of its buyer',
  'routes/sheets/new/+page.svelte': 'a signature cannot be taken back; the sheet can be revoked',
};

describe('a change made on a screen', () => {
  const writing = [...files].flatMap(([file, text]) =>
    writes.test(text) && !file.startsWith('lib/api/') && file !== 'lib/ui/undo.svelte.ts' ? [file] : [],
  );

  it('is told by name with its way back, by the file that writes or by the one that it tells, but for what has none', () => {
    const silent = writing.filter(
      (file) => !offers.test(textOf(toldBy[file] ?? file)) && withoutWayBack[file] === undefined,
    );
    expect(silent).toEqual([]);
    expect(writing.length).toBeGreaterThan(40);
  });

  it('is handed to a file that uses the one that writes', () => {
    const strangers = Object.entries(toldBy).filter(([file, teller]) => {
      const name = (file.split('/').at(-1) ?? '').replace(/(\.svelte)?\.ts$/, '');
      return !textOf(teller).includes(name);
    });
    expect(strangers).toEqual([]);
  });

  it('has no exception that is none', () => {
    const exceptions = [...Object.keys(toldBy), ...Object.keys(withoutWayBack)];
    expect(exceptions.filter((file) => !writing.includes(file))).toEqual([]);
  });
});
