import { seededRandom } from './kernel-shapes.ts';

/**
 * A made-up register sheet as a club might have it: 200 lines of founders with sources, then clutches of five with a code,
 * dates of laying and hatching and a remark here and there. Nobody's animals; the species names are real.
 *
 * @param rows how many animals
 */
export function sheetOfClub(rows: number, seed = 1): string {
  const random = seededRandom(seed);
  const pick = (count: number): number => Math.floor(random() * count);
  const lines = 200;
  const breeders = 20;
  const founders = lines * breeders;
  const text = [
    'code,species,line,sex,sire,dam,clutch,source,source kind,source date,label,laid,hatched,out of water,status,notes\n',
  ];
  const seats = Array.from({ length: founders }, (_, animal) => animal);
  for (let animal = 0; animal < founders; animal++) {
    const line = Math.floor(animal / breeders);
    const origin = `S-${line},${animal % breeders === 0 ? `import,${1990 + (line % 10)}~,Line ${line}` : ',,'}`;
    text.push(`${codeOf(animal)},${speciesOf(line)},Line ${line},${sexOf(animal)},,,,${origin},,,,gone,\n`);
  }
  const half = breeders / 2;
  let sire = 0;
  let dam = 0;
  for (let animal = founders, clutch = 0; animal < rows; animal++) {
    const place = (animal - founders) % 5;
    if (place === 0) clutch++;
    const line = clutch % lines;
    if (place === 0) {
      sire = seats[line * breeders + 2 * pick(half)] ?? 0;
      dam = seats[line * breeders + 2 * pick(half) + 1] ?? 1;
    }
    const day = new Date(Date.UTC(1996, 0, 1) + Math.floor(clutch / 3) * 86_400_000);
    const dates = [day, later(day, 14), later(day, 104)].map((date) => date.toISOString().slice(0, 10)).join(',');
    const notes = random() < 0.3 ? `"seen well, ${pick(40)} mm; tank ${pick(300)}"` : '';
    const names = `${codeOf(animal)},${speciesOf(line)},Line ${line},${sexOf(animal)},${codeOf(sire)},${codeOf(dam)}`;
    text.push(`${names},C-${clutch},,,,,${dates},alive,${notes}\n`);
    // Every line has a clutch in 67 days; an animal of six rounds ago is grown and takes the seat of one of its sex.
    const grown = animal - 6 * 5 * lines;
    if (place === 4 && grown >= founders) seats[line * breeders + (grown % 2) + 2 * pick(half)] = grown;
  }
  return text.join('');
}

const codeOf = (animal: number): string => `LK-${String(animal).padStart(6, '0')}`;
const sexOf = (animal: number): string => (animal % 2 === 0 ? 'm' : 'f');
const speciesOf = (line: number): string =>
  ['Epipedobates anthonyi', 'Ranitomeya imitator', 'Phyllobates vittatus'][line % 3] ?? '';
const later = (day: Date, days: number): Date => new Date(day.getTime() + days * 86_400_000);
