import type { Role } from '$shared/vocabulary.ts';
import { word } from '../words/word.ts';

/** What each role adds to keeping animals, in a few words. */
export const roleWords: Record<Role, string> = {
  registrar: 'corrects and merges records of the whole club, and sees private animals',
  administrator: 'invites people, gives roles, and changes the settings of the club',
};

/** The roles by name. */
export const roleNames: Record<Role, string> = { registrar: word('registrar'), administrator: word('administrator') };

/** Roles as the screen names them: everyone keeps animals. */
export function rolesInWords(roles: readonly Role[]): string {
  return roles.length === 0 ? word('keeper') : [word('keeper'), ...roles.map((role) => roleNames[role])].join(', ');
}
