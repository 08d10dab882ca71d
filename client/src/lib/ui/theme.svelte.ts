import { kept } from './kept.ts';

type Theme = 'day' | 'night';

const storageKey = 'linekeeper.theme';

/** Day or night: as chosen here before, else as the system wishes. The first paint is set by `app.html`. */
class ThemeSwitch {
  now = $state<Theme>('day');

  /** Reads what the page was painted with. */
  start(): void {
    this.now = document.documentElement.dataset['theme'] === 'night' ? 'night' : 'day';
  }

  /** Changes to the other theme and remembers it on this device. */
  turn(): void {
    this.now = this.now === 'night' ? 'day' : 'night';
    if (this.now === 'night') document.documentElement.dataset['theme'] = 'night';
    else delete document.documentElement.dataset['theme'];
    kept.set(storageKey, this.now);
  }
}

export const theme = new ThemeSwitch();
