import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { isStranger } from '../../people/visibility.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import {
  claimEvents,
  inOrder,
  LineNames,
  lineEvents,
  receivedEvents,
  renamingEvents,
  verdictEvents,
} from './label-events.ts';
import {
  findAnimal,
  HISTORY_MOST,
  readClaims,
  readEntriesOf,
  readLines,
  readSource,
  readSourcesOfLine,
  readVerdicts,
  type LineRow,
} from './label-history.queries.ts';
import type { LabelEventView, LabelHistoryView } from './label-history.view.ts';
import { say } from '../../platform/say.ts';

type About = Parameters<typeof readClaims>[1];

/** What animals and lines were called, by whom, and every change since. */
@Injectable()
export class LabelHistoryService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** The history of the label of an animal, by its id or registry number; 404 where there is none that may be seen. */
  async ofAnimal(name: string): Promise<LabelHistoryView> {
    const manager = this.dataSource.manager;
    const animal = await findAnimal(manager, name);
    if (!animal) throw new NotFoundProblem(say`animal`, name);
    const entries = await readEntriesOf(manager, 'individual', [animal.id], 'lineId');
    const lineIds = [...new Set([animal.lineId, ...entries.flatMap(({ from, to }) => [from, to])])].filter(
      (id) => id !== null,
    );
    const lines = await readLines(manager, lineIds);
    const renamings = await readEntriesOf(manager, 'line', lineIds, 'name');
    const sources = await readSource(manager, animal.sourceId);
    const number = formatRegistryNumber(animal.number);
    const record = {
      kind: 'individual' as const,
      id: animal.id,
      title: animal.code === null ? number : `${animal.code} (${number})`,
    };
    const about = { individualId: animal.id, lineIds, sourceIds: sources.map(({ id }) => id) };
    const own = lineEvents(animal, record, entries, new LineNames(lines, renamings));
    // a line that the animal was in was called something else before and after: that is no history of this animal
    const since = own[0]?.at ?? '';
    const renamed = renamingEvents(renamings, lines).filter(({ at }) => (at ?? '') >= since);
    const events = [...receivedEvents(sources), ...own, ...renamed, ...(await eventsOfClaims(manager, about))];
    return toView(lines.find(({ id }) => id === animal.lineId) ?? null, events, entries);
  }

  /** The history of the label of a line, with those under which its founders came; 404 where there is none. */
  async ofLine(id: string): Promise<LabelHistoryView> {
    const manager = this.dataSource.manager;
    const lines = await readLines(manager, [id]);
    const [line] = lines;
    if (!line) throw new NotFoundProblem(say`line`, id);
    const renamings = await readEntriesOf(manager, 'line', [line.id], 'name');
    const sources = await readSourcesOfLine(manager, line.id);
    const record = { kind: 'line' as const, id: line.id, title: line.name };
    const entered: LabelEventView = {
      event: 'entered',
      date: line.createdAt.toISOString().slice(0, 10),
      at: line.createdAt.toISOString(),
      who: line.keeper,
      label: renamings.find(({ isAdding }) => !isAdding)?.from ?? line.name,
      before: null,
      reason: null,
      record,
    };
    const about = { individualId: null, lineIds: [line.id], sourceIds: sources.map((source) => source.id) };
    const events = [
      ...receivedEvents(sources.slice(0, HISTORY_MOST)),
      entered,
      ...renamingEvents(renamings, lines),
      ...(await eventsOfClaims(manager, about)),
    ];
    return toView(line, events, renamings);
  }
}

async function eventsOfClaims(manager: EntityManager, about: About): Promise<LabelEventView[]> {
  const claims = await readClaims(manager, about);
  const ids = claims.map(({ id }) => id);
  const entries = isStranger() ? [] : await readEntriesOf(manager, 'claim', ids, 'value');
  return [...claimEvents(claims, entries, isStranger()), ...verdictEvents(await readVerdicts(manager, ids))];
}

function toView(
  line: LineRow | null,
  events: readonly LabelEventView[],
  entries: readonly unknown[],
): LabelHistoryView {
  return {
    present: line === null ? null : { name: line.name, kind: line.labelKind },
    events: inOrder(events).slice(0, HISTORY_MOST),
    isCut: events.length > HISTORY_MOST || entries.length > HISTORY_MOST,
  };
}
