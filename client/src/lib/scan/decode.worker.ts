import jsQR from 'jsqr';

/** One picture: its points, four bytes each. */
export interface Picture {
  readonly points: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

// Reading a code takes some hundredths of a second on a phone, many a time: beside the page, so that nothing stutters.
self.onmessage = ({ data }: MessageEvent<Picture>): void => {
  const found = jsQR(data.points, data.width, data.height, { inversionAttempts: 'attemptBoth' });
  self.postMessage(found?.data ?? '');
};
