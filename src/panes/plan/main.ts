import type { PlanContent } from '../../pages/plan/content.ts';
import { PLAN_STATE, renderPlan, type PlanState } from '../../pages/plan/render.ts';
import { PLAN_STYLE } from '../../pages/plan/style.ts';
import { Drawing, type SeenState } from '../drawing.ts';
import { startPane } from '../start.ts';

type State = PlanState & SeenState;
let drawing: Drawing<PlanContent, State> | undefined;

startPane<PlanContent, State>({
    kind: 'plan', state: PLAN_STATE, render: renderPlan, style: PLAN_STYLE, formats: ['html', 'svg', 'dxf', 'csv'],
    begin(pane) { drawing = new Drawing(pane); },
    shown() { drawing?.shown(); },
    acts: { 'zoom-in': () => drawing?.act('zoom-in'), 'zoom-out': () => drawing?.act('zoom-out'), fit: () => drawing?.act('fit') },
});
