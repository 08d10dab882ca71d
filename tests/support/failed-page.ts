import { afterEach } from 'vitest';
import { openPages } from './browser.ts';

/** What a page says and what it asked for last, printed where a test fails: a fault that comes seldom is seen only then. */
afterEach(async ({ task }) => {
  if (task.result?.state !== 'fail') return;
  for (const { page, requests } of openPages()) {
    const text = await page
      .locator('body')
      .innerText({ timeout: 2000 })
      .catch((error: unknown) => String(error));
    const [beginning, end] = [text.slice(0, 300), text.slice(-900)].map((part) => part.replaceAll(/\s+/g, ' '));
    console.error(
      [`${task.name}, ${page.url()}: ${beginning ?? ''} … ${end ?? ''}`, ...requests.slice(-25)].join('\n  '),
    );
  }
});
