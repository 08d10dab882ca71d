import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { picture } from './made-pictures.ts';
import { askAs, setUpClub, startService, type Service } from './service.ts';

/** Names as long as they come: compounds without a space, accents, capitals that are wide. All invented. */
export const long = {
  line: 'Großschluchtensteinbachquellgebietsunterlauf, Ñandúes y Peñaflorida del Río Zañ-Ümlaut',
  place: 'Donautalschleifenmühlbachuferwiesengrundstücksgrenze hinter San Ñicolás de los Aguacatales Altos',
  code: 'WWWW-GROßSCHLÜCHTERN-ÑANDÚES-2019-000001',
  group: 'Regalbrett links oben im Kellerraum hinter der Treppe, Doppelbecken mit Rückwandbepflanzung und Überlauf',
  notes: `${'Langeaufzeichnungohneleerzeichen'.repeat(12)} ${'and then many ordinary words of one long evening. '.repeat(160)}`,
};

/** How much of everything there is. */
export const much = { line: 5000, young: 300, claims: 40, photographs: 60, members: 12 };

/** A register that is fuller than any that keepers have, over the API of a service of its own. */
export class VeryFullClub {
  private constructor(
    private readonly folder: string,
    private readonly service: Service,
    readonly cookie: string,
    /** Ids of what the screens show one of. */
    readonly ids: { animal: string; line: string; source: string; pairing: string; clutch: string; species: string },
  ) {}

  static async open(): Promise<VeryFullClub> {
    const folder = mkdtempSync(join(tmpdir(), 'linekeeper-full-'));
    const service = await startService({ DATA_DIR: join(folder, 'data') });
    const cookie = await setUpClub(service);
    const writer = new Writer(service.url, cookie);
    await writer.send('imports', madeSheet());
    return new VeryFullClub(folder, service, cookie, await fill(writer));
  }

  get url(): string {
    return this.service.url;
  }

  async close(): Promise<void> {
    this.service.process.kill('SIGTERM');
    await this.service.ended;
    rmSync(this.folder, { recursive: true, force: true });
  }
}

class Writer {
  constructor(
    private readonly url: string,
    private readonly cookie: string,
  ) {}

  async send<Answer = { id: string }>(path: string, body: object | string, method = 'POST'): Promise<Answer> {
    const isSheet = typeof body === 'string';
    const isForm = body instanceof FormData;
    const answer = await askAs(this.cookie, `${this.url}/api/v1/${path}`, {
      method,
      headers: {
        ...(isForm ? {} : { 'Content-Type': isSheet ? 'text/csv' : 'application/json' }),
        ...(method === 'PATCH' ? { 'If-Match': '*' } : {}),
      },
      body: isSheet || isForm ? body : JSON.stringify(body),
    });
    expect([path, answer.status, answer.ok ? '' : await answer.clone().text()]).toEqual([path, answer.status, '']);
    return (await answer.json()) as Answer;
  }

  async read<Answer>(path: string): Promise<Answer> {
    return (await (await askAs(this.cookie, `${this.url}/api/v1/${path}`)).json()) as Answer;
  }
}

