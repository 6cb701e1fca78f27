/** What a pane knows besides its content and its state: what is ticked off, and what the cursor in the text stands in. By key. */
export interface Shown { readonly ticks: ReadonlySet<string>; readonly lit: ReadonlySet<string> }
export const NOTHING_SHOWN: Shown = { ticks: new Set(), lit: new Set() };
