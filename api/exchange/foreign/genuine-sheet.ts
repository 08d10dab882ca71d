import type { EntityManager } from 'typeorm';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { verifySheet } from '../../../shared/sheet/verify-sheet.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { isOwnKey, readBelieved, type BelievedRegister } from './other-registers.queries.ts';
import { say } from '../../platform/say.ts';

/** A sheet whose signature was found to be good. */
export interface GenuineSheet {
  readonly register: BelievedRegister;
  readonly sheet: SheetDocument;
  readonly words: string;
}

/**
 * Checks a sheet file with the keys of the registers that are believed; one that has expired is still what was signed.
 *
 * @throws InvalidProblem saying why it is not taken in
 */
export async function genuineSheet(manager: EntityManager, file: string): Promise<GenuineSheet> {
  const registers = await readBelieved(manager);
  const { outcome, words, sheet, kid } = await verifySheet(
    new TextEncoder().encode(file),
    registers.flatMap(({ keys }) => keys),
  );
  const register = registers.find(({ keys }) => keys.some((key) => key.kid === kid));
  if (register && sheet && (outcome === 'genuine' || outcome === 'expired')) return { register, sheet, words };
  const detail =
    outcome !== 'unknown-key'
      ? words
      : (await isOwnKey(manager, kid ?? ''))
        ? say`This register issued the sheet itself: its animals are here already.`
        : say`${words} A registrar can add the register that it comes from with its keys, once somebody there has named them.`;
  throw new InvalidProblem(say`This sheet is not taken in.`, [{ pointer: '/file', detail }]);
}
