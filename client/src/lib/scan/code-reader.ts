import type { Picture } from './decode.worker.ts';

/** Reads the QR code in a picture; '' where there is none. */
export interface CodeReader {
  read(picture: ImageBitmapSource & CanvasImageSource, width: number, height: number): Promise<string>;
  close(): void;
}

/** Longest side of what is searched, in points: a label fills a good part of the picture. */
const most = 800;

interface Detector {
  detect(picture: ImageBitmapSource): Promise<{ rawValue: string }[]>;
}

type DetectorMaker = (new (options: { formats: string[] }) => Detector) & {
  getSupportedFormats(): Promise<string[]>;
};

/** The browser's own reader where it has one for QR codes, else ours, which is fetched only then. */
export async function openCodeReader(): Promise<CodeReader> {
  const Maker = (globalThis as { BarcodeDetector?: DetectorMaker }).BarcodeDetector;
  const formats = await Maker?.getSupportedFormats().catch((): string[] => []);
  return Maker && formats?.includes('qr_code') ? ofBrowser(new Maker({ formats: ['qr_code'] })) : ofOurs();
}

function ofBrowser(detector: Detector): CodeReader {
  return {
    read: async (picture) => (await detector.detect(picture))[0]?.rawValue ?? '',
    close: () => undefined,
  };
}

async function ofOurs(): Promise<CodeReader> {
  const { default: Decoder } = await import('./decode.worker.ts?worker');
  const worker = new Decoder();
  const canvas = document.createElement('canvas');
  return {
    read: (picture, width, height) => decode(worker, drawn(canvas, picture, width, height)),
    close: () => worker.terminate(),
  };
}

function drawn(canvas: HTMLCanvasElement, picture: CanvasImageSource, width: number, height: number): Picture {
  const scale = Math.min(1, most / Math.max(width, height));
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen) throw new Error('this browser draws no pictures');
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  const { data } = pen.getImageData(0, 0, canvas.width, canvas.height);
  return { points: data, width: canvas.width, height: canvas.height };
}

/** One picture at a time: the answer belongs to the question before it. */
function decode(worker: Worker, picture: Picture): Promise<string> {
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<string>) => resolve(data);
    worker.onerror = () => reject(new Error('The part that reads codes could not be loaded.'));
    worker.postMessage(picture, [picture.points.buffer]);
  });
}
