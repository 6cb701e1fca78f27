import type { SuggestContent } from '../../pages/suggest/content.ts';
import { renderSuggest, SUGGEST_STATE, type SuggestState } from '../../pages/suggest/render.ts';
import { SUGGEST_STYLE } from '../../pages/suggest/style.ts';
import { startPane } from '../start.ts';

startPane<SuggestContent, SuggestState>({
    kind: 'suggest', state: SUGGEST_STATE, render: renderSuggest, style: SUGGEST_STYLE, formats: ['html', 'csv'],
    acts: { take: (element, pane) => pane.send({ type: 'mark', as: 'grid', key: element.getAttribute('data-offer') ?? '' }) },
});
