import { answerLayouts } from '../layout-worker.ts';
import { layoutLine } from './line-layout.ts';

answerLayouts(layoutLine);
