import { longTask } from '../../platform/long-task.ts';
import type { AuditInput } from '../audit/audit-input.ts';
import { auditLine, type LineAudit } from '../audit/audit-line.ts';

export default longTask<AuditInput, LineAudit>((input) => auditLine(input));
