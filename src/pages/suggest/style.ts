export const SUGGEST_STYLE = `.suggest{padding:10px 12px 24px;max-width:1560px}
.suggest p{margin:.3em 0;max-width:95ch}
.grids{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,250px),1fr));gap:14px;margin:10px 0}
.grid{border:1px solid var(--line);padding:10px 12px;min-width:0;display:flex;flex-direction:column;align-items:flex-start}
.grid h2{font-size:1.12em;margin:0 0 .4em}
.grid svg{display:block;width:100%;height:auto;max-width:300px;align-self:center}
.grid .sizes{font-weight:600}
.grid dl{margin:.2em 0;width:100%}
.grid dl div{display:flex;justify-content:space-between;gap:1em}
.grid dt{color:var(--soft)}
.grid dd{margin:0;text-align:end;font-variant-numeric:tabular-nums}
.grid .says{display:flex;flex-direction:column;gap:2px}
.grid code{overflow-wrap:anywhere}
.grid button{margin-top:auto}
.now{border-style:dashed}
.warnings{margin:.3em 0;padding-inline-start:1.2em}
.warnings b{color:var(--warn)}
.printed .suggest{padding:0}
.printed .grid{break-inside:avoid}`;
