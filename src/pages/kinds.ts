/** What a pane can show. */
export const PANE_KINDS = ['plan', 'section', 'cut-list', 'boards', 'view', 'estimate', 'changes', 'suggest', 'put-up'] as const;
export type PaneKind = (typeof PANE_KINDS)[number];

/** Kinds that show the whole house that a room belongs to, and not the room alone. */
export function isOfHouse(kind: PaneKind): boolean {
    return kind === 'boards' || kind === 'estimate' || kind === 'changes';
}

export function isPaneKind(kind: unknown): kind is PaneKind {
    return (PANE_KINDS as readonly unknown[]).includes(kind);
}
