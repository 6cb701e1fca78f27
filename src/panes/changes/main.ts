import type { ChangesContent } from '../../pages/changes/content.ts';
import { CHANGES_STATE, renderChanges, type ChangesState } from '../../pages/changes/render.ts';
import { CHANGES_STYLE } from '../../pages/changes/style.ts';
import { startPane } from '../start.ts';

startPane<ChangesContent, ChangesState>({
    kind: 'changes', state: CHANGES_STATE, render: renderChanges, style: CHANGES_STYLE, formats: ['html', 'csv', 'json'],
    acts: {
        against(element, pane) {
            const to = element.getAttribute('data-to');
            if (to === 'last' || to === 'pick' || to === 'signed') pane.send({ type: 'against', to });
        },
    },
    // a pane that comes back after a reload is compared with the same commit
    shown(pane) {
        const { content, state } = pane, found = content?.found;
        const against = found?.against === 'chosen' ? found.commit : found?.against === 'signed' ? 'signed' : undefined;
        if (!found || state.against === against) return;
        const { against: _, ...rest } = state;
        pane.remember({ ...rest, ...against !== undefined && { against } });
    },
});
