import { atOnce, type Steps } from '../plain/steps.ts';
import { isOfHouse, type PaneKind } from './kinds.ts';
import { standingOfRooms } from '../report/standing.ts';
import type { Page, PageContent, RoomOnPage, Wishes } from './page.ts';
import { changesPage } from './changes/page.ts';
import { boardsPage } from './boards/page.ts';
import { planPage } from './plan/page.ts';
import { cutListPage } from './cut-list/page.ts';
import { sectionPage } from './section/page.ts';
import { estimatePage } from './estimate/page.ts';
import { putUpPage } from './put-up/page.ts';
import { suggestPage } from './suggest/page.ts';
import { viewPage } from './view/page.ts';

/** All kinds of page there are. One line each; what a pane's script renders is listed in src/panes, what the editor offers in src/extension/panes/kinds.ts. */
export const PAGES: Readonly<Record<PaneKind, Page>> = {
    plan: planPage,
    boards: boardsPage,
    section: sectionPage,
    'cut-list': cutListPage,
    view: viewPage,
    estimate: estimatePage,
    changes: changesPage,
    suggest: suggestPage,
    'put-up': putUpPage,
};

/** A page's content, and what has to be said over it. */
export function contentOn(page: Page, room: RoomOnPage, wishes: Wishes): PageContent {
    return atOnce(contentInSteps(page, room, wishes));
}

/** The same step by step. */
export function* contentInSteps(page: Page, room: RoomOnPage, wishes: Wishes): Steps<PageContent> {
    const content = yield* page.content(room, wishes);
    yield;
    const standing = isOfHouse(page.kind) ? standingOfRooms(room.house) : room.standing;
    const said = [...standing.errors, ...standing.notComputed, ...standing.beforeCutting, ...standing.notUsed];
    if (said.length === 0) return content;
    return {
        ...content, sources: [...content.sources, ...said.map(({ at }) => at)],
        standing: said.map((one, i) => ({ words: `${one.place}: ${one.message}`, at: content.sources.length + i, ...standing.notUsed.includes(one) && { isCalm: true }, ...standing.beforeCutting.includes(one) && { isBefore: true } })),
    };
}
