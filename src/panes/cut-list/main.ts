import { COLUMN, type Column } from '../../pages/cut-list/columns.ts';
import type { CutListContent, Entry } from '../../pages/cut-list/content.ts';
import { listOf, renderCutList, type List } from '../../pages/cut-list/render.ts';
import { CUT_LIST_STATE, type CutListState } from '../../pages/cut-list/rows.ts';
import { CUT_LIST_STYLE } from '../../pages/cut-list/style.ts';
import { tickChange } from '../../pages/cut-list/ticks.ts';
import { t } from '../../pages/shared/words.ts';
import { startPane, type Pane } from '../start.ts';
import { moveInColumn } from './keys.ts';
import { LongList } from './long-list.ts';

type CutListPane = Pane<CutListContent, CutListState>;

const rows = new LongList();

/** Worked out anew only when one of the three has changed: scrolling and the cursor change none. */
let known: { content: CutListContent; state: CutListState; ticks: ReadonlySet<string>; list: List } | undefined;
function listFor(content: CutListContent, state: CutListState, ticks: ReadonlySet<string>): List {
    if (known?.content !== content || known.state !== state || known.ticks !== ticks) known = { content, state, ticks, list: listOf(content, state, ticks) };
    return known.list;
}
function listOfPane({ content, state, shown }: CutListPane): List | undefined {
    return content && listFor(content, state, shown.ticks);
}
function entriesOf(list: List | undefined): readonly Entry[] {
    return list?.groups.flatMap(group => group.entries) ?? [];
}

function tick(element: Element, pane: CutListPane): void {
    const list = listOfPane(pane), key = element.getAttribute('data-entry'), one = element.getAttribute('data-piece');
    const entry = entriesOf(list).find(each => each.key === key);
    if (!list || !entry) return;
    const { cut, pieces } = entry;
    const meant = one === null ? pieces : pieces.filter(({ id }) => id === one);
    const on = (element as HTMLInputElement).checked;
    const now = meant.filter(piece => (list.ticked.conditionOf(piece, cut) === 'cut') !== on).length;
    pane.send({ type: 'tick', ...tickChange(meant.map(piece => ({ piece, cut })), on, list.ticked) });
    pane.announce(t('{0} of {1} pieces cut', list.cutPieces + (on ? now : -now), pane.content!.pieces.length));
}

/** Figures begin with the largest, words with the first of the alphabet; the same column again turns them round. */
function sortBy(element: Element, pane: CutListPane): void {
    const sort = element.getAttribute('data-column') as Column, { word, isFigure = false } = COLUMN[sort];
    const descending = pane.state.sort === sort ? !pane.state.descending : isFigure;
    pane.set({ ...pane.state, sort, descending });
    pane.announce(descending ? t('Sorted by {0}, descending', word()) : t('Sorted by {0}, ascending', word()));
}

/** Only what is open is kept. */
function open(key: string, pane: CutListPane, isOpen = pane.state.open[key] !== true): void {
    const { [key]: _, ...others } = pane.state.open;
    pane.set({ ...pane.state, open: isOpen ? { ...others, [key]: true } : others });
}

function find(words: string, pane: CutListPane): void {
    pane.set({ ...pane.state, find: words });
    const list = listOfPane(pane);
    if (list) pane.announce(t('{0} pieces shown', list.shownPieces));
}

/** Brings a piece to the screen, out of its batch and whatever hides it. */
function reveal(pane: CutListPane, key: string): void {
    const holds = (entry: Entry): boolean => entry.pieces.some(({ id }) => id === key);
    if (!pane.content?.pieces.some(({ id }) => id === key)) return;
    if (!entriesOf(listOfPane(pane)).some(holds)) pane.set({ ...pane.state, find: '', onlyOpen: false });
    const entry = entriesOf(listOfPane(pane)).find(holds);
    if (!entry) return;
    if (entry.pieces.length > 1 && !pane.state.open[entry.key]) open(entry.key, pane, true);
    const row = listOfPane(pane)!.rows.findIndex(each => each.kind === 'piece' ? each.piece.id === key : each.kind === 'entry' && each.entry.pieces.length === 1 && holds(each.entry));
    if (row >= 0) rows.show(row, () => pane.redraw());
}

startPane<CutListContent, CutListState>({
    kind: 'cut-list', state: CUT_LIST_STATE, style: CUT_LIST_STYLE, formats: ['html', 'csv', 'json'],
    render(content, state, { ticks }) {
        const list = listFor(content, state, ticks);
        return renderCutList(content, state, list, rows.spanOf(list.rows.length));
    },
    begin(pane) {
        rows.begin(pane.root, () => pane.redraw());
        pane.root.addEventListener('input', event => {
            const field = event.target as HTMLInputElement;
            if (field.getAttribute('data-live') === 'find') find(field.value, pane);
        });
        pane.root.addEventListener('keydown', event => moveInColumn(event, pane.root));
    },
    shown(pane) {
        rows.fit();
        for (const box of pane.root.querySelectorAll<HTMLInputElement>('.tick input')) box.indeterminate = box.hasAttribute('data-some');
    },
    reveal,
    acts: {
        tick, sort: sortBy,
        open: (element, pane) => open(element.getAttribute('data-entry') ?? '', pane),
        forget: (_, pane) => {
            const ticked = listOfPane(pane)?.ticked;
            if (ticked && pane.content) pane.send({ type: 'tick', add: [], remove: ticked.gone(pane.content.pieces).flatMap(id => ticked.keysOf(id)) });
        },
    },
});
