import type { SectionContent } from '../../pages/section/content.ts';
import { renderSection, SECTION_STATE, type SectionState } from '../../pages/section/render.ts';
import { SECTION_STYLE } from '../../pages/section/style.ts';
import { startPane } from '../start.ts';

startPane<SectionContent, SectionState>({
    kind: 'section', state: SECTION_STATE, render: renderSection, style: SECTION_STYLE, formats: ['html', 'svg', 'dxf', 'csv'],
});
