import { isStranger, seen } from '../../people/visibility.ts';
import { viewer } from '../../platform/acting.ts';

/**
 * The SQL condition under which whoever asks is one of the two whom a transfer concerns, a row of `transfer` under this alias, or a
 * registrar: these read every word of it.
 */
export function concerned(alias: string): string {
  const who = viewer();
  if (who === null) return 'false';
  if (who.roles.includes('registrar')) return 'true';
  // the id comes from our own table, never from the request
  return `('${who.id}' in (${alias}.keeper_id, ${alias}.to_id)) is true`;
}

/**
 * The SQL condition under which whoever asks may see that there is a transfer: whom it concerns always, other members once the animals
 * changed hands or left, if they may see one of them (transfer_animal_pkey). To strangers none.
 */
export function seenTransfer(alias: string): string {
  if (isStranger()) return 'false';
  const own = concerned(alias);
  if (own === 'true') return own;
  return `(${own} or ${alias}.state = 'accepted' and exists (select from transfer_animal ta join individual ti on ti.id = ta.individual_id
    where ta.transfer_id = ${alias}.id and ${seen('individual', 'ti')}))`;
}
