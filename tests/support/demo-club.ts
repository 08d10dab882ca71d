import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { bringCookie, openBrowser, openPage } from './browser.ts';
import { askAs, setUpClub, signInToDemo, startService, type Service } from './service.ts';

/** Where pictures of the pages go, if somebody wants to look at them. */
const seen = process.env['LOOK_AT'];

export const desk = { width: 1440, height: 1000 };

/** The built service with the invented club, and a browser that looks at it. */
export class DemoClub {
  /** What went wrong on any page: errors of the console, and requests that left this machine. */
  readonly faults: string[] = [];

  private constructor(
    private readonly folder: string,
    private readonly service: Service,
    private readonly browser: Browser,
    /** Of the keeper who may do everything. */
    readonly cookie: string,
  ) {}

  /** @param chromium the browser's program */
  static async open(chromium: string | null): Promise<DemoClub> {
    const folder = mkdtempSync(join(tmpdir(), 'linekeeper-demo-'));
    const service = await startService({ DATA_DIR: join(folder, 'data'), SEED_DEMO: 'true' });
    return new DemoClub(folder, service, await openBrowser(chromium ?? ''), await signInToDemo(service));
  }

  /** The same with a register that holds nothing, set up by its first administrator. */
  static async empty(chromium: string | null): Promise<DemoClub> {
    const folder = mkdtempSync(join(tmpdir(), 'linekeeper-empty-'));
    const service = await startService({ DATA_DIR: join(folder, 'data') });
    return new DemoClub(folder, service, await openBrowser(chromium ?? ''), await setUpClub(service));
  }

  get url(): string {
    return this.service.url;
  }

  /**
   * A page of its own, signed in as an invented keeper; left out, as the one who may do everything. `at`: the address under which it reaches
   * the service, if not its own.
   */
  async page(size = desk, keeper?: string, at = this.url): Promise<Page> {
    const context = await this.browser.newContext({ viewport: size });
    await bringCookie(context, at, keeper === undefined ? this.cookie : await signInToDemo(this.service, keeper));
    return openPage(context, this.faults);
  }

  /** A page of somebody who is not signed in. */
  async strangersPage(size = desk): Promise<Page> {
    return openPage(await this.browser.newContext({ viewport: size }), this.faults);
  }

  /** Reads from the API. */
  async read<Answer>(path: string): Promise<Answer> {
    return (await (await askAs(this.cookie, `${this.url}/api/v1/${path}`)).json()) as Answer;
  }

  /** Asks the API for figures by POST. */
  async ask<Answer>(path: string, body: object): Promise<Answer> {
    const answer = await askAs(this.cookie, `${this.url}/api/v1/${path}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(body),
    });
    expect([path, answer.status]).toEqual([path, 200]);
    return (await answer.json()) as Answer;
  }

  /** Adds something by the API, as an invented keeper if one is named. */
  async write<Answer = { id: string }>(path: string, body: object, keeper?: string): Promise<Answer> {
    const cookie = keeper === undefined ? this.cookie : await signInToDemo(this.service, keeper);
    const answer = await askAs(cookie, `${this.url}/api/v1/${path}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(body),
    });
    expect([path, answer.status]).toEqual([path, 201]);
    return (await answer.json()) as Answer;
  }

  /** Brings a register sheet in. */
  async sheet(text: string): Promise<void> {
    const answer = await askAs(this.cookie, `${this.url}/api/v1/imports`, {
      method: 'POST',
      headers: { 'Content-Type': 'text/csv' },
      body: text,
    });
    expect([answer.status, answer.status === 201 ? '' : await answer.text()]).toEqual([201, '']);
  }

  /** Changes a record by the API, whatever version it has. */
  async change(path: string, body: object): Promise<void> {
    const answer = await askAs(this.cookie, `${this.url}/api/v1/${path}`, {
      method: 'PATCH',
      headers: { 'Content-Type': 'application/json', 'If-Match': '*' },
      body: JSON.stringify(body),
    });
    expect([path, answer.status]).toEqual([path, 200]);
  }

  /** A clutch of which more than two young live, and those. */
  async clutchOfLiving(): Promise<{ clutchId: string; living: { number: string; code: string }[] }> {
    const { items } = await this.read<{ items: { id: string }[] }>('clutches?limit=200');
    for (const { id } of items) {
      const { young } = await this.read<{ young: { number: string; code: string; status: string }[] }>(
        `clutches/${id}`,
      );
      const living = young.filter(({ status }) => status === 'alive');
      if (living.length > 2) return { clutchId: id, living };
    }
    throw new Error('the invented club has no clutch of which three young live');
  }

  /** Takes a picture of the whole page, where somebody wants to look at it. */
  async look(page: Page, name: string): Promise<void> {
    if (seen) await page.screenshot({ path: join(seen, `${name}.png`), fullPage: true });
  }

  async close(): Promise<void> {
    await this.browser.close();
    this.service.process.kill('SIGTERM');
    await this.service.ended;
    rmSync(this.folder, { recursive: true, force: true });
  }
}
