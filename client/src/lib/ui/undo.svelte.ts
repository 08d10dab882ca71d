/** What was just done, and how to take it back. It stays until the next thing is done or it is put away. */
class UndoOffer {
  text = $state('');
  undo = $state.raw<(() => Promise<void>) | null>(null);

  /** Says that something is done; with `undo`, offers to take it back. */
  say(text: string, undo: (() => Promise<void>) | null = null): void {
    this.text = text;
    this.undo = undo;
  }

  putAway(): void {
    this.say('');
  }
}

export const undoOffer = new UndoOffer();
