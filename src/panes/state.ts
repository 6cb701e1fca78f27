import { editor } from './vscode-api.ts';

/** What a pane keeps over a reload: the room it shows, and what its reader has set. The room is read by the extension too. */
interface Kept {
    readonly version: 1;
    readonly kind: string;
    readonly pinned: boolean;
    readonly room?: { readonly uri: string; readonly room: string };
    readonly own: unknown;
}

/** What was kept of this kind, or nothing where it is another version's. */
export function keptState(kind: string): Kept | undefined {
    const kept = editor.getState() as Partial<Kept> | undefined;
    return kept?.version === 1 && kept.kind === kind ? kept as Kept : undefined;
}

export function keep(kept: Kept): void {
    editor.setState(kept);
}

/** A state with the value at a path such as `layers.sides` replaced. */
export function withValue<State>(state: State, path: string, value: unknown): State {
    const [first, ...rest] = path.split('.');
    if (first === undefined) return state;
    const inner = (state as Record<string, unknown> | undefined)?.[first];
    return { ...state, [first]: rest.length === 0 ? value : withValue(inner ?? {}, rest.join('.'), value) };
}
