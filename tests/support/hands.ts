import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

/** How somebody does what a page offers. */
export interface Hands {
  /** Follows a link or presses a button. */
  use: (target: Locator) => Promise<void>;
  /** Writes into a field in place of what stands there. */
  write: (field: Locator, text: string) => Promise<void>;
  /** Chooses of a list, by the words of the option. */
  choose: (list: Locator, words: string) => Promise<void>;
  /** Chooses one of several. */
  mark: (radio: Locator) => Promise<void>;
}

/** With a finger or the mouse. */
export const pointing: Hands = {
  use: (target) => target.click(),
  write: (field, text) => field.fill(text),
  choose: async (list, words) => {
    await list.selectOption({ label: words });
  },
  mark: (radio) => radio.check(),
};

/** So many steps of Tab no page needs. */
const most = 400;

/** With the keys alone: Tab until the target has the focus, and is seen to have it. */
export function typing(page: Page): Hands {
  const holds = (target: Locator): Promise<boolean> => target.evaluate((element) => element === document.activeElement);

  async function reach(target: Locator): Promise<void> {
    await target.waitFor();
    await expect.poll(() => target.isEnabled(), { timeout: 20_000 }).toBe(true);
    for (let step = 0; !(await holds(target)); step++) {
      if (step === most) throw new Error(`${String(target)} cannot be reached by Tab`);
      await page.keyboard.press('Tab');
    }
    const seen = await target.evaluate((element) => {
      const box = element.getBoundingClientRect();
      return element.matches(':focus-visible') && box.bottom > 0 && box.top < innerHeight;
    });
    expect([String(target), seen]).toEqual([String(target), true]);
  }

  return {
    use: async (target) => {
      await reach(target);
      await page.keyboard.press('Enter');
    },
    write: async (field, text) => {
      await reach(field);
      await page.keyboard.press('Control+A');
      await page.keyboard.type(text);
    },
    choose: async (list, words) => {
      await reach(list);
      await page.keyboard.type(words);
      expect(await list.locator('option:checked').innerText()).toBe(words);
    },
    mark: async (radio) => {
      const group = radio.page().locator(`input[type=radio][name="${(await radio.getAttribute('name')) ?? ''}"]`);
      const size = await group.count();
      const inTabOrder = group.and(page.locator(':checked'));
      await reach((await inTabOrder.count()) > 0 ? inTabOrder : group.first());
      for (let step = 0; !(await radio.isChecked()); step++) {
        if (step === size) throw new Error(`${String(radio)} cannot be reached by the arrow keys`);
        await page.keyboard.press(step === 0 && (await inTabOrder.count()) === 0 ? ' ' : 'ArrowDown');
      }
    },
  };
}
