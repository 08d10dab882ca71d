import { shortId } from '../../shared/short-id.ts';
import type { DemoClub } from './demo-club.ts';

/** A screen of the client with an address at which the invented club has something to show. */
export interface Screen {
  /** The folder of its route, `/animals/[id]`. */
  route: string;
  address: string;
  /** What is seen before one signs in. */
  signedOut?: true;
}

interface Page<Item> {
  items: Item[];
}

type Named = { id: string; number: string; code: string | null; name: string; status: string };

/** Every screen of the client, each with an address of the invented club; what some of them show is first written down. */
export async function everyScreen(club: DemoClub): Promise<Screen[]> {
  const ids = await recordsToShow(club);
  const of = (route: string, values: Partial<Record<string, string>> = {}, query = ''): Screen => ({
    route,
    address: route.replace(/\[(\w+)\]/g, (_, name: string) => values[name] ?? '') + query,
  });
  const animal = { id: ids.animal.id, number: ids.animal.number };
  const line = { id: ids.line.id };
  return [
    of('/'),
    ...['/clutches', '/species', '/export', '/scan', '/waiting'].map((each) => of(each)),
    ...['/register', '/lines', '/sources', '/pairings', '/places', '/plans', '/review', '/sheets', '/transfers'].map(
      (each) => of(each),
    ),
    ...[
      '/import',
      '/import/sheet',
      '/journal',
      '/club',
      '/club/account',
      '/merge',
      '/check',
      '/help/figures',
      '/help/glossary',
    ].map((each) => of(each)),
    ...['/animals/new', '/clutches/new', '/pairings/new', '/match', '/match/group'].map((each) => of(each)),
    { ...of('/sign-in'), signedOut: true },
    // the invented club is set up; what this shows is looked at where a keeper sets one up
    of('/setup'),
    of('/animals/[id]', animal),
    of('/animals/[id]/mates', animal),
    of('/animals/[id]/descendants', animal),
    of('/animals/[id]/pedigree', animal),
    of('/round', {}, `?animals=${animal.id}`),
    // nothing waits on this device; the screen says so
    of('/waiting/[id]', { id: 'nothing' }),
    of('/species/[id]', { id: ids.species }),
    of('/n/[number]', animal),
    of('/clutches/[id]', { id: ids.clutch }),
    of('/c/[short]', { short: shortId(ids.clutch) }),
    of('/p/[short]', { short: shortId(ids.pairing) }),
    of('/cards', {}, `?pairings=${ids.pairing}&clutches=${ids.clutch}`),
    of('/pairings/[id]', { id: ids.pairing }),
    of('/sources/[id]', { id: ids.source }),
    of('/lines/[id]', line),
    of('/lines/[id]/audit', line),
    of('/lines/[id]/over-time', line),
    of('/lines/[id]/new-blood', line),
    of('/lines/[id]/plan', line),
    of('/plans/[id]', { id: ids.plan }),
    of('/transfers/[id]', { id: ids.transfer }),
    of('/transfers/new', {}, `?animals=${animal.id}`),
    of('/sheets/new', {}, `?animals=${animal.id}`),
    of('/labels', {}, `?animals=${animal.id}`),
    of('/measures', {}, `?line=${encodeURIComponent(ids.line.name)}`),
    { ...of('/s/[token]', { token: ids.sheetToken }), signedOut: true },
    { ...of('/join/[secret]', { secret: ids.secret }), signedOut: true },
  ];
}

async function recordsToShow(club: DemoClub) {
  const first = async (path: string): Promise<Named> => {
    const { items } = await club.read<Page<Named>>(path);
    const [one] = items;
    if (one === undefined) throw new Error(`the invented club has nothing at ${path}`);
    return one;
  };
  const animal = await first('individuals?q=RV-61&limit=1');
  const lines = await club.read<Page<Named>>('lines?limit=50');
  const line = lines.items.find(({ name }) => name === 'Río Zancaval');
  if (line === undefined) throw new Error('the invented club lost its line');
  return {
    animal,
    line,
    clutch: (await club.clutchOfLiving()).clutchId,
    pairing: (await first('pairings?limit=1')).id,
    source: (await first('sources?limit=1')).id,
    species: (await first('species?limit=1')).id,
    ...(await paperToShow(club, animal.id, line.id)),
  };
}

/** A plan, an offer, a sheet and a link, so that their screens have something to show. */
async function paperToShow(club: DemoClub, animalId: string, lineId: string) {
  const plan = await club.write('kept-plans', { lineId, name: 'Spring', assumptions: { pairings: 2 } });
  const { items: keepers } = await club.read<Page<Named>>('keepers');
  const to = keepers.find(({ name }) => name === 'Tobiah Quillmere')?.id;
  const species = await club.write('species', { scientificName: 'Inventus viator' });
  const leaving = await club.write('individuals', {
    speciesId: species.id,
    code: 'VG-1',
    sex: 'male',
    hatched: '2024',
  });
  const transfer = await club.write('transfers', { to, animals: [leaving.id] });
  const sheet = await club.write<{ lookUp: string }>('provenance-sheets', { animals: [animalId] });
  const link = await club.write<{ path: string }>('links', { kind: 'invitation' });
  const lastPart = (address: string): string => address.split('/').at(-1) ?? '';
  return {
    plan: plan.id,
    transfer: transfer.id,
    sheetToken: lastPart(sheet.lookUp),
    secret: lastPart(link.path),
  };
}
