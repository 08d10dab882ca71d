import { answering, currentRequest } from '../../platform/acting.ts';

/** A member without an animal or an office. No record has this keeper. */
const nobody = {
  id: '00000000-0000-0000-0000-000000000000',
  name: '',
  roles: [],
  via: 'token',
  scope: 'read',
} as const;

/**
 * Runs `work`, which only reads, as what may stand on a sheet and be told to whoever holds one: what every member may see. What is private is
 * concealed, whoever issues the sheet and whoever asks; names of people, notes and exact places are left out by whoever composes it.
 */
export function asPublished<T>(work: () => Promise<T>): Promise<T> {
  return answering({ requestId: currentRequest()?.requestId ?? 'published', viewer: nobody }, work);
}
