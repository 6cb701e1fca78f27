/** A narrow pane keeps tick, length, count and place; the other columns come as there is room, and until then stand in words. */
export const CUT_LIST_STYLE = `.cut-list{display:flex;flex-direction:column;flex:1;min-height:0}
.cut-list>.bar{gap:6px 14px;padding:8px 12px 6px}
.cut-list .bar label{display:inline-flex;align-items:center;gap:5px;min-height:26px}
.cut-list .find{flex:1 1 190px;max-width:420px}
.cut-list input[type=search]{font:inherit;width:100%;min-height:28px;padding:2px 8px;color:var(--field-ink);background:var(--field);border:1px solid var(--field-edge);border-radius:2px}
.cut-list input[type=search]::placeholder{color:var(--soft);opacity:1}
.progress{display:flex;flex-wrap:wrap;align-items:center;gap:4px 12px;padding:0 12px 8px;font-variant-numeric:tabular-nums}
progress{flex:0 1 180px;min-width:80px;height:10px;appearance:none;border:1px solid var(--line);background:var(--paper)}
progress::-webkit-progress-bar{background:var(--paper)}
progress::-webkit-progress-value{background:var(--lit)}
progress::-moz-progress-bar{background:var(--lit)}
.list{flex:1 1 auto;min-height:150px;overflow:auto;border-top:1px solid var(--line);overflow-anchor:none}
.list table{width:100%;border-collapse:separate;border-spacing:0}
.list thead th{position:sticky;top:0;z-index:2;background:var(--paper);border-bottom:1px solid var(--ink);padding:0}
.list thead th.tick{padding:0 4px 0 12px;text-align:center;color:var(--soft)}
.sort{width:100%;min-height:30px;padding:3px 10px 3px 0;border:0;border-radius:0;background:none;color:var(--ink);font-weight:600;text-align:inherit;white-space:nowrap}
.sort:hover{text-decoration:underline}
.arrow{display:inline-block;width:12px;text-align:center;margin-inline-start:2px}
.list td,.list tbody th{padding:4px 14px 4px 0;border-bottom:1px solid color-mix(in srgb,var(--line) 60%,var(--paper));vertical-align:top;font-weight:400}
.list thead th.figure .sort{padding-inline-end:14px}
.list td.tick{padding:3px 6px 3px 12px;width:40px}
.list .tick input{width:18px;height:18px;margin:1px}
.open-why{display:inline-flex;align-items:baseline;justify-content:flex-end;gap:7px;width:100%;min-height:24px;padding:0 2px;border:0;background:none;color:inherit;font-variant-numeric:tabular-nums;text-align:end;white-space:nowrap}
.open-why .long{font-weight:600;font-size:1.06em}
.open-why:hover .long{text-decoration:underline}
.turn{color:var(--soft);width:10px}
.inches{color:var(--soft);min-width:62px}
.list td.pieces{width:56px}
.list tr.group>th{background:var(--wash);border-bottom:1px solid var(--line);border-top:1px solid var(--line);padding:5px 12px;font-weight:600;text-align:start}
.list tr.group .soft{font-weight:400}
.list tr.done>td,.list tr.done>th{color:var(--soft)}
.list tr.done .long{text-decoration:line-through;font-weight:400}
.list tr.entry:hover>*,.list tr.one:hover>*{background:var(--wash)}
.list tr.lit>:first-child{box-shadow:inset 3px 0 0 var(--lit)}
.list tr.lit>*{background:color-mix(in srgb,var(--lit) 12%,var(--paper))}
.list tr.picked>*{background:color-mix(in srgb,var(--lit) 26%,var(--paper))}
.list tr.one>td{border-bottom-style:dotted}
.mark{padding:0!important;min-height:22px!important;color:var(--link)!important}
.marks{overflow-wrap:anywhere}
.detail-line{display:flex;flex-wrap:wrap;align-items:baseline;gap:3px 12px}
.why-line{margin:1px 0 2px}
.why .link{min-height:0;padding:0;color:inherit;text-decoration:underline;text-decoration-color:var(--line);text-underline-offset:3px}
.why .link:hover{text-decoration-color:currentColor}
.small{min-height:24px;padding:0 8px;font-size:.94em}
.changed{display:inline-block;border:1px solid var(--warn);color:var(--ink);border-radius:2px;padding:0 6px;font-size:.94em}
.changed::before{content:'! ';color:var(--warn);font-weight:600}
.list .part-name{white-space:nowrap}
.list td{overflow-wrap:break-word}
.list .stock-name{min-width:7em;max-width:16em;overflow-wrap:anywhere}
.list .piece{min-width:9em;max-width:30em}
.list .figure{white-space:nowrap}
.more{display:none;font-size:.95em}
.foot{border-top:1px solid var(--line);flex:0 0 auto;max-height:45%;overflow:auto;padding:4px 12px}
.foot>details{display:inline-block;vertical-align:top;margin-inline-end:8px}
.foot>details[open]{display:block;margin:2px 0 8px}
.foot summary{display:inline-block;list-style:none}
.foot summary::after{content:' ▴'}
.foot details[open]>summary::after{content:' ▾'}
.foot .open{padding:6px 0}
.gone{margin:4px 0}
.totals td,.totals th{vertical-align:top}
.totals thead th{border-bottom:1px solid var(--ink)}
.totals tbody th{font-weight:600}
.totals .sum td,.totals .sum th{font-weight:600}
.none{color:var(--soft);padding:10px 12px;margin:0}
@media (max-width:1179px){.list .widest{display:none}.more,.more .nn{display:block}.more .n,.more .ne,.more .nm{display:none}}
@media (min-width:640px) and (max-width:1179px){.list .piece{width:44%;max-width:none}}
@media (max-width:879px){.list .wider{display:none}.more .nn{display:inline}.more .nm{display:inline}}
@media (max-width:799px){.list .half{display:none}.more .ne{display:inline}}
@media (max-width:639px){.inches:empty{display:none}.list .wide{display:none}.more .n{display:inline}.list td,.list tbody th{padding-inline-end:8px}.list td.pieces{width:30px}.open-why{display:grid;grid-template-columns:1fr auto;gap:0 4px}.inches{min-width:0;grid-column:1/3}.list thead .pieces .sort{font-size:0;padding-inline-end:6px}.list thead .pieces .sort::before{content:'×';font-size:var(--size)}.list .piece{min-width:0}.list td.tick{padding-inline-start:8px;width:34px}.sort .arrow{width:9px}}`;
