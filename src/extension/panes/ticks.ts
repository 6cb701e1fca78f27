import type * as vscode from 'vscode';

const KEY = 'cofferwright.ticks';

/** What is ticked off, by file and room. It is the reader's own and stands in no job; it stays with the folder on this machine. */
export class Ticks {
    private readonly listeners = new Set<() => void>();

    constructor(private readonly memento: vscode.Memento) {}

    of(uri: string, room: string): readonly string[] {
        return this.all()[`${uri}#${room}`] ?? [];
    }

    async change(uri: string, room: string, add: readonly string[], remove: readonly string[]): Promise<void> {
        const all = this.all(), at = `${uri}#${room}`;
        const ticked = new Set(all[at]);
        remove.forEach(key => ticked.delete(key));
        add.forEach(key => ticked.add(key));
        const { [at]: _, ...others } = all;
        await this.memento.update(KEY, ticked.size === 0 ? others : { ...others, [at]: [...ticked].sort() });
        for (const listener of this.listeners) listener();
    }

    onChange(listener: () => void): void {
        this.listeners.add(listener);
    }

    private all(): Readonly<Record<string, readonly string[]>> {
        return this.memento.get<Record<string, string[]>>(KEY, {});
    }
}
