import type { PlanContent } from '../../pages/plan/content.ts';
import { PLAN_STATE, renderPlan, type PlanState } from '../../pages/plan/render.ts';
import { PLAN_STYLE } from '../../pages/plan/style.ts';
import { startPane } from '../start.ts';

startPane<PlanContent, PlanState>({
    kind: 'plan', state: PLAN_STATE, render: renderPlan, style: PLAN_STYLE, formats: ['html', 'svg', 'csv'],
});
