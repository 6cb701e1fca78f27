import * as vscode from 'vscode';

/** The group that is kept for panes, so that no text lands on them and they on no text. */
export function groupOfPanes(): vscode.TabGroup | undefined {
    return vscode.window.tabGroups.all.find(holdsPanes);
}

export function holdsPanes({ tabs }: vscode.TabGroup): boolean {
    return tabs.some(({ input }) => paneOf(input) !== undefined);
}

/** The type of a tab's pane, as it was registered; undefined where it is no pane of ours. The editor puts a word of its own before it. */
export function paneOf(input: unknown): string | undefined {
    return input instanceof vscode.TabInputWebview ? /(?:^|-)(cofferwright\.[a-z-]+)$/.exec(input.viewType)?.[1] : undefined;
}

/** Beside the text, where no group with tabs of its own is; else to the right of all. */
export function freeColumn(): vscode.ViewColumn {
    const { all, activeTabGroup } = vscode.window.tabGroups;
    const next = activeTabGroup.viewColumn + 1, there = all.find(({ viewColumn }) => viewColumn === next);
    const isFree = !there || there.tabs.length === 0;
    return Math.min(isFree ? next : Math.max(...all.map(({ viewColumn }) => viewColumn)) + 1, vscode.ViewColumn.Nine) as vscode.ViewColumn;
}
