export const ESTIMATE_STYLE = `.estimate{padding:10px 12px 24px;max-width:1560px}
.costs{max-width:1000px;min-width:0}
@media (min-width:1100px){.beside{display:grid;grid-template-columns:minmax(0,3fr) minmax(0,2fr);gap:28px}.beside .alternates{grid-template-columns:1fr}}
.estimate .link{padding-inline:0}
.estimate h2{font-size:1.12em;margin:1.3em 0 .3em}
.estimate h3{margin:0 0 .2em}
.estimate p{margin:.2em 0}
.sum strong{font-size:1.7em;font-variant-numeric:tabular-nums;margin-inline-end:.5em}
.amounts{width:100%}
/* a name of two lines stands beside its figures from the first on, in line with them be it a button or not */
.amounts th,.amounts td{vertical-align:baseline}
.amounts .link{display:inline-flex;align-items:baseline;padding-block:3px}
.amounts th{font-weight:400}
.amounts .strong th,.amounts .strong td,.amounts .group th,.amounts .group td{font-weight:600}
.amounts .group th,.amounts .group td{padding-top:.7em}
.amounts td.why{color:var(--soft)}
.amounts.labor th:first-child{overflow-wrap:anywhere}
.amounts td:last-child,.amounts th:last-child{padding-inline-end:0}
.ways{display:flex;flex-wrap:wrap;gap:4px;margin:.2em 0 .4em}
.missing{border-inline-start:3px solid var(--warn);padding-inline-start:10px;margin-top:.8em}
.missing h2{margin-top:0}
.missing ul{margin:.2em 0;padding-inline-start:1.2em}
.alternates{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,420px),1fr));gap:14px}
.alternate{border:1px solid var(--line);padding:10px 12px;min-width:0}
.looks{display:grid;grid-template-columns:1fr 1fr;gap:8px;margin:8px 0}
.looks figure{margin:0;min-width:0}
.looks figcaption{color:var(--soft);font-size:.92em}
.looks svg{display:block;width:100%;height:auto}
.printed .estimate{padding:0}
.printed .alternate{break-inside:avoid}
.printed .looks{max-width:150mm}
.printed summary{list-style:none;font-weight:600}
.wrong,.found .error b{color:var(--accent)}
.found .warning b{color:var(--warn)}
.found{margin:.3em 0;padding-inline-start:1.2em}
@media (max-width:480px){.amounts.labor td.why,.amounts.labor th:nth-child(2){display:none}.looks{grid-template-columns:1fr}}`;
