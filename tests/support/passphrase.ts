import { Passphrases } from '../../api/people/passphrases.ts';
import type { Role } from '../../shared/vocabulary.ts';
import type { TestApi } from './api.ts';

/** Puts a keeper into the club who can sign in, and gives what they send for that. */
export async function keeperWithPassphrase(
  api: TestApi,
  name: string,
  roles: readonly Role[] = [],
): Promise<{ id: string; name: string; password: string }> {
  const password = `the passphrase of ${name} alone`;
  const { id } = await api.addKeeper(name, roles);
  const stored = await api.app.get(Passphrases).hash(password);
  await api.dataSource.query('update keeper set password_hash = $2 where id = $1', [id, stored]);
  return { id, name, password };
}
