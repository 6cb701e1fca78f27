import { runAndReport } from './harness.ts';
import './activation.ts';
import './findings.ts';
import './beside-typescript.ts';
import './answers.ts';
import './shared-files.ts';
import './manners.ts';
import './machine.ts';
import './panes.ts';
import './boards.ts';
import './pieces.ts';
import './estimate.ts';
import './view.ts';
import './survival.ts';
import './changes.ts';

/** In an extension host on Node: on the desktop, or in a remote window. */
export const run = runAndReport;
