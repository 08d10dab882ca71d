import type pg from 'pg';
import { emptyFacts, writeFacts } from './kernel/clutch-facts.ts';
import { emptyFigures, type ClutchFigures } from './kernel/figures.ts';
import { computeInbreeding } from './kernel/inbreeding.ts';
import { orderPedigree } from './kernel/order.ts';
import { founderKinds, inSharedMemory, type LineageParts } from './lineage-memory.ts';
import { readRegister } from './read-register.ts';
import { readRevisionIn, type Revision } from './register-rows.queries.ts';

/** The whole register with all its figures, as one moment saw it. */
export interface LineageReading {
  readonly revision: Revision;
  readonly parts: LineageParts;
}

/** How a reading may go about it. */
export interface ReadingOptions {
  /** Most bytes that the matrix of a frontier sweep may take. */
  readonly frontierBytes: number;
}

/**
 * Reads the register whole and computes every figure from nothing.
 *
 * @param client in a REPEATABLE READ transaction
 */
export async function readLineage(client: pg.ClientBase, options: ReadingOptions): Promise<LineageReading> {
  const revision = await readRevisionIn(client);
  const store = await readRegister(client);
  const { pedigree, sources } = store.show();
  const order = orderPedigree(pedigree);
  const computed = computeInbreeding(pedigree, { order, ...options });
  const facts = emptyFacts(order.clutches.length);
  writeFacts(pedigree, founderKinds(sources), facts, order.clutches);
  const knowledge = {
    figures: sharedFigures(computed),
    facts: {
      depth: inSharedMemory(facts.depth),
      fullDepth: inSharedMemory(facts.fullDepth),
      filial: inSharedMemory(facts.filial),
      equivalents: inSharedMemory(facts.equivalents),
    },
    stale: inSharedMemory(new Uint8Array(order.clutches.length)),
  };
  const clutches = inSharedMemory(order.clutches);
  return { revision, parts: { store: store.parts, clutches, positionOf: inSharedMemory(order.positionOf), knowledge } };
}

function sharedFigures(figures: ClutchFigures): ClutchFigures {
  const names = Object.keys(emptyFigures(0)) as (keyof ClutchFigures)[];
  return Object.fromEntries(names.map((name) => [name, inSharedMemory(figures[name])])) as unknown as ClutchFigures;
}
