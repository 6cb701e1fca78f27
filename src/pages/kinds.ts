/** What a pane can show. */
export const PANE_KINDS = ['plan', 'section', 'cut-list', 'boards', 'view', 'estimate'] as const;
export type PaneKind = (typeof PANE_KINDS)[number];

export function isPaneKind(kind: unknown): kind is PaneKind {
    return (PANE_KINDS as readonly unknown[]).includes(kind);
}
