import { longTask } from '../../platform/long-task.ts';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { sheetPaper } from '../sheets/sheet-paper.ts';

/** What a sheet on paper is made of. */
export interface SheetPaper {
  readonly sheet: SheetDocument;
  readonly keyId: string;
}

export default longTask<SheetPaper, Uint8Array>(({ sheet, keyId }) => sheetPaper(sheet, keyId));
