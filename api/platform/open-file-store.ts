import type { FileSettings } from './file-settings.ts';
import { FolderStore } from './file-store-folder.ts';
import type { FileStore } from './file-store.ts';

/** Opens the place that the settings name. */
export async function openFileStore({ filesBucket, filesDir }: FileSettings): Promise<FileStore> {
  if (filesBucket === null) return new FolderStore(filesDir);
  // only a club with a bucket waits until its client is loaded
  const { BucketStore } = await import('./file-store-bucket.ts');
  return new BucketStore(filesBucket);
}
