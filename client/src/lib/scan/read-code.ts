import { formatRegistryNumber, parseRegistryNumber } from '$shared/registry-number.ts';

/** Where what was read leads. `opens`: a page of this register. `elsewhere`: to another place, which is never opened. `unread`: nowhere. */
export type CodeRead =
  | { readonly kind: 'opens'; readonly path: string }
  | {
      readonly kind: 'elsewhere';
      readonly text: string;
      /** The other place, as `register.example`. */
      readonly host: string;
      /** The number on it, if it looks like a label: perhaps this register had another address when it was printed. */
      readonly number: string | null;
    }
  | { readonly kind: 'unread'; readonly text: string };

const id = '[\\da-f]{8}-[\\da-f]{4}-[\\da-f]{4}-[\\da-f]{4}-[\\da-f]{12}';
const shortId = '[\\w-]{22}';
const pages = [
  new RegExp(`^/(animals|clutches|pairings)/${id}/?$`, 'i'),
  // a card of a group or a clutch, by the short id of its code
  new RegExp(`^/[cp]/${shortId}/?$`),
  // a provenance sheet, by the token of its code
  /^\/s\/[\w-]{8,200}\/?$/,
];

/**
 * Reads the text of a code. It opens a page of this register only where it names one of its addresses (`origins`) and a page that labels and
 * sheets lead to; a registry number alone, typed or read, opens its animal.
 */
export function readCode(text: string, origins: readonly string[]): CodeRead {
  const typed = text.trim();
  const serial = parseRegistryNumber(typed);
  if (serial !== null) return { kind: 'opens', path: `/n/${formatRegistryNumber(serial)}` };
  if (!/^https?:\/\//i.test(typed) || !URL.canParse(typed)) return { kind: 'unread', text: shortened(typed) };
  const { origin, pathname, host } = new URL(typed);
  const number = numberIn(pathname);
  if (!origins.includes(origin)) return { kind: 'elsewhere', text: shortened(typed), host, number };
  if (number !== null) return { kind: 'opens', path: `/n/${number}` };
  if (pages.some((page) => page.test(pathname))) return { kind: 'opens', path: pathname };
  return { kind: 'unread', text: shortened(typed) };
}

/** The registry number of the address on a label, if its check character is right. */
function numberIn(pathname: string): string | null {
  const serial = parseRegistryNumber(/^\/n\/([^/]+)\/?$/i.exec(pathname)?.[1] ?? '');
  return serial === null ? null : formatRegistryNumber(serial);
}

/** As much of a text as fits on a phone. */
const shortened = (text: string): string => (text.length > 120 ? `${text.slice(0, 119)}…` : text);
