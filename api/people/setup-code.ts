import { randomInt } from 'node:crypto';
import type { DataSource, EntityManager } from 'typeorm';
import { hashOfSecret } from './secrets.ts';
import { needsSetup } from './session.queries.ts';

/** Digits and letters that nobody takes for each other. */
const signs = '23456789ABCDEFGHJKMNPQRSTVWXYZ';

/**
 * Makes a one-time code for setting the register up, where nobody can administer it yet and it is no demo; else null. Twelve signs, 59
 * random bits. Several copies of the service may each give one out; the first that is used ends them all.
 */
export async function offerSetup(dataSource: DataSource): Promise<string | null> {
  if (!(await needsSetup(dataSource.manager))) return null;
  const code = Array.from({ length: 12 }, () => signs.charAt(randomInt(signs.length))).join('');
  await dataSource.query('insert into setup_code (code_hash) values ($1)', [hashOfCode(code)]);
  return code.replace(/(.{4})(?=.)/g, '$1-');
}

/** Whether a code was given out and none was used yet. Codes last for thirty days. */
export async function isSetupCode(manager: EntityManager, code: string): Promise<boolean> {
  const found = await manager.query<unknown[]>(
    `select from setup_code where code_hash = $1 and created_at > now() - interval '30 days'`,
    [hashOfCode(code)],
  );
  return found.length > 0;
}

/** Ends every code. */
export async function endSetupCodes(manager: EntityManager): Promise<void> {
  await manager.query('delete from setup_code');
}

/** However it was typed: with dashes or spaces or without, in small letters or capitals. */
const hashOfCode = (code: string): Buffer => hashOfSecret(`setup ${code.toUpperCase().replace(/[^0-9A-Z]/g, '')}`);
