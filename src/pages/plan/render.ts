import type { PlanLayer } from '../../drawing/plan/pane-plan.ts';
import { attributes, html, trusted, wordsAlone, type Html } from '../shared/html.ts';
import type { Shown } from '../shared/shown.ts';
import { t } from '../shared/words.ts';
import type { PlanContent } from './content.ts';
import { MARK_RADIUS, type PlanFinding } from './findings.ts';

/** What a reader of the plan has set. */
export interface PlanState { readonly layers: Partial<Readonly<Record<PlanLayer, boolean>>> }
export const PLAN_STATE: PlanState = { layers: {} };

export function renderPlan(content: PlanContent, state: PlanState, _shown: Shown): Html {
    const { layers, findings } = content;
    const hidden = layers.filter(layer => state.layers[layer] === false).map(layer => `without-${layer}`);
    return html`<div id="plan-page" ${attributes({ 'class': ['plan-page', ...hidden].join(' ') })}>
<div class="bar" role="toolbar" ${attributes({ 'aria-label': t('Plan') })}>
${button('zoom-in', t('Zoom in'), '+')}${button('zoom-out', t('Zoom out'), '−')}${button('fit', t('Show all'), '⤢')}
${layerMenu(layers, state)}
<span class="zoom" id="zoom" data-own></span><span class="readout" id="readout" aria-hidden="true" data-own></span>
</div>
<div class="sheet" id="sheet" data-zoom>${drawing(content)}</div>
${findingList(findings)}
</div>`;
}

function button(act: string, name: string, sign: string): Html {
    return html`<button type="button" class="sign" ${attributes({ 'data-act': act, title: name, 'aria-label': name })}><span aria-hidden="true">${sign}</span></button>`;
}

const layerNames: Readonly<Record<PlanLayer, () => string>> = {
    blocking: () => t('Blocking'), bottoms: () => t('Bottoms'), sides: () => t('Sides'), trim: () => t('Ceiling trim'), band: () => t('Band'), hidden: () => t('Spacers and cleats'), lines: () => t('Lines'),
    joists: () => t('Joists'), coffers: () => t('Coffer sizes'), lengths: () => t('Lengths of bottoms'), fixtures: () => t('Fixtures'), splices: () => t('Splices'), dimensions: () => t('Dimensions'),
};

function layerMenu(layers: readonly PlanLayer[], state: PlanState): Html {
    return html`<details class="menu" id="layers"><summary>${t('Layers')}</summary><fieldset><legend class="unseen">${t('Layers')}</legend>
${layers.map(layer => html`<label><input type="checkbox" ${attributes({ 'data-state': `layers.${layer}`, id: `layer-${layer}`, checked: state.layers[layer] !== false })}>${layerNames[layer]()}</label>`)}
</fieldset></details>`;
}

/** Marks stand above the drawing, in its own coordinates, numbered as in the list. */
function drawing({ svg, ground, findings }: PlanContent): Html {
    const marks = findings.flatMap(({ mark, severity, message, at, keys }, i) => mark ? [html`<g ${attributes({
        id: `mark-${i}`, 'class': `part mark ${severity}`, 'data-key': `finding.${i}`, 'data-at': at, 'data-lights': keys.join(' '), role: 'button', tabindex: -1, 'aria-label': `${severityWord(severity)}: ${message}`,
    })}><title>${wordsAlone(message)}</title><circle ${attributes({ cx: round(mark[0]), cy: round(mark[1]), r: MARK_RADIUS })}/><text text-anchor="middle" font-size="9" font-weight="600" ${attributes({ x: round(mark[0]), y: round(mark[1]) + 3.2 })}>${i + 1}</text></g>`] : []);
    const [begin, end] = [svg.replace(/^<svg/, `<svg data-ground="${round(ground.width)} ${round(ground.height)}"`), '</svg>'];
    return html`${trusted(begin.slice(0, begin.lastIndexOf(end)))}<g id="marks">${marks}</g></svg>`;
}

function round(points: number): number {
    return Math.round(points * 100) / 100;
}

export function severityWord(severity: PlanFinding['severity']): string {
    return severity === 'error' ? t('Error') : severity === 'warning' ? t('Warning') : t('Hint');
}

function findingList(findings: readonly PlanFinding[]): Html {
    if (findings.length === 0) return html`<p class="none">${t('Nothing found in this room.')}</p>`;
    return html`<section class="findings" aria-labelledby="findings-heading"><h2 id="findings-heading">${t('Found here')}</h2><ol>
${findings.map(({ severity, message, at, keys }, i) => html`<li ${attributes({ id: `finding-${i}`, 'class': severity })}><button type="button" class="link" ${attributes({ 'data-at': at, 'data-lights': keys.join(' ') })}><b>${severityWord(severity)}.</b> ${message}</button></li>`)}
</ol></section>`;
}