/** One sire with three hundred young, and a line of five thousand in which everybody descends from him. */
function madeSheet(): string {
  const head = 'code,species,line,sex,sire,dam,clutch,source,source kind,source date,label,hatched,status,notes';
  const row = (...cells: string[]): string => cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(',');
  const founder = (code: string, sex: string): string =>
    row(
      code,
      'Epipedobates anthonyi',
      long.line,
      sex,
      '',
      '',
      '',
      'S-1',
      'import',
      '1994~',
      long.place,
      '2014',
      'alive',
      '',
    );
  const rows = [founder(long.code, 'm'), founder('F-2', 'f'), founder('F-3', 'f')];
  const born = (code: string, sire: string, dam: string, clutch: string, year: number): void => {
    const sex = ['m', 'f', 'u'][rows.length % 3] ?? 'u';
    rows.push(
      row(code, 'Epipedobates anthonyi', long.line, sex, sire, dam, clutch, '', '', '', '', String(year), 'alive', ''),
    );
  };
  for (let young = 0; young < much.young; young++)
    born(
      `Y-${young}`,
      long.code,
      young % 2 === 0 ? 'F-2' : 'F-3',
      `C-${Math.floor(young / 10)}-${young % 2}`,
      2015 + (young % 4),
    );
  // Y-0, Y-3, … are of one sex, Y-1, Y-4, … of another: sex follows the row
  const ofSex = (sex: string): string[] =>
    rows.flatMap((line, at) => (at > 2 && line.includes(`"${sex}",`) ? [`Y-${at - 3}`] : []));
  const [sires, dams] = [ofSex('m'), ofSex('f')];
  for (let at = rows.length; at < much.line; at++) {
    const family = Math.floor(at / 8);
    born(`L-${at}`, sires[family % 40] ?? '?', dams[family % 40] ?? '?', `K-${family}`, 2019 + (family % 7));
  }
  return [head, ...rows].join('\n');
}

async function fill(writer: Writer): Promise<VeryFullClub['ids']> {
  const list = async (query: string) =>
    (
      await writer.read<{ items: { id: string; number: string; speciesId: string; lineId: string }[] }>(
        `individuals?${query}`,
      )
    ).items;
  const [sire] = await list(`code=${encodeURIComponent(long.code)}`);
  if (!sire) throw new Error('the sheet has no such sire');
  const individual = await writer.read<{ speciesId: string; lineId: string; source: { id: string } }>(
    `individuals/${sire.id}`,
  );
  const { speciesId, lineId } = individual;
  await writer.send(`individuals/${sire.id}`, { notes: long.notes.slice(0, 9900) }, 'PATCH');
  await writer.send(`species/${speciesId}`, { commonName: long.place, nativeRange: ['EC', 'PE', 'BO', 'CO'] }, 'PATCH');
  for (let at = 0; at < much.claims; at++)
    await writer.send('claims', {
      sourceId: individual.source.id,
      aspect: 'locality',
      value: `${long.place.slice(0, 80)} ${at}`,
      statedBy: 'Jürgen Großmüller-Ñuñez de la Peña y Castañeda',
      statedOn: '1994~',
      countryCode: 'EC',
    });
  await photograph(writer, sire.id);
  const females = await list(`sex=female&limit=${much.members - 1}`);
  const members = [sire, ...females].map(({ id }) => ({ individualId: id, joined: '2020-01-01' }));
  const pairing = await writer.send('pairings', { name: long.group, notes: long.notes.slice(0, 900), members });
  for (let day = 1; day < 29; day++)
    await writer.send('clutches', {
      pairingId: pairing.id,
      laid: `2024-02-${String(day).padStart(2, '0')}`,
      eggs: 40,
      site: long.group.slice(0, 40),
    });
  const { items } = await writer.read<{ items: { id: string }[] }>(`clutches?pairingId=${pairing.id}&limit=1`);
  return {
    animal: sire.id,
    line: lineId,
    source: individual.source.id,
    pairing: pairing.id,
    clutch: items[0]?.id ?? '',
    species: speciesId,
  };
}

async function photograph(writer: Writer, individualId: string): Promise<void> {
  for (let at = 0; at < much.photographs; at++) {
    const form = new FormData();
    form.set('individualId', individualId);
    form.set('view', 'back');
    form.set('takenOn', `20${String(15 + (at % 10))}-0${1 + (at % 9)}`);
    if (at % 7 === 0) form.set('notes', long.place);
    form.set(
      'file',
      new Blob([new Uint8Array(await picture(90, 60, at).jpeg().toBuffer())], { type: 'image/jpeg' }),
      'back.jpg',
    );
    await writer.send('photographs', form);
  }
}
