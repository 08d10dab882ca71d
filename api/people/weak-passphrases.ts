import { InvalidProblem } from '../platform/problem.ts';

/**
 * Words that most guessed passphrases are made of. Those of eight letters and more are refused as they are, all of them with the digits
 * and signs that people put around a word, and with the digits and signs that look like letters.
 */
const guessed = new Set(
  `password passwort passphrase passwords passcode motdepasse contrasena contrasenya wachtwoord salasana losenord heslo haslo parola senha
  qwerty qwertyui qwertyuiop qwertz qwertzui qwertzuiop azerty azertyuiop asdf asdfgh asdfghjk asdfghjkl zxcvbn zxcvbnm yxcvbnm qazwsx
  qazwsxedc zaqxswcde qweasd qweasdzxc qwer qwert asdfasdf qweqwe asdasd zxczxc
  abc abcd abcde abcdef abcdefg abcdefgh abcabc aaaaaaaa
  letmein welcome willkommen bienvenue bienvenido welkom login signin access admin administrator root user guest test testtest testing
  default changeme change newpass temp temporary secret topsecret private master superuser system server computer internet
  iloveyou loveyou iloveu ilovefrogs love lovely lover sweetheart darling honey princess prince angel babygirl baby beautiful sunshine
  flower butterfly rainbow star starlight moonlight heaven forever friends friend family mother father daddy mommy
  dragon monkey tiger lion eagle falcon panther wolf bear horse dolphin shark snake spider kitten puppy chicken turtle penguin
  frog frogs froggy frogger poisonfrog dartfrog dartfrogs treefrog tadpole toad amphibian terrarium vivarium paludarium dendrobates
  ranitomeya oophaga phyllobates epipedobates linekeeper
  football baseball basketball soccer hockey tennis golfer cricket rugby hunter fishing killer batman superman spiderman
  pokemon naruto starwars matrix trustno shadow ninja samurai warrior knight wizard merlin phoenix
  michael jennifer jessica daniel thomas robert andrew joshua matthew anthony william charlie jordan george
  nicole ashley michelle samantha amanda hannah alexander christian benjamin sebastian patrick
  summer winter spring autumn january february march april june july august september october november december
  monday tuesday wednesday thursday friday saturday sunday sommer herbst
  london paris berlin madrid amsterdam germany deutschland france america canada england holland
  freedom whatever nothing something hello hallo bonjour hola mustang corvette porsche ferrari mercedes
  diamond silver golden purple orange yellow green black white blue chocolate cookie cheese pepper ginger banana peanut
  apple google facebook microsoft windows samsung android iphone
  147258369 741852963 987456321 159753852 123698745 741258963 135792468 246813579 14725836 15975346 19871987 31415926`.split(
    /\s+/,
  ),
);

const lookalikes: Readonly<Record<string, string>> = {
  '0': 'o',
  '1': 'i',
  '3': 'e',
  '4': 'a',
  '5': 's',
  '7': 't',
  '8': 'b',
  '@': 'a',
  $: 's',
  '!': 'i',
};

/**
 * Refuses with 422 a passphrase that is among those guessed first: a common word with digits around it, one piece over and over, a row
 * of neighbours, or a name that everybody here knows.
 */
export function refuseWeak(passphrase: string, names: readonly string[], pointer: string): void {
  const detail = weaknessOf(passphrase, names);
  if (detail !== null) throw new InvalidProblem(detail, [{ pointer, detail }]);
}

function weaknessOf(passphrase: string, names: readonly string[]): string | null {
  const letters = passphrase.normalize('NFKC').toLowerCase().replace(/\s+/g, '');
  const readings = [letters, bare(letters), bare([...letters].map((sign) => lookalikes[sign] ?? sign).join(''))];
  if (readings.some((word) => guessed.has(word) || guessed.has(word.replace(/i+$/, ''))))
    return 'This passphrase is among those that are guessed first. Take four or five words that do not belong together.';
  if (isMonotonous(letters))
    return 'This passphrase repeats itself or follows the keys in a row. Take four or five words that do not belong together.';
  const known = names.map((name) => bare(name.normalize('NFKC').toLowerCase().replace(/\s+/g, '')));
  if (known.some((name) => name.length > 2 && readings.includes(name)))
    return 'This passphrase is a name that everybody here knows. Take four or five words that do not belong together.';
  return null;
}

/** A word without the digits and signs around it. */
const bare = (text: string): string => text.replace(/^[^\p{L}]+|[^\p{L}]+$/gu, '');

/** One piece of up to four characters over and over, or characters that follow each other up or down. */
function isMonotonous(text: string): boolean {
  if (/^(.{1,4}?)\1+.{0,3}$/u.test(text) && new Set(text).size <= 4) return true;
  const codes = [...text].map((sign) => sign.codePointAt(0) ?? 0);
  const steps = codes.slice(1).map((code, index) => code - (codes[index] ?? 0));
  return steps.filter((step) => Math.abs(step) <= 1).length >= steps.length - 1 && new Set(steps).size <= 3;
}
