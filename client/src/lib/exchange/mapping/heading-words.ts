import { columnOf, type SheetColumn } from '$shared/register-sheet.ts';

/**
 * What keepers head their columns with, in English, German and Spanish, as `bareHeading` leaves them. What stands first fits best: where
 * two columns of a sheet could be the same, the better one is taken.
 */
const words: Record<SheetColumn, string> = {
  code:
    'code animalcode keeperscode owncode animalid id identification number no animal specimen ' +
    'tiercode kennung kurzel kuerzel tiernummer tiernr tier nummer nr ' +
    'codigo codigodelanimal identificador identificacion clave numero num ejemplar animal name nombre',
  species: 'species scientificname taxon art spezies wissenschaftlichername especie nombrecientifico',
  line: 'line bloodline linie zuchtlinie stamm blutlinie linea linaje lineadecria morph locality lokalitat fundort standort localidad',
  sex: 'sex gender geschlecht sexo',
  sire: 'sire father vater vatertier elternteilm padre progenitor male mannchen macho',
  dam: 'dam mother mutter muttertier madre progenitora female weibchen hembra',
  parents: 'parents parentgroup eltern elterntiere elterngruppe zuchtgruppe padres progenitores grupodepadres grupo',
  clutch: 'clutch clutchcode clutchid spawn gelege gelegenummer gelegenr laich puesta nidada codigodepuesta',
  source: 'source sourcecode shipment lot batch herkunft quelle bezug lieferung origen fuente procedencia lote',
  sourceKind: 'sourcekind sourcetype kindofsource herkunftsart artderherkunft tipodeorigen tipodefuente',
  sourceDate:
    'sourcedate acquired acquiredon acquisitiondate dateacquired importdate imported ' +
    'erworben erwerb erwerbsdatum kaufdatum importdatum zugang fechadeorigen adquirido fechadeadquisicion fechadecompra',
  sourceBaseKinship: 'sourcebasekinship basekinship grundverwandtschaft parentescobase',
  countryOfExport:
    'countryofexport exportcountry country ausfuhrland exportland herkunftsland land paisdeexportacion pais',
  label: 'label labelasreceived tradename etikett bezeichnung handelsname etiqueta nombrecomercial',
  labelStandingNote: 'labelstandingnote labelnote notizzumetikett notadelaetiqueta',
  laid:
    'laid laidon datelaid laiddate layingdate eggslaid gelegt abgelegt ablage ablagedatum eiablage gelegedatum laichdatum ' +
    'fechadepuesta fechapuesta puestael puestaeldia oviposicion',
  hatched:
    'hatched hatchedon hatch hatchdate hatchingdate datehatched dateofbirth birthdate born dob birth ' +
    'geschlupft geschluepft schlupf schlupfdatum geburtsdatum geboren geburt ' +
    'eclosion eclosionado fechadeeclosion fechaeclosion nacido nacimiento fechadenacimiento fechanacimiento',
  outOfWater:
    'outofwater oow outofthewater morphed metamorphosis metamorphdate landgang anland landganger metamorphose metamorphosedatum ' +
    'salidadelagua salioagua fueradelagua metamorfosis fechademetamorfosis',
  died:
    'died diedon death deathdate dateofdeath dod gestorben verstorben tod todesdatum totam ' +
    'murio muerto muerte fechademuerte fallecido fallecimiento',
  status: 'status state condition zustand verbleib bestand estado situacion',
  notes:
    'notes note comment comments remark remarks bemerkung bemerkungen notiz notizen anmerkung anmerkungen kommentar ' +
    'notas nota observaciones observacion comentario comentarios',
};

const columnOfWord = new Map<string, { column: SheetColumn; rank: number }>();
for (const [column, list] of Object.entries(words) as [SheetColumn, string][])
  list.split(' ').forEach((word, rank) => {
    if (!columnOfWord.has(word)) columnOfWord.set(word, { column, rank });
  });

/** A heading without capitals, accents, marks, and what it adds in brackets: `Geschlüpft (Datum)` is `geschlupft`. */
export function bareHeading(heading: string): string {
  return heading
    .replace(/\([^)]*\)|\[[^\]]*\]/g, '')
    .normalize('NFD')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/[^\p{Letter}\p{Number}]/gu, '');
}

/** The column that a heading may mean by its words, and how well it fits: 0 is best. Null where the words are not known. */
export function guessByName(heading: string): { column: SheetColumn; rank: number } | null {
  const exact = columnOf(heading);
  return exact === null ? (columnOfWord.get(bareHeading(heading)) ?? null) : { column: exact, rank: -1 };
}
