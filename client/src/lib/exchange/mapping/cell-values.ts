import type { SheetColumn } from '$shared/register-sheet.ts';
import { bareHeading } from './heading-words.ts';

/** Words of keepers for the closed vocabularies, in English, German and Spanish, and what the register calls them. */
const vocabularies: Partial<Record<SheetColumn, Record<string, string>>> = {
  sex: {
    male: '♂ 1.0 1,0 1.0.0 1,0,0 m male males mannlich maennlich mannchen maennchen mann bock macho masculino varon',
    female: '♀ 0.1 0,1 0.1.0 0,1,0 f w female females weiblich weibchen frau h hembra femenino femenina',
    unsexed:
      '0.0.1 0,0,1 - ? u unknown unsexed unbekannt unbestimmt jungtier juvenil desconocido desconocida sinsexar indeterminado',
  },
  status: {
    alive: 'alive living active lebt lebend lebendig amleben vivo viva vive',
    died: '† + died dead deceased tot gestorben verstorben muerto muerta murio fallecido',
    gone:
      'gone sold given givenaway traded swapped verkauft abgegeben weg getauscht verschenkt ' +
      'vendido vendida cedido cedida regalado regalada cambiado',
    unknown: '? unknown unbekannt desconocido desconocida',
  },
  sourceKind: {
    import: 'import imported importiert einfuhr importacion importado importada',
    'wild-collection': 'wildcollection wild wildcaught wc wildfang naturentnahme silvestre captura recolectado',
    purchase: 'purchase purchased bought kauf gekauft ankauf compra comprado comprada',
    unknown: '? unknown unbekannt desconocido desconocida',
  },
};

const wordsOf = new Map(
  Object.entries(vocabularies).map(([column, meanings]) => [
    column,
    new Map(Object.entries(meanings).flatMap(([meaning, words]) => words.split(' ').map((word) => [word, meaning]))),
  ]),
);

/** What a cell of a closed vocabulary means in the register's own word; the cell itself where it is not understood. */
export function understood(column: SheetColumn, cell: string): string {
  if (cell.trim() === '') return cell;
  if (column === 'countryOfExport') return countryNamed(cell) ?? cell;
  const words = wordsOf.get(column);
  return words?.get(cell.trim().toLowerCase()) ?? words?.get(bareHeading(cell)) ?? cell;
}

/** Whether the cells of a column could belong to a closed vocabulary: nine in ten are words of it. */
export function isMostlyOf(column: SheetColumn, cells: readonly string[]): boolean {
  const words = wordsOf.get(column);
  const written = cells.filter((cell) => cell.trim() !== '');
  const known = written.filter((cell) => words?.has(cell.trim().toLowerCase()) || words?.has(bareHeading(cell)));
  return written.length > 0 && known.length >= 0.9 * written.length;
}

let countries: Map<string, string> | undefined;

/** The code of a country by its name in English, German or Spanish; null where the text is no such name. */
function countryNamed(text: string): string | null {
  countries ??= countryNames();
  return countries.get(text.trim().toLowerCase()) ?? null;
}

function countryNames(): Map<string, string> {
  const names = new Map<string, string>();
  const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
  for (const language of ['en', 'de', 'es']) {
    const inLanguage = new Intl.DisplayNames([language], { type: 'region', fallback: 'none' });
    for (const first of letters)
      for (const second of letters) {
        const name = inLanguage.of(first + second);
        if (name !== undefined && first + second !== 'ZZ') names.set(name.toLowerCase(), first + second);
      }
  }
  return names;
}
