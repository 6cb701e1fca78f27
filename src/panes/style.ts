/** How the frame around a page looks. Colors: src/pages/shared/style.ts. */
export const SHELL_STYLE = `html,body{height:100%}
body{overflow:hidden;overflow-wrap:break-word}
.pane{display:flex;flex-direction:column;height:100vh}
.head{display:flex;flex-wrap:wrap;gap:6px;align-items:center;padding:6px 10px;border-bottom:1px solid var(--line)}
.switch{display:flex;flex-wrap:wrap;padding:0 6px;border-bottom:1px solid var(--line)}
.switch button{display:flex;align-items:center;gap:5px;min-height:30px;padding:2px 8px;color:var(--soft);background:none;border:0;border-bottom:2px solid transparent;border-radius:0;white-space:nowrap}
.switch button[aria-current]{color:var(--ink);border-bottom-color:var(--focus)}
.switch button:hover{color:var(--ink)}
.switch button:focus-visible{outline-offset:-2px}
.switch svg{flex:none;width:16px;height:16px;fill:none;stroke:currentColor}
@media (max-width:640px){.switch svg{display:none}.switch button{padding:2px 7px}}
@media (max-width:450px){.switch svg{display:block}.switch span{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}}
.working{margin:0;padding:10px 12px;color:var(--soft)}
.main{position:relative}
.still{position:absolute;z-index:4;inset-inline-start:8px;bottom:8px;max-width:calc(100% - 16px);box-sizing:border-box;margin:0;padding:2px 9px;color:var(--menu-ink);background:var(--menu);border:1px solid var(--field-edge);border-radius:2px;pointer-events:none;animation:still .3s}
@keyframes still{from{opacity:0}}
@media (prefers-reduced-motion:reduce){.still{animation:none}}
.room{flex:1 1 120px;min-width:0;margin:0;font-weight:600;overflow:hidden;text-overflow:ellipsis;white-space:nowrap}
.room select{width:100%;max-width:min(320px,100%);text-overflow:ellipsis}
button,select,summary{font:inherit;color:var(--button-ink);background:var(--button);border:1px solid var(--button-edge);border-radius:2px;padding:2px 9px;cursor:pointer;min-height:26px}
button.sign{min-width:28px;padding:2px 6px}
button.sign>svg{display:block;width:14px;height:14px;margin:auto;fill:currentColor}
button[aria-pressed=true]{border-color:var(--focus);box-shadow:inset 0 0 0 1px var(--focus)}
button:disabled{opacity:.55;cursor:default}
select{color:var(--field-ink);background:var(--field);border-color:var(--field-edge)}
button:hover:not(:disabled),summary:hover{border-color:var(--focus)}
:focus-visible{outline:2px solid var(--focus);outline-offset:1px}
button.link{color:var(--ink);background:none;border:0;border-radius:0;padding:2px;min-height:24px;text-align:start;text-decoration:none}
button.link:hover{text-decoration:underline}
.menu{position:relative;display:inline-block}
.menu>summary{list-style:none;display:inline-block}
.menu>summary::-webkit-details-marker{display:none}
.menu>summary::after{content:' ▾'}
.menu>:not(summary){position:absolute;z-index:5;top:100%;inset-inline-start:0;margin:2px 0 0;padding:6px;display:flex;flex-direction:column;gap:2px;min-width:150px;max-height:70vh;overflow:auto;color:var(--menu-ink);background:var(--menu);border:1px solid var(--field-edge);box-shadow:0 2px 8px color-mix(in srgb,var(--ink) 25%,transparent)}
.menu.end>:not(summary){inset-inline-start:auto;inset-inline-end:0}
.menu label{display:flex;gap:6px;align-items:center;min-height:26px;white-space:nowrap;cursor:pointer}
.menu .choices button{text-align:start;border-color:transparent;background:none;color:inherit}
.bar{display:flex;flex-wrap:wrap;gap:4px;align-items:center;padding:6px 10px}
.trouble,.words{margin:0;padding:6px 12px;background:var(--wash);border-bottom:1px solid var(--line);border-inline-start:4px solid var(--accent)}
.words{border-inline-start-color:var(--hint)}
.trouble .link{color:var(--link);text-decoration:underline}
#standing .standing{margin:0;border-width:0 0 0 4px;max-height:30vh;overflow:auto}
#standing li{line-height:24px}
#standing li .link{line-height:1.4;vertical-align:top}
.main{flex:1;min-height:0;display:flex;flex-direction:column}
.page{flex:1;min-height:0;overflow:auto;display:flex;flex-direction:column}
.page.broken{--ink:var(--soft);color:var(--ink)}
.page.broken :is(svg,canvas){opacity:.5}
.vscode-high-contrast .page.broken{border:2px dashed var(--accent)}
.vscode-high-contrast .page.broken :is(svg,canvas){opacity:1}
input[type=checkbox]{width:16px;height:16px;accent-color:var(--focus);margin:2px}`;
