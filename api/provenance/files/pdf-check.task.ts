import { longTask } from '../../platform/long-task.ts';
import { faultOfPdf } from './pdf-check.ts';

/** Checks a PDF; what is wrong with it, or null. */
export default longTask((bytes: Uint8Array): string | null => faultOfPdf(bytes));
