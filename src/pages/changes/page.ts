import type { Page } from '../page.ts';
import { changesContent, type ChangesContent } from './content.ts';

/** It is kept as no file: `cofferwright compare` and `change-order` write what is to be sent on. */
export const changesPage: Page<ChangesContent> = { kind: 'changes', showsChanges: true, contentOf: changesContent, exports: {} };
