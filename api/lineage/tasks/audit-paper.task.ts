import { longTask } from '../../platform/long-task.ts';
import { auditPaper, type AuditPaper } from '../audit/audit-paper.ts';

export default longTask<AuditPaper, Uint8Array>((paper) => auditPaper(paper));
