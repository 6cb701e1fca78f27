import type { EstimateContent } from '../../pages/estimate/content.ts';
import { ESTIMATE_STATE, renderEstimate, type EstimateState } from '../../pages/estimate/render.ts';
import { ESTIMATE_STYLE } from '../../pages/estimate/style.ts';
import { startPane } from '../start.ts';

startPane<EstimateContent, EstimateState>({ kind: 'estimate', state: ESTIMATE_STATE, render: renderEstimate, style: ESTIMATE_STYLE, formats: ['html', 'bid', 'csv', 'json'] });
