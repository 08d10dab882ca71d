import { dateInWords } from '$shared/date-words.ts';
import type { Transfer, TransferItem } from '../api/types.ts';
import { dayInWords } from '../ui/dates.ts';
import { counted, countedInWords } from '../ui/figures.ts';
import { word } from '../words/word.ts';

type Told = Pick<TransferItem, 'kind' | 'state' | 'from' | 'to' | 'count'>;

const animals = (count: number): string => counted(count, ['animal', 'animals']);

/** What a transfer is called: "Three animals for Ben", "One animal that left the club". */
export function transferTitle({ kind, to, count }: Told): string {
  const what = countedInWords(count, ['animal', 'animals']);
  return kind === 'departure' ? `${what} that left the club` : `${what} for ${to?.name ?? 'a keeper'}`;
}

/** How far it is, for a line of a list; `me` is whoever looks. */
export function stateInWords({ kind, state, from, to }: Told, me: string | undefined): string {
  const receiver = to?.id === me ? word('you') : (to?.name ?? word('somebody'));
  if (kind === 'departure') return state === 'withdrawn' ? 'put back: had not left' : 'left the club';
  if (state === 'offered') return to?.id === me ? 'waits for your answer' : `waits for the answer of ${receiver}`;
  if (state === 'accepted') return `${receiver} accepted`;
  if (state === 'declined') return `${receiver} declined`;
  return from.id === me ? 'you withdrew it' : `${from.name} withdrew it`;
}

/** A vague date as a sentence has it. */
export const dateWords = (date: string): string =>
  /^\d{4}-\d{2}(-\d{2})?[~?%]?$/.test(date) ? dayInWords(date) : dateInWords(date);

/** How long something waits: "since today", "for 3 days". */
export function ageInWords(createdAt: string, now = Date.now()): string {
  const days = Math.floor((now - Date.parse(createdAt)) / 86_400_000);
  return days < 1 ? 'since today' : `for ${counted(days, ['day', 'days'])}`;
}

/** What to think of, one line each; what is the same of many animals is said once. */
export function warningsInWords(warnings: Transfer['warnings']): string[] {
  const inWater = warnings.filter(({ code }) => code === 'in-water');
  if (inWater.length < 3) return warnings.map(({ detail }) => detail);
  return [
    ...warnings.filter(({ code }) => code !== 'in-water').map(({ detail }) => detail),
    `Of ${animals(inWater.length)} nobody noted that they left the water. Are they still tadpoles?`,
  ];
}

/** What the bar says once a step was taken. */
export function doneInWords(transfer: Transfer, step: 'accept' | 'decline' | 'withdraw' | 'return' | 'add'): string {
  const { kind, count, from, to } = transfer;
  const what = animals(count);
  if (step === 'accept') return `${what} from ${from.name}: you keep ${count === 1 ? word('it') : word('them')} now.`;
  if (step === 'decline') return `The offer of ${from.name} is declined.`;
  if (step === 'return') return 'Back, and alive in the register.';
  if (step === 'withdraw')
    return kind === 'departure' ? `${what} put back as before.` : `The offer to ${to?.name ?? ''} is withdrawn.`;
  return kind === 'departure' ? `${what} noted as gone.` : `${what} offered to ${to?.name ?? ''}.`;
}
