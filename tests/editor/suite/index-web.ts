import { runAndReport } from './harness.ts';
import './activation.ts';
import './findings.ts';
import './answers.ts';
import './shared-files.ts';
import './manners.ts';
import './panes.ts';
import './pieces.ts';
import './estimate.ts';
import './view.ts';
import './survival.ts';

/** In a browser's worker, without a machine behind it: the same tests, but for those of what only a machine can. */
export const run = runAndReport;
