import { hashOfSecret, randomSecret, tokenPrefix } from '../../api/people/secrets.ts';
import type { DataSource } from 'typeorm';
import type { Role } from '../../shared/vocabulary.ts';

/** Puts a keeper into the club, or finds the one of that name, and gives them a token. */
export async function keeperWithToken(
  dataSource: DataSource,
  name: string,
  roles: readonly Role[],
  scope: 'read' | 'write' = 'write',
): Promise<{ id: string; token: string }> {
  await dataSource.query(`insert into club (name) values ('My register') on conflict do nothing`);
  const [row] = await dataSource.query<{ id: string }[]>(
    `insert into keeper (name, roles) values ($1, $2) on conflict (lower(name)) do update set roles = excluded.roles returning id`,
    [name, roles],
  );
  const id = row?.id ?? '';
  const token = tokenPrefix + randomSecret();
  await dataSource.query(`insert into access_token (keeper_id, name, scope, token_hash) values ($1, 'test', $3, $2)`, [
    id,
    hashOfSecret(token),
    scope,
  ]);
  return { id, token };
}
