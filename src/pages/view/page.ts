import type { Page } from '../page.ts';
import { viewContent, type ViewContent } from './content.ts';

export const viewPage: Page<ViewContent> = {
    kind: 'view',
    contentOf: viewContent,
    exports: {},
};
