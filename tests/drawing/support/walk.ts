import type { Group, Item, Sheet, TextRun } from '../../../src/drawing/display-list.ts';

export function groups(items: readonly Item[]): readonly Group[] {
    return items.flatMap(item => (item.kind === 'group' ? [item, ...groups(item.items)] : []));
}

/** Everything that is drawn, without the groups around it. */
export function leaves(items: readonly Item[]): readonly Exclude<Item, Group>[] {
    return items.flatMap(item => (item.kind === 'group' ? leaves(item.items) : [item]));
}

export function texts(items: readonly Item[]): readonly TextRun[] {
    return leaves(items).flatMap(item => (item.kind === 'text' ? [item] : []));
}

export function groupOf(sheet: Sheet, id: string): Group {
    const found = groups(sheet.items).find(group => group.id === id);
    if (found === undefined) throw new Error(`no group ${id} on ${sheet.id}`);
    return found;
}
