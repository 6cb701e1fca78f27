/**
 * Style sheets of the pages. Pages name colors by what they are for; who shows them says which they are: the editor's own in a
 * pane, black on white on paper.
 *
 * Colors: ink, soft (lesser words), paper, wash (a ground set off), line, accent (wrong), warn, hint, lit (what the cursor stands in),
 * focus, link, come-… (what has come since a commit, by whence), and the same of a drawing as `--sheet-…`.
 */
export const PANE_COLORS = `:root{
--ink:var(--vscode-editor-foreground);--soft:var(--vscode-descriptionForeground,var(--vscode-editor-foreground));--paper:var(--vscode-editor-background);
--wash:color-mix(in srgb,var(--vscode-editor-foreground) 7%,var(--vscode-editor-background));
--line:color-mix(in srgb,var(--vscode-editor-foreground) 28%,var(--vscode-editor-background));
--accent:var(--vscode-editorError-foreground);--warn:var(--vscode-editorWarning-foreground);--hint:var(--vscode-editorInfo-foreground);
--come-new:var(--vscode-charts-green,var(--ink));--come-from:var(--vscode-charts-purple,var(--ink));--come-elsewhere:var(--vscode-charts-blue,var(--ink));
--lit:var(--vscode-focusBorder);--focus:var(--vscode-focusBorder);--link:var(--vscode-textLink-foreground);
--button:var(--vscode-button-secondaryBackground,var(--wash));--button-ink:var(--vscode-button-secondaryForeground,var(--ink));--button-edge:var(--vscode-button-border,var(--line));
--field:var(--vscode-dropdown-background,var(--paper));--field-ink:var(--vscode-dropdown-foreground,var(--ink));--field-edge:var(--vscode-dropdown-border,var(--line));
--menu:var(--vscode-menu-background,var(--paper));--menu-ink:var(--vscode-menu-foreground,var(--ink));
--letters:var(--vscode-font-family,sans-serif);--size:var(--vscode-font-size,13px);
--sheet-ink:var(--ink);--sheet-soft:color-mix(in srgb,var(--ink) 78%,var(--paper));--sheet-paper:var(--paper);
--sheet-tint:color-mix(in srgb,var(--ink) 18%,var(--paper));--sheet-wash:var(--wash);--sheet-accent:var(--accent)}
.vscode-dark,.vscode-high-contrast:not(.vscode-high-contrast-light){color-scheme:dark}
.vscode-high-contrast{--soft:var(--ink);--wash:var(--paper);--line:var(--vscode-contrastBorder,var(--ink));--sheet-soft:var(--ink);--sheet-tint:var(--paper);--sheet-wash:var(--paper);
--lit:var(--vscode-contrastActiveBorder,var(--focus))}`;

export const PRINT_COLORS = `:root{--ink:#000;--soft:#444;--paper:#fff;--wash:#f1f1f1;--line:#999;--accent:#000;--warn:#000;--hint:#000;--lit:#000;--focus:#000;--link:#000;
--button:#fff;--button-ink:#000;--button-edge:#999;--field:#fff;--field-ink:#000;--field-edge:#999;--menu:#fff;--menu-ink:#000;
--letters:'Barlow Semi Condensed','Arial Narrow',Arial,sans-serif;--size:11pt}`;

/** What every page has: letters, headings, tables, buttons. */
export const PAGE_STYLE = `*{box-sizing:border-box}
body{margin:0;padding:0;color:var(--ink);background:var(--paper);font-family:var(--letters);font-size:var(--size);line-height:1.4}
h1,h2,h3{font-size:1em;font-weight:600;margin:0 0 .4em}
.printed main{padding:8px;max-width:1200px;margin:0 auto}
.printed h1{font-size:1.35em}
.printed h2{margin-top:1em}
@media print{.printed main{padding:0;max-width:none}}
table{border-collapse:collapse}
th,td{text-align:start;padding:3px 10px 3px 0;border-bottom:1px solid var(--line);vertical-align:baseline}
td.figure,th.figure{text-align:end;font-variant-numeric:tabular-nums;white-space:nowrap}
thead{display:table-header-group}
tr,h2,h3,caption{break-inside:avoid}
/* a heading goes over to the next page with what it heads */
h1,h2,h3,caption,thead,tr.group{break-after:avoid}
.printed button{all:unset}
.printed .ways{display:none}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.standing{margin:0 0 8px;padding:6px 12px;background:var(--wash);border:2px solid var(--accent)}
.standing.calm{border:1px solid var(--line)}
.standing h2,.printed .standing h2{margin:0 0 .2em}
.standing ul{margin:0;padding-inline-start:1.2em}
/* figures as the drawings write them, with real fractions, never broken over lines */
.len{font-family:'Barlow Semi Condensed','Arial Narrow',sans-serif;font-variant-numeric:tabular-nums;white-space:nowrap}
body:not(.printed) .len{font-size:1.14em;line-height:1}
.soft{color:var(--soft)}
bdi{unicode-bidi:isolate}`;
