// What changed in a house since a commit, as an editor's server works it out: of 20 and of 200 rooms with one line changed, the first time, which reads the
// whole earlier state, and after an edit; and how long at most the editor would have waited for an answer meanwhile.
import { URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { Comparisons } from '../../src/server/changes/comparisons.ts';
import { History } from '../../src/server/changes/history.ts';
import { OLD_STATE, type OldFilesParams, type OldFilesResult, type OldStateResult } from '../../src/server/messages.ts';
import { Rooms } from '../../src/server/panes/rooms.ts';
import { madeHouse } from './made-house.ts';
import { Workbench } from './workbench.ts';

export default async function measure(keep: (figures: Record<string, number>) => void): Promise<Record<string, number>> {
    const figures: Record<string, number> = {};
    for (const rooms of [20, 200]) {
        Object.assign(figures, await compared(rooms));
        keep(figures);
    }
    return figures;
}

async function compared(count: number): Promise<Record<string, number>> {
    const bench = new Workbench(), files = madeHouse(count), texts = new Map(files.map(({ path, text }) => [URI.file(path).toString(), text]));
    await bench.open(files);
    const rooms = new Rooms(bench.shared), hand = { now: false, onRest: () => undefined };
    const comparisons = new Comparisons(historyOf(texts), bench.shared, rooms, hand, words => { throw new Error(words); });
    const path = '/house/rooms/room-1.coffer', text = files.find(file => file.path === path)!.text, uri = URI.file(path).toString();
    // the estimate's pane has priced the house already, or its lens
    const ask = () => new Promise<void>(resolve => {
        let done = false;
        comparisons.onFound(known => {
            if (done || 'working' in known || 'isLooking' in known && known.isLooking) return;
            done = true;
            resolve();
        });
        comparisons.of(rooms.in(uri)[0]!);
    });
    const timed = async (): Promise<{ took: number; waited: number }> => {
        let waited = 0, last = performance.now(), isOver = false;
        const look = (): void => {
            const now = performance.now();
            waited = Math.max(waited, now - last);
            last = now;
            if (!isOver) setTimeout(look);
        };
        setTimeout(look);
        const began = performance.now();
        await ask();
        isOver = true;
        return { took: performance.now() - began, waited };
    };
    await bench.edit(path, text.replace(/coffers-north  \d/, 'coffers-north  6'));
    const name = `${count} rooms, one line changed`, first = await timed();
    const later: { took: number; waited: number }[] = [];
    for (const coffers of [5, 7, 4]) {
        await bench.edit(path, text.replace(/coffers-north  \d/, `coffers-north  ${coffers}`));
        later.push(await timed());
    }
    const median = (of: (one: { took: number; waited: number }) => number): number => later.map(of).sort((a, b) => a - b)[1]!;
    return {
        [`${name}, the first time, ms`]: first.took, [`${name}, the first time, longest wait, ms`]: first.waited,
        [`${name}, after an edit, ms`]: median(one => one.took), [`${name}, after an edit, longest wait, ms`]: median(one => one.waited),
    };
}

/** One commit, in which the files say what they say now. */
function historyOf(texts: ReadonlyMap<string, string>): History {
    const answer = (method: string, params: object): OldStateResult | OldFilesResult => {
        if (method === OLD_STATE) return { commit: { hash: 'a'.repeat(40), date: '2026-10-03', subject: 'As signed' }, top: 'file:///house', others: [] };
        return (params as OldFilesParams).files.flatMap(uri => { const text = texts.get(uri); return text === undefined ? [] : [{ uri, text }]; });
    };
    const sendRequest = (method: string, params: object) => Promise.resolve(answer(method, params));
    const connection = { onNotification: () => undefined, sendRequest, console: { log: () => undefined } };
    const history = new History(connection as unknown as Connection);
    history.listenTo({ onInitialize: (listener: (params: object) => void) => listener({ initializationOptions: { readsHistory: true } }) } as never);
    return history;
}
