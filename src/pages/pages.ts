import type { PaneKind } from './kinds.ts';
import type { Page } from './page.ts';
import { boardsPage } from './boards/page.ts';
import { planPage } from './plan/page.ts';
import { cutListPage } from './cut-list/page.ts';
import { sectionPage } from './section/page.ts';
import { estimatePage } from './estimate/page.ts';
import { viewPage } from './view/page.ts';

/** All kinds of page there are. One line each; what a pane's script renders is listed in src/panes, what the editor offers in src/extension/panes/kinds.ts. */
export const PAGES: Partial<Readonly<Record<PaneKind, Page>>> = {
    plan: planPage,
    boards: boardsPage,
    section: sectionPage,
    'cut-list': cutListPage,
    view: viewPage,
    estimate: estimatePage,
};
