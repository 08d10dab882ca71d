/** Animals of each generation, the youngest first: twice as many in each until the breeders of a large line are all in it. */
const generations = [1, 2, 4, 8, 16, 32, 64, 64, 76];

/** The code of the animal whose ancestors are the whole of `sheetOfBroadLine`. */
export const youngestOfBroadLine = codeOf(0, 0);

/** How many animals `sheetOfBroadLine` has: 267, eight generations and the founders above them. */
export const animalsOfBroadLine = generations.reduce((sum, count) => sum + count, 0);

/**
 * A register sheet of one animal and all that stands above it in a broad line: eight generations, founders of five sources, a clutch
 * each, laid all over the months of two years a generation. Invented.
 */
export function sheetOfBroadLine(): string {
  const rows = ['code,species,line,sex,sire,dam,clutch,source,source kind,source date,label,laid,hatched,status\n'];
  generations.forEach((count, generation) => {
    const above = generations[generation + 1];
    for (let place = 0; place < count; place++) {
      const common = `${codeOf(generation, place)},Epipedobates anthonyi,Broad line,${place % 2 === 0 ? 'm' : 'f'}`;
      if (above === undefined) {
        const source = place % 5;
        rows.push(`${common},,,,Source ${source},import,${1996 + source}~,Broad line,,,gone\n`);
        continue;
      }
      const parents = [2 * place, 2 * place + 1].map((one) => codeOf(generation + 1, one % above));
      const laid = new Date(Date.UTC(2022 - 2 * generation, 0, 1) + ((place * 61) % 640) * 86_400_000);
      const hatched = new Date(laid.getTime() + 14 * 86_400_000);
      const [on, out] = [laid, hatched].map((date) => date.toISOString().slice(0, 10));
      rows.push(`${common},${parents.join(',')},C-${generation}-${place},,,,,${on},${out},alive\n`);
    }
  });
  return rows.join('');
}

function codeOf(generation: number, place: number): string {
  return `BL-${generation}${String(place).padStart(2, '0')}`;
}
