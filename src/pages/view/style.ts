export const VIEW_STYLE = `.view-page{display:flex;flex-direction:column;flex:1;min-height:0}
.player{display:flex;flex-wrap:wrap;gap:4px;align-items:center;padding:0 10px 6px}
.player p{margin:0 0 0 4px;flex:1 1 100%;min-height:1.4em}
.player .scrub{flex:1 1 120px;display:flex;margin-inline-start:6px}
.player .scrub input{width:100%;min-height:26px;accent-color:var(--focus)}
.player p{overflow-wrap:anywhere}
@media (max-width:560px){.player p{min-height:2.8em}}
.no-gl .player,.no-gl #play-open{display:none}
.sliders{display:flex;flex-wrap:wrap;gap:4px 12px;align-items:center}
.slide{display:inline-flex;gap:6px;align-items:center;white-space:nowrap}
.slide input{width:110px;min-height:26px;accent-color:var(--focus)}
@media (max-width:560px){.slide input{width:64px}.sliders{gap:4px 8px}}
.stage{flex:1 1 60%;min-height:180px;position:relative;overflow:hidden}
.stage canvas{position:absolute;inset:0;width:100%;height:100%;display:block;cursor:grab;touch-action:none}
.stage canvas:active{cursor:grabbing}
.stage canvas.over{cursor:pointer}
.stage canvas:focus-visible{outline-offset:-2px}
.no-gl .stage{display:none}
.no-picture{display:none;margin:0;padding:8px 12px}
.no-gl .no-picture{display:block}
.no-gl .sliders,.no-gl .bar{display:none}
.under{display:flex;flex-wrap:wrap;gap:4px 10px;align-items:center;justify-content:space-between;padding:5px 10px;border-top:1px solid var(--line);min-height:37px}
.picked{margin:0;flex:1 1 180px;min-width:0}
.picked .link{color:var(--link)}
.list{flex:0 1 auto;max-height:38%;overflow:auto;border-top:1px solid var(--line);padding:8px 12px;column-width:300px;column-gap:24px}
.no-gl .list{max-height:none;flex:1}
.list h2{margin-top:.6em}
.list h2:first-child{margin-top:0}
.list ul{list-style:none;margin:0;padding:0}
.list li{break-inside:avoid}
.list .lit{background:color-mix(in srgb,var(--lit) 22%,var(--paper))}
.vscode-high-contrast .list .lit{background:none;outline:1px solid var(--lit)}
.findings{flex:0 1 auto;max-height:30%;overflow:auto;border-top:1px solid var(--line);padding:8px 12px}
.findings ol{margin:0;padding-inline-start:26px}
.findings li.error::marker{color:var(--accent)}
.findings li.warning::marker{color:var(--warn)}
.changed{flex:0 1 auto;max-height:34%;overflow:auto;border-top:1px solid var(--line);padding:6px 12px 8px}
.changed p{margin:.2em 0}
.changed .commit{font-weight:600;font-variant-numeric:tabular-nums}
.changed details{display:inline-block;vertical-align:top;margin:3px 8px 0 0;max-width:100%}
.changed details[open]{display:block}
.changed summary{cursor:pointer;min-height:26px;padding:2px 10px}
.changed ul{list-style:none;margin:0 0 .4em;padding-inline-start:18px;column-width:300px;column-gap:24px}
.changed li{break-inside:avoid}
.changed .lit{outline:1px solid var(--lit)}
.changed .missing{border-inline-start:3px solid var(--warn);padding-inline-start:10px}
.mark{display:inline-block;width:28px;height:15px;margin-inline-end:7px;vertical-align:-2px;border:1px solid}
.mark.new{color:var(--come-new);background:repeating-linear-gradient(135deg,currentColor 0 2px,transparent 2px 6px)}
.mark.from{color:var(--come-from);background:repeating-linear-gradient(0deg,currentColor 0 2px,transparent 2px 6px)}
.mark.elsewhere{color:var(--come-elsewhere);background:radial-gradient(circle,currentColor 1.8px,transparent 2.2px) 0 0/7px 7px}
.mark.left{border-style:dashed;color:var(--ink);background:color-mix(in srgb,var(--ink) 10%,transparent)}`;
