import type { LabelEvent } from '../api/types.ts';

const quoted = (label: string | null): string => (label === null ? 'no label' : `“${label}”`);

const sentences: Readonly<Record<LabelEvent['event'], (event: LabelEvent) => string>> = {
  received: ({ label, who }) => {
    const as = label === null ? 'an animal without a label' : quoted(label);
    return who === null ? `came as ${as}` : `came as ${as}, from ${who}`;
  },
  entered: ({ label }) => `entered under ${quoted(label)}`,
  'line-changed': ({ label, before }) => `moved from ${quoted(before)} to ${quoted(label)}`,
  'line-renamed': ({ label, before }) => `its line ${quoted(before)} was renamed ${quoted(label)}`,
  claimed: ({ label, who }) => `${who === null ? 'it was claimed' : `${who} said`}: ${quoted(label)}`,
  'claim-changed': ({ label, before }) => `the claim of ${quoted(before)} now says ${quoted(label)}`,
  'claim-withdrawn': ({ label }) => `the claim of ${quoted(label)} was withdrawn`,
  'evidence-accepted': ({ label, record }) => `${record.title} on ${quoted(label)} was accepted`,
  'evidence-rejected': ({ label, record }) => `${record.title} on ${quoted(label)} was turned down`,
  'evidence-withdrawn': ({ label, record }) => `${record.title} on ${quoted(label)} was withdrawn`,
};

/** Events whose sentence already says who. */
const saysWho: readonly LabelEvent['event'][] = ['received', 'claimed'];

/** One event of the history of a label in words, with who did it and why where that is known. */
export function labelEventInWords(event: LabelEvent): string {
  const what = sentences[event.event](event);
  const told = event.who === null || saysWho.includes(event.event) ? what : `${what}, by ${event.who}`;
  return event.reason === null ? told : `${told}: ${event.reason}`;
}
