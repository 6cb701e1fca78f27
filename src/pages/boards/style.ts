export const BOARDS_STYLE = `.boards-page{padding-bottom:24px}
.boards-page .bar{position:sticky;top:0;z-index:3;background:var(--paper);border-bottom:1px solid var(--line)}
.check{display:inline-flex;gap:4px;align-items:center;min-height:26px;cursor:pointer}
.done{color:var(--ink)}
.bar .done{margin-inline-start:auto;font-variant-numeric:tabular-nums}
.troubles{margin:0;padding:8px 12px 8px 30px;background:var(--wash);border-inline-start:4px solid var(--accent)}
.purchase{padding:10px 14px;border-bottom:1px solid var(--line)}
.purchase table{margin-bottom:6px}
.purchase th{font-weight:400}
.purchase tfoot th,.purchase tfoot td{font-weight:600;border-bottom:0}
.purchase td.figure{white-space:nowrap}
.purchase p{margin:3px 0}
.purchase .known{font-weight:600}
.purchase .known.proven::before{content:'✓ '}
.proving progress{vertical-align:middle;width:120px;accent-color:var(--focus)}
.left>summary{display:list-item;width:max-content;max-width:100%;margin:4px 0;padding-inline:6px 10px}
.left>summary::marker{color:var(--soft)}
.left ul{margin:4px 0}
.stock{padding:6px 14px 0}
.stock>header{display:flex;flex-wrap:wrap;gap:2px 12px;align-items:baseline;border-bottom:1px solid var(--line);margin-top:10px}
.stock h2{margin:0;font-size:1.15em}
.stock h2 .link{font-weight:600}
.stock header .known{margin-inline-start:auto}
.board{margin:8px 0 0;padding:0}
.board figcaption{display:flex;flex-wrap:wrap;gap:10px;align-items:center}
.board .write{margin-inline-start:auto;min-height:24px;padding:0 8px;opacity:.8}
.board:hover .write,.write:focus-visible{opacity:1}
.lies{overflow-x:auto;overflow-y:hidden;outline-offset:-2px}
.lies>svg{display:block;width:100%;min-width:700px;height:auto}
.small-pieces{margin:2px 0 0}
.small-pieces span{white-space:nowrap}
.board.done .lies{opacity:.45}
.vscode-high-contrast .board.done .lies{opacity:1}
.board.done figcaption label,.stages li.done>label span{text-decoration:line-through}
@media (min-width:701px){.lies>svg{min-width:0}}
.words-on-board{pointer-events:none}
.lies .part{cursor:pointer;outline:none}
.lies .part:hover>path:first-of-type{fill:color-mix(in srgb,var(--lit) 18%,var(--paper))}
.lies .part.lit>path:first-of-type{fill:color-mix(in srgb,var(--lit) 30%,var(--paper));stroke:var(--lit);stroke-width:1.6}
.lies .part:focus-visible>path:first-of-type{stroke:var(--focus);stroke-width:2.4}
.card{margin:4px 0 8px;padding:8px 12px;background:var(--wash);border:1px solid var(--line);border-inline-start:4px solid var(--lit)}
.card h3{margin:0 0 4px}
.card h3 .soft{font-weight:400}
.card dl{display:flex;flex-wrap:wrap;gap:2px 22px;margin:0 0 6px}
.card dt{font-size:max(11px,.85em);color:var(--soft)}
.card dd{margin:0}
.card p{display:flex;flex-wrap:wrap;gap:6px;margin:0}
.stages{padding:10px 14px;max-width:76em}
.stages h2{font-size:1.15em}
.stages h3{margin:16px 0 4px;padding-bottom:2px;border-bottom:1px solid var(--line)}
.stages ol{list-style:none;margin:0;padding:0}
.stages ol>li{margin:6px 0}
.stages ol>li>label{align-items:baseline;font-weight:600}
.stages ol>li>label input{align-self:center}
.stages .number{display:inline-block;min-width:1.6em;text-align:center;border:1px solid var(--line);border-radius:1em;font-variant-numeric:tabular-nums;line-height:1.5;padding:0 4px}
.stages ol ul{list-style:none;margin:2px 0 0;padding-inline-start:54px}
.stages li.done ul{display:none}
.cautions{list-style:none;margin:4px 0;padding:0}
.cautions li{padding-inline-start:16px;text-indent:-16px}
.cautions li::before{content:'!';display:inline-block;width:16px;text-indent:0;font-weight:700;color:var(--warn)}
@media (max-width:520px){.stages ol ul{padding-inline-start:22px}.stock,.stages,.purchase{padding-inline:8px}}`;
