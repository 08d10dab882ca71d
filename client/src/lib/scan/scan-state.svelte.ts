import { openCodeReader, type CodeReader } from './code-reader.ts';
import { readCode, type CodeRead } from './read-code.ts';

/** Why there is no picture from a camera. `refused`: by whoever holds the device. `shut`: browsers give cameras to https only. */
export type CameraTrouble = 'refused' | 'none' | 'busy' | 'shut';

/** How long between two looks at the camera's picture, in ms. */
const pace = 180;

/** Looks for a label's code: by the camera, in a photograph, or as a typed number. */
export class Scan {
  trouble = $state<CameraTrouble | null>(null);
  isLooking = $state(false);
  /** What was read and does not open anything. */
  read = $state.raw<Exclude<CodeRead, { kind: 'opens' }> | null>(null);
  /** A photograph in which no code was found, or that could not be opened. */
  photoProblem = $state('');
  readonly #origins: readonly string[];
  readonly #open: (path: string) => unknown;
  #stream: MediaStream | null = null;
  #reader: CodeReader | null = null;
  #isClosed = false;

  /** `origins`: the addresses of this register. `open` opens one of its pages. */
  constructor(origins: readonly string[], open: (path: string) => unknown) {
    this.#origins = origins;
    this.#open = open;
  }

  /** Opens the camera that looks away from the reader, and looks for a code until one opens or the page is left. */
  async look(video: HTMLVideoElement): Promise<void> {
    this.trouble = null;
    const cameras = navigator.mediaDevices as MediaDevices | undefined;
    if (!cameras) return void (this.trouble = 'shut');
    try {
      const stream = await cameras.getUserMedia({ audio: false, video: { facingMode: 'environment' } });
      // the page may have been left while the reader was asked
      if (this.#isClosed) {
        stop(stream);
        return;
      }
      this.#stream = stream;
      video.srcObject = stream;
      await video.play();
      await this.#search(video);
    } catch (error) {
      this.trouble = troubleOf(error);
    } finally {
      this.isLooking = false;
    }
  }

  async #search(video: HTMLVideoElement): Promise<void> {
    const reader = (this.#reader ??= await openCodeReader());
    this.isLooking = true;
    while (!this.#isClosed) {
      if (!document.hidden && video.videoWidth > 0) {
        const text = await reader.read(video, video.videoWidth, video.videoHeight);
        if (text !== '' && this.take(text)) return;
      }
      await new Promise((resolve) => setTimeout(resolve, pace));
    }
  }

  /** Reads the code in a photograph. */
  async photo(file: Blob): Promise<void> {
    this.photoProblem = '';
    try {
      const picture = await createImageBitmap(file);
      const reader = (this.#reader ??= await openCodeReader());
      const text = await reader.read(picture, picture.width, picture.height);
      if (text === '')
        this.photoProblem = 'There is no code in this photograph that can be read. Take it from nearer, in good light.';
      else this.take(text);
    } catch {
      this.photoProblem = 'This file cannot be opened as a photograph. Take a JPEG or PNG.';
    }
  }

  /** Takes what was read: true where it opens a page of this register. */
  take(text: string): boolean {
    if (this.#isClosed) return true;
    const read = readCode(text, this.#origins);
    if (read.kind !== 'opens') {
      this.read = read;
      return false;
    }
    this.read = null;
    this.close();
    void this.#open(read.path);
    return true;
  }

  /** Lets go of the camera. */
  close(): void {
    this.#isClosed = true;
    if (this.#stream) stop(this.#stream);
    this.#reader?.close();
  }
}

const stop = (stream: MediaStream): void => stream.getTracks().forEach((track) => track.stop());

function troubleOf(error: unknown): CameraTrouble {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'refused';
  return name === 'NotFoundError' || name === 'OverconstrainedError' ? 'none' : 'busy';
}
