import { dateInWords } from '../../../shared/date-words.ts';
import { qrCode } from '../../../shared/qr-code.ts';
import type {
  SheetAncestor,
  SheetAnimal,
  SheetClutch,
  SheetDocument,
  SheetSource,
} from '../../../shared/sheet/sheet-document.ts';
import { SHEET_GENERATIONS } from '../../../shared/sheet/sheet-document.ts';
import { Paper } from '../../platform/pdf/paper.ts';
import { percent } from '../../provenance/flag-words.ts';
import { drawChart, nameOf, recordsOf, type SheetRecords } from './sheet-paper-chart.ts';
import { standingInWords } from './sheet-animal.ts';

/** Height of the code, in points: three centimetres. */
const CODE = 85;

/** A provenance sheet on paper: what the signed file says, in words, with its ancestors drawn and the code of its public page. */
export async function sheetPaper(sheet: SheetDocument, keyId: string): Promise<Uint8Array> {
  const title = `Provenance sheet ${sheet.number}`;
  const paper = new Paper(title, new Date(sheet.issued));
  const records = recordsOf(sheet);
  paper.title(title);
  paper.text(
    [
      sheet.issuer.invented ? `${sheet.issuer.register} (an invented club)` : sheet.issuer.register,
      `issued ${sheet.issued.slice(0, 10)}`,
      sheet.validUntil === null ? 'valid until it is replaced or revoked' : `valid until ${sheet.validUntil}`,
      ...(sheet.keeper === null ? [] : [`keeper ${sheet.keeper}`]),
    ].join(' · '),
  );
  drawCode(paper, sheet.lookUp);
  for (const animal of sheet.animals) writeAnimal(paper, animal, sheet, records);
  writeCharts(paper, sheet, records);
  writeAncestors(paper, sheet, records);
  writeSources(paper, sheet.sources);
  paper.heading('Keep in mind');
  paper.list(sheet.cautions);
  paper.remark(
    `This paper tells what the signed file ${sheet.number}.json says; the file, signed with the key ${keyId}, is what can be checked. Shares, odds and inbreeding are parts of 100.`,
  );
  return paper.finish([sheet.issuer.register, title, sheet.issued.slice(0, 10)].join(' · '));
}

/** The code of the public page, with its address beside it; a register without an address of its own has none to print. */
function drawCode(paper: Paper, address: string): void {
  if (!/^https?:/u.test(address)) {
    paper.remark(`The register tells under ${address} whether this sheet still stands.`);
    return;
  }
  paper.figure(CODE + 20, `QR code of the address ${address}`, (drawing) => {
    const { path, size } = qrCode(address);
    drawing.shape(path, 0, 10, CODE / size);
    const beside = CODE + 14;
    drawing.text('Is it genuine, does it still stand, and what does the register say today?', beside, 18, 380);
    drawing.text(address, beside, 32, 380);
  });
}

function writeAnimal(paper: Paper, animal: SheetAnimal, sheet: SheetDocument, records: SheetRecords): void {
  const { number, code, species, commonName, label, inbreeding, completeness } = animal;
  paper.heading(code === null ? number : `${number} · ${code}`);
  paper.text(
    [
      commonName === null ? species : `${species} (${commonName})`,
      animal.sexKnownBy === null ? animal.sex : `${animal.sex}, known by ${animal.sexKnownBy}`,
      animal.status,
      ...(animal.citesAppendix === null ? [] : [`CITES Appendix ${animal.citesAppendix}`]),
    ].join(' · '),
  );
  const range =
    inbreeding.least === inbreeding.greatest
      ? ''
      : `, from ${share(inbreeding.least)} to ${share(inbreeding.greatest)} by who the parents are`;
  const back =
    completeness === null
      ? ''
      : `, completeness ${share(completeness.index)} over ${completeness.generations} generations`;
  paper.list([
    `Hatched: ${dated(animal.hatched)}. Out of the water: ${dated(animal.outOfWater)}.`,
    `Line: ${animal.line ?? 'none'}. Label: ${label.name ?? 'none'}${label.kind === null ? '' : ` (${label.kind})`}: ${label.inWords}; traced ${percent(label.tracedShare.expected)}, at least ${percent(label.tracedShare.least)}.`,
    ...(label.flags.length === 0
      ? []
      : [`Held against the label: ${label.flags.map(({ code: flag }) => flag.replaceAll('-', ' ')).join(', ')}.`]),
    `Parents: ${parentsIn(animal, records)}.`,
    inbreeding.nothingKnown
      ? 'Inbreeding: nothing known.'
      : `Inbreeding: ${share(inbreeding.expected)}${range}; both parents known to ${percent(inbreeding.bothParentsKnown)}.`,
    `Pedigree: depth ${animal.depth}, all ancestors known over ${animal.fullDepth}, ${Number(animal.generationEquivalents.toFixed(2))} generation equivalents${back}.`,
    `Generations since the wild: ${animal.filialGeneration ?? 'not known'}. This decides no permit.`,
    `Genes from: ${animal.origins.map((origin) => `${originIn(origin.ref, origin.kind, sheet, records)} ${percent(origin.share)} (${origin.standing})`).join('; ')}.`,
    ...animal.photographs.map(
      ({ sha256, view, takenOn }) =>
        `Photograph${view === null ? '' : ` of the ${view}`}, ${dated(takenOn)}: SHA-256 ${sha256}`,
    ),
  ]);
}

