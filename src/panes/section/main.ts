import type { SectionContent, SectionShown } from '../../pages/section/content.ts';
import { renderSection, SECTION_STATE, type SectionState } from '../../pages/section/render.ts';
import { SECTION_STYLE } from '../../pages/section/style.ts';
import { startPane } from '../start.ts';

/** Whether a piece is one of those that a part of the picture stands for. */
function shows({ pieces }: SectionShown, key: string): boolean {
    return pieces.includes(key);
}

startPane<SectionContent, SectionState>({
    kind: 'section', state: SECTION_STATE, render: renderSection, style: SECTION_STYLE, formats: ['html', 'svg', 'csv'],
    /** The trim is in every section: then the one that is there stays. */
    reveal(pane, key) {
        const sections = pane.content?.sections ?? [];
        const now = sections.find(each => each.key === pane.state.section) ?? sections[0];
        const wanted = sections.find(each => shows(each, key));
        if (now && wanted && !shows(now, key)) pane.set({ ...pane.state, section: wanted.key });
    },
});
