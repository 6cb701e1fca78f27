/** How a step of the plan looks, in a pane and on paper: what is up, what goes up now, and what is still to come. Not by color alone. */
export const STEPS_PLAN_STYLE = `.later path{fill:none;stroke:var(--soft);stroke-width:.5;stroke-dasharray:1.2 2.4}
.up path{fill:var(--up);stroke:var(--ink);stroke-width:.7}
.now path{fill:var(--now);stroke:var(--ink);stroke-width:1.9}`;

export const PUT_UP_STYLE = `.put-up{display:flex;flex-direction:column;flex:1;min-height:0;--up:color-mix(in srgb,var(--ink) 14%,var(--paper));--now:color-mix(in srgb,var(--ink) 72%,var(--paper))}
.vscode-high-contrast .put-up{--up:var(--paper);--now:var(--ink)}
#looking{padding:0 12px}
.put-up p{margin:.3em 0;max-width:95ch}
.put-up .picture{flex:none;padding:0 12px 6px;border-bottom:1px solid var(--line)}
.put-up .bar{padding:6px 0}
.scrub{flex:1 1 90px;min-width:70px;display:flex}
.scrub input{width:100%;min-height:26px;accent-color:var(--focus)}
.put-up .plan{overflow:auto}
.put-up .plan svg{display:block;max-width:100%;height:auto;margin:0 auto}
.put-up .plan .part{cursor:pointer}
${STEPS_PLAN_STYLE.replaceAll(/^\./gm, '.put-up .plan .')}
.put-up .plan .part:hover path,.put-up .plan .part.lit path{stroke:var(--lit);stroke-width:1.6;stroke-dasharray:none}
.put-up .plan .part.picked path{stroke:var(--lit);stroke-width:2.6;stroke-dasharray:none}
.legend{list-style:none;display:flex;flex-wrap:wrap;gap:2px 16px;margin:4px 0 0;padding:0}
.legend li{display:flex;align-items:center;gap:6px}
.key{display:inline-block;width:22px;height:12px;box-sizing:border-box;border:1px solid var(--ink)}
.key.up{background:var(--up)}
.key.now{background:var(--now);border-width:2px}
.key.later{border:1px dotted var(--soft)}
.put-up .steps{flex:1;min-height:0;overflow:auto;padding:8px 12px 24px;outline-offset:-2px}
.day h3{margin:1em 0 .2em;font-size:1.12em}
.day h3 .soft{font-weight:400;font-size:.9em;margin-inline-start:.5em}
.day>ol{list-style:none;margin:0;padding:0}
.step{border-top:1px solid var(--line);border-inline-start:3px solid transparent;padding-inline-start:6px}
.step.open{border-inline-start-color:var(--focus);background:var(--wash)}
.step.lit>h4 .what,.step.picked>h4 .what{text-decoration:underline;text-decoration-color:var(--lit);text-decoration-thickness:2px}
.step h4{margin:0;font-weight:400}
.step .head{display:grid;grid-template-columns:2em 1fr;gap:0 .8em;width:100%;align-items:baseline;padding:4px 2px}
.step .head .number{text-align:end;font-variant-numeric:tabular-nums}
.step .head .what{font-weight:600;margin-inline-end:.6em}
.step .body{padding:0 4px 8px 2.6em}
@media (max-width:560px){.step .body{padding-inline-start:.4em}}
.pieces{list-style:none;display:flex;flex-wrap:wrap;gap:0 .9em;margin:.1em 0 .3em;padding:0}
.piece{text-decoration:underline;text-decoration-color:var(--line)}
.piece.lit,.piece.picked{text-decoration-color:var(--lit);text-decoration-thickness:2px}
.closing{border-inline-start:3px solid var(--warn);padding-inline-start:10px;margin:.5em 0}
.closing ol{margin:.2em 0;padding-inline-start:1.6em}
.care{margin:.5em 0}
.care ul{margin:.1em 0;padding-inline-start:1.3em}
.care li{max-width:92ch}
.gate{border:2px solid var(--ink);border-inline-start-width:8px;margin:.6em 0;padding:6px 10px;overflow-x:auto;background:var(--paper)}
.gate h4{font-weight:600;font-size:1.05em}
.gate th{font-weight:400}
.gate thead th{color:var(--soft)}
.pressed{margin:1em 0}
.wide{overflow-x:auto}
.wide th{font-weight:400;color:var(--soft)}
.wrong{border-inline-start:3px solid var(--accent);padding-inline-start:10px}
@media (min-width:760px){.put-up:not([aria-busy]){flex-direction:row}
.put-up .picture{flex:0 0 52%;min-width:0;overflow:auto;border-bottom:0;border-inline-end:1px solid var(--line)}}`;
