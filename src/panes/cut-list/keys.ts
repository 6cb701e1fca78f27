/** Up and down in the table go to the same kind of control in the row before or after; Home and End to the first and the last row there is. */
export function moveInColumn(event: KeyboardEvent, root: Element): void {
    const target = event.target as Element, row = target.closest('#list tbody tr');
    if (!row || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const column = target.closest('.tick') ? '.tick input' : target.closest('.length') ? '.length button' : undefined;
    if (column === undefined) return;
    const all = [...root.querySelectorAll<HTMLElement>(`#list tbody ${column}`)], at = all.indexOf(target as HTMLElement);
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: all.length - 1 }[event.key];
    const next = to === undefined ? undefined : all[to];
    if (!next) return;
    event.preventDefault();
    next.focus();
    next.scrollIntoView({ block: 'nearest' });
}