const share = (value: number): string => `${Number((100 * value).toFixed(2))} %`;
const dated = (date: string | null): string => (date === null ? 'not recorded' : dateInWords(date));

function originIn(ref: string | null, kind: string, sheet: SheetDocument, { animals }: SheetRecords): string {
  if (kind === 'unknown-parent') return 'an unknown parent';
  if (kind === 'source') return sheet.sources.find((source) => source.ref === ref)?.title ?? 'a private source';
  return ref === null ? 'a founder' : nameOf(animals.get(ref) ?? null);
}

function parentsIn({ clutch, source }: Pick<SheetAnimal, 'clutch' | 'source'>, records: SheetRecords): string {
  const own = clutch === null ? undefined : records.clutches.get(clutch);
  if (own) return clutchIn(own, records);
  return source === null ? 'unknown' : 'it came from a source';
}

function clutchIn(clutch: SheetClutch, { animals }: SheetRecords): string {
  const parents = clutch.parents.map(({ animal, as, probability }) => {
    const odds = probability < 1 ? `, ${percent(probability)}` : '';
    return `${nameOf(animals.get(animal) ?? null)} (${as === 'either' ? 'sire or dam' : as}${odds})`;
  });
  const unknown = [
    clutch.unknownSire > 0 ? `unknown sire ${percent(clutch.unknownSire)}` : '',
    clutch.unknownDam > 0 ? `unknown dam ${percent(clutch.unknownDam)}` : '',
  ].filter((one) => one !== '');
  return [...parents, ...unknown].join('; ') || 'unknown';
}

/** A chart for each clutch that animals of the sheet came from. */
function writeCharts(paper: Paper, { animals }: SheetDocument, records: SheetRecords): void {
  const clutches = new Map<string, string[]>();
  for (const { clutch, number } of animals)
    if (clutch !== null) clutches.set(clutch, [...(clutches.get(clutch) ?? []), number]);
  if (clutches.size === 0) return;
  paper.heading(`Ancestors over ${SHEET_GENERATIONS} generations`);
  for (const [ref, numbers] of clutches) {
    const clutch = records.clutches.get(ref);
    if (clutch)
      drawChart(paper, clutch, records, numbers.length > 3 ? `${numbers.length} of a clutch` : numbers.join(', '));
  }
}

const columns = [
  { head: 'Ancestor', width: 0.14 },
  { head: 'Sex', width: 0.1 },
  { head: 'Hatched', width: 0.14 },
  { head: 'Line', width: 0.2 },
  { head: 'Standing', width: 0.18 },
  { head: 'Parents or source', width: 0.24 },
] as const;

function writeAncestors(paper: Paper, sheet: SheetDocument, records: SheetRecords): void {
  if (sheet.ancestors.length === 0) return;
  paper.table(
    columns,
    sheet.ancestors.map((ancestor) => [
      ancestor.number ?? 'private animal',
      ancestor.sex ?? '',
      ancestor.hatched === null ? '' : dateInWords(ancestor.hatched),
      ancestor.line ?? '',
      standingInWords(ancestor.standings),
      comesFrom(ancestor, sheet, records),
    ]),
  );
}

function comesFrom(ancestor: SheetAncestor, sheet: SheetDocument, records: SheetRecords): string {
  const source = sheet.sources.find(({ ref }) => ref === ancestor.source);
  if (source) return source.title;
  if (ancestor.hasMoreAncestors) return 'recorded, further back than this sheet goes';
  return parentsIn(ancestor, records);
}

function writeSources(paper: Paper, sources: readonly SheetSource[]): void {
  if (sources.length === 0) return;
  paper.heading('Sources');
  paper.list(
    sources.map((source) => {
      if (source.isPrivate) return 'A private source.';
      const parts = [
        source.title,
        ...(source.countryOfExport === null ? [] : [`exported from ${source.countryOfExport}`]),
        ...(source.labelAsReceived === null ? [] : [`received as “${source.labelAsReceived}”`]),
        ...(source.permitReferences.length === 0 ? [] : [`permits ${source.permitReferences.join(', ')}`]),
      ].join('; ');
      return [`${parts}.`, ...source.claims.map(({ value, because }) => `“${value}”: ${because}`)].join(' ');
    }),
  );
}
