import { PLAN_LAYERS } from '../../drawing/plan/pane-plan.ts';

export const PLAN_STYLE = `.plan-page{display:flex;flex-direction:column;flex:1;min-height:0}
.sheet{flex:1 1 60%;min-height:180px;overflow:hidden;position:relative;touch-action:none;cursor:grab}
.sheet.moving{cursor:grabbing}
.sheet>svg{display:block;width:100%;height:100%;outline-offset:-2px}
.zoom,.readout{color:var(--soft);font-variant-numeric:tabular-nums;margin-inline-start:4px}
.readout{flex:1 1 100px;min-width:0;overflow:hidden;text-overflow:ellipsis;white-space:nowrap;text-align:end}
.part{cursor:pointer;outline:none}
g[id^="plan.coffer."],g[id^="plan.length."],g[id^="plan.fixture-name."],[id="plan.layer.splices"],[id="plan.layer.dimensions"] path{pointer-events:none}
.part:hover>path{fill:color-mix(in srgb,var(--lit) 22%,var(--paper))}
g[id^="plan.layer.hidden"] .part:hover>path,g[id^="plan.layer.lines"] .part:hover>path{fill:none;stroke:var(--lit);stroke-width:1.4}
.part.lit>path{fill:color-mix(in srgb,var(--lit) 34%,var(--paper));stroke:var(--lit)}
[id="plan.layer.hidden"] .part.lit>path,[id="plan.layer.lines"] .part.lit>path{fill:none;stroke:var(--lit);stroke-width:1.6}
.part.picked>path,[id="plan.layer.hidden"] .part.picked>path{fill:color-mix(in srgb,var(--lit) 70%,var(--paper));stroke:var(--lit);stroke-width:2}
.part.lit>circle{stroke:var(--lit);stroke-width:2}
.part:focus-visible>path,.part:focus-visible>circle{stroke:var(--focus);stroke-width:2.4;stroke-dasharray:none}
.part.about>path,.part.about>circle{stroke:var(--accent);stroke-width:1.6}
[id="plan.layer.dimensions"] .part:is(:hover,.lit,.picked,:focus-visible)>path{fill:none;stroke:var(--lit);stroke-width:.9}
[id="plan.layer.dimensions"] .part:is(:hover,.lit,.picked,:focus-visible)>.f-paper{fill:var(--sheet-paper);stroke:none}
[id="plan.layer.dimensions"] .part:is(:hover,.lit,.picked)>text{font-weight:600}
.mark>circle{fill:var(--paper);stroke:var(--accent);stroke-width:1.6}
.mark>text{fill:var(--ink)}
.mark.warning>circle{stroke:var(--warn)}
.mark.hint>circle{stroke:var(--hint);stroke-dasharray:3 2}
.mark:hover>circle,.mark:focus-visible>circle{fill:var(--wash)}
.findings{flex:0 1 auto;max-height:34%;overflow:auto;border-top:1px solid var(--line);padding:8px 12px}
.findings ol{margin:0;padding-inline-start:26px}
.findings li{margin:2px 0}
.findings li button{vertical-align:top}
.findings li.error::marker{color:var(--accent)}
.findings li.warning::marker{color:var(--warn)}
.none{color:var(--soft);border-top:1px solid var(--line);margin:0;padding:6px 12px}
${PLAN_LAYERS.map(layer => `.without-${layer} [id="plan.layer.${layer}"]`).join(',')}{display:none}`;
