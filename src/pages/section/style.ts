/** Pixels: see SIDE_BY_SIDE in content.ts. */
export const SECTION_STYLE = `.section-page{padding:8px 12px 20px}
.section-page .bar{padding:0 0 8px}
.section-page h2{font-size:1.08em;margin:.6em 0 .3em}
.section-page h3{margin:1em 0 .2em}
.drawing>svg,.figure-drawn>svg,.strip>svg{display:block;width:100%;height:auto}
.figure-drawn,.strip{max-width:760px}
.columns{display:grid;grid-template-columns:minmax(0,1fr);gap:0 24px}
@media (min-width:1000px){.columns{grid-template-columns:minmax(0,56fr) minmax(0,44fr)}}
.drawing .part{cursor:pointer;outline:none}
.drawing .part:hover>path:last-of-type{stroke:var(--lit)}
.drawing .part:hover>path:first-of-type{fill:color-mix(in srgb,var(--lit) 16%,var(--paper))}
.drawing .part.lit>path:first-of-type{fill:color-mix(in srgb,var(--lit) 30%,var(--paper))}
.drawing .part.lit>path:last-of-type{stroke:var(--lit)}
.drawing .part.picked>path:first-of-type{fill:color-mix(in srgb,var(--lit) 55%,var(--paper))}
.drawing .part:focus-visible>path:last-of-type{stroke:var(--focus);stroke-width:2.6}
.lengths{width:100%}
.lengths th[scope=row]{font-weight:400}
.lengths td.figure{white-space:nowrap;font-weight:600}
.lengths td.figure .soft{font-weight:400}
.why .link{min-height:0;padding:0;color:inherit;text-decoration:underline;text-decoration-color:var(--line);text-underline-offset:3px}
.why .link:hover{text-decoration-color:currentColor}
.notes{display:grid;grid-template-columns:repeat(auto-fill,minmax(210px,1fr));gap:4px 16px;margin:.6em 0}
.notes dt{font-weight:600}
.notes dt .link{font-weight:600;padding:0}
.notes dd{margin:0;color:var(--soft)}
.notes div.lit,.notes div.picked{box-shadow:inset 3px 0 0 var(--lit);padding-inline-start:8px}
.case{border-top:1px solid var(--line);padding:2px 0 10px;margin-top:8px}
.case h3{margin-top:.6em}
.verdict{margin:0 0 .4em}
.verdict.wrong{color:var(--accent)}
.scale{margin:.2em 0;font-size:.92em}
.case summary{display:inline-block;list-style:none}
.case summary::after{content:' ▾'}
.case details[open]>summary::after{content:' ▴'}
.case ul{margin:.3em 0 0;padding-inline-start:20px}
.case li{margin:2px 0}
.case li .link{display:inline;min-height:0;padding:0;text-decoration:underline;text-decoration-color:var(--line);text-underline-offset:3px}
.case li .link:hover{text-decoration-color:currentColor}
.meetings{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,380px),1fr));gap:6px 20px}
.meeting{margin:0;max-width:520px}
.meeting figcaption p{margin:.3em 0}
.run{margin-top:14px}
.choice{min-height:28px}
.printed .run{break-inside:avoid}
.printed .verdicts{margin:.2em 0}
.printed .verdicts li{break-inside:avoid;max-width:100ch}
.runs{display:flex;flex-wrap:wrap;gap:0 3em}
.runs h2{margin:.3em 0 0}
@media print{.sheet:has(.runs) .drawing>svg{max-height:142mm}.sheet+.sheet{break-before:page}}
.printed .drawing>svg{width:100%;height:auto}
.printed .columns{display:block}
.printed .link,.printed summary{all:unset}
.printed .case details>summary{font-weight:600}`;
