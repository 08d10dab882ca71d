import { readPublishedKeys, type SheetKey } from '$shared/sheet/sheet-keys.ts';
import { verifySheet } from '$shared/sheet/verify-sheet.ts';

/** Most bytes of a file that are looked at. */
const mostBytes = 1_000_000;

const element = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T; // the page is written with this program

let keys: SheetKey[] = [];
let sheet: Uint8Array | null = null;

function say(word: string, detail: string): void {
  element('word').textContent = word;
  element('detail').textContent = detail;
}

async function takeKeys(text: string): Promise<void> {
  try {
    keys = await readPublishedKeys(JSON.parse(text));
    element('keys-said').textContent = `Keys at hand: ${keys.map(({ kid }) => kid.slice(0, 16)).join(', ')}`;
  } catch (error) {
    say('These keys cannot be read', error instanceof Error ? error.message : '');
  }
}

async function check(): Promise<void> {
  if (!sheet) return;
  const { outcome, words, sheet: contents } = await verifySheet(sheet, keys);
  const isGood = outcome === 'genuine' || outcome === 'expired';
  say(isGood ? (outcome === 'expired' ? 'Genuine, but expired' : 'Genuine') : 'Not to be relied on', words);
  const animals = isGood && contents ? contents.animals : [];
  element('animals').replaceChildren(
    ...animals.map(({ number, code, species, line, hatched }) => {
      const item = document.createElement('li');
      item.textContent = [code, number, species, line, hatched && `hatched ${hatched}`].filter(Boolean).join(' · ');
      return item;
    }),
  );
  element('issued').textContent =
    isGood && contents
      ? `Sheet ${contents.number} of ${contents.issuer.register}, issued ${contents.issued.slice(0, 10)}. Whether it was revoked or replaced since is told at ${contents.lookUp}`
      : '';
}

const chosen = (id: string, take: (file: File) => Promise<void>): void =>
  element<HTMLInputElement>(id).addEventListener('change', ({ currentTarget }) => {
    const file = (currentTarget as HTMLInputElement).files?.[0];
    if (!file) return;
    if (file.size > mostBytes) say('Too large', 'A sheet and its keys have less than 1 MB.');
    else void take(file);
  });

chosen('sheet', async (file) => {
  sheet = new Uint8Array(await file.arrayBuffer());
  await check();
});
chosen('keys', async (file) => {
  await takeKeys(await file.text());
  await check();
});
const kept = element('kept-keys').textContent.trim();
if (kept) void takeKeys(kept);
