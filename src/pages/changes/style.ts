export const CHANGES_STYLE = `.changes{padding:10px 12px 24px;max-width:1560px}
.changes .link{padding-inline:0}
.changes h2{font-size:1.12em;margin:1.3em 0 .3em}
.changes h3{margin:.6em 0 .2em}
.changes p{margin:.2em 0}
.changes th{font-weight:400}
.changes thead th{color:var(--soft)}
.changes .strong th,.changes .strong td{font-weight:600}
.changes th,.changes td{vertical-align:top}
.calm{max-width:60em;padding:8px 12px;border:1px solid var(--line);background:var(--wash)}
.since{display:flex;flex-wrap:wrap;gap:4px 8px;align-items:center}
body:not(.printed) .since .ways{display:contents}
.since p{min-width:0;overflow-wrap:anywhere}
.commit{font-weight:600;font-variant-numeric:tabular-nums}
.sum strong{font-size:1.7em;font-variant-numeric:tabular-nums;margin-inline-end:.5em}
.missing{border-inline-start:3px solid var(--warn);padding-inline-start:10px;margin-top:.8em}
.missing h2{margin-top:0}
.missing ul{margin:.2em 0;padding-inline-start:1.2em}
.said{width:100%;max-width:1100px;table-layout:fixed}
.said th,.said td{overflow-wrap:anywhere}
.said .value{width:23%}
.said .where{width:24%;padding-inline-end:0}
.changes li button.link{vertical-align:top}
.ceiling ol{margin:0;padding-inline-start:1.8em}
.ceiling li.about,.ceiling li.picked,.ceiling li.lit{background:var(--wash);outline:1px solid var(--lit)}
.plans{display:flex;flex-wrap:wrap;gap:14px;margin:6px 0}
.plans figure{margin:0;flex:0 1 520px;min-width:0}
@media (min-width:640px){.plans figure{max-width:calc(50% - 7px)}}
.plans figcaption{color:var(--soft)}
.plans svg{display:block;width:100%;height:auto}
.part{cursor:pointer;outline:none}
.part:is(:hover,.about,.picked,.lit,:focus-visible)>path{stroke:var(--lit);stroke-width:1.8}
.part:focus-visible>path{stroke:var(--focus)}
.wide{overflow-x:auto}
.fares td.figure,.fares th.figure{padding-inline:0 14px}
.fares thead th{white-space:normal;min-width:3.2em}
.check{display:inline-flex;gap:6px;align-items:center;min-height:26px;margin-top:.4em}
.lines,.cut,.found{margin:.2em 0;padding-inline-start:1.2em}
.lines li{margin:2px 0}
.finds{white-space:nowrap;margin-inline-start:8px}
.finds button{margin-inline-end:4px}
button.small{min-height:24px;padding:0 6px;font-size:.92em}
.amounts{width:100%}
.amounts td:last-child,.amounts th:last-child{padding-inline-end:0}
.found .error b{color:var(--accent)}
.found .warning b{color:var(--warn)}
@media (min-width:1100px){.beside{display:grid;grid-template-columns:minmax(0,3fr) minmax(0,2fr);gap:28px}}
@media (max-width:560px){.said .where{display:none}.said .value{width:30%}}`;
