import { describe, expect, test } from 'vitest';
import type { Connection } from 'vscode-languageserver';
import type { ChangesFound, ChangesKnown } from '../../../src/pages/changes/known.ts';
import { Comparisons } from '../../../src/server/changes/comparisons.ts';
import { Rooms } from '../../../src/server/panes/rooms.ts';
import type { CofferCodeLenses } from '../../../src/server/features/code-lenses.ts';
import { createServerServices } from '../../../src/server/services.ts';
import { printMoney } from '../../../src/quantity/money.ts';
import { house } from '../../cli/house.ts';
import { compareTexts } from '../../support/compare-texts.ts';
import { TestWorkspace } from '../../support/workspace.ts';
import { OldEditor } from '../../support/old-editor.ts';

type Texts = Readonly<Record<string, string>>;
const finer: Texts = { ...house, 'den.coffer': house['den.coffer'].replace('coffers-north  3', 'coffers-north  4') };

/** A hand that types when the test says so. */
class Hand {
    now = false;
    private readonly listeners: (() => void)[] = [];
    onRest(listener: () => void): void { this.listeners.push(listener); }
    rest(): void {
        this.now = false;
        for (const listener of this.listeners) listener();
    }
}

async function opened(texts: Texts, { willing = true } = {}): Promise<{
    workspace: TestWorkspace; editor: OldEditor; comparisons: Comparisons; hand: Hand; told: ChangesKnown[];
    known(path?: string, against?: string): ChangesKnown; settled(path?: string, against?: string): Promise<ChangesKnown>;
}> {
    const workspace = await TestWorkspace.serve(texts, createServerServices), rooms = new Rooms(workspace.shared), hand = new Hand();
    const editor = new OldEditor(() => Object.fromEntries(Object.keys(texts).map(path => [path, workspace.text(path)])), { willing });
    const comparisons = new Comparisons(editor.history, workspace.shared, rooms, hand, words => { throw new Error(words); }), told: ChangesKnown[] = [];
    comparisons.onFound(found => told.push(found));
    const known = (path = 'den.coffer', against?: string): ChangesKnown => comparisons.of(rooms.in(`file:///house/${path}`)[0]!, against);
    const settled = async (path = 'den.coffer', against?: string): Promise<ChangesKnown> => {
        for (let quiet = 0, last = known(path, against); ;) {
            await new Promise(resolve => setTimeout(resolve, 1));
            const now = known(path, against);
            quiet = now === last && !('working' in now) && !('isLooking' in now && now.isLooking) ? quiet + 1 : 0;
            if (quiet > 200) return now;
            last = now;
        }
    };
    return { workspace, editor, comparisons, hand, told, known, settled };
}
const found = (known: ChangesKnown): ChangesFound => {
    if (!('house' in known)) throw new Error(JSON.stringify(known));
    return known;
};

describe('a house against the last commit, in the editor', () => {
    test('is the same comparison as of two states read from the beginning', async () => {
        const { editor, settled, told } = await opened(finer);
        editor.commit('a1', house);
        const { said, house: change, before, against, unread } = found(await settled()), whole = (await compareTexts(house, finer)).houses[0]!;
        expect(said.map(({ what, before: was, after: is, file }) => [what.join(' › '), was?.value, is?.value, file])).toEqual([['room den › grid › coffers-north', '3', '4', 'den.coffer']]);
        expect(before).toMatchObject({ name: 'a1', commit: { hash: 'a1', subject: 'State a1' } });
        expect([against, unread]).toEqual(['last', []]);
        for (const list of ['same', 'moved', 'from'] as const) expect(change.pieces[list].map(pair => [pair.before.id, pair.after.id])).toEqual(whole.pieces[list].map(pair => [pair.before.id, pair.after.id]));
        for (const list of ['fresh', 'gone'] as const) expect(change.pieces[list].map(piece => piece.id)).toEqual(whole.pieces[list].map(piece => piece.id));
        const shape = ({ rooms }: typeof change) => rooms.map(room => [room.name, room.lines.length, room.isSame]);
        expect(shape(change)).toEqual(shape(whole));
        expect(printMoney(change.price!.total, change.price!.currency)).toBe(printMoney(whole.price!.total, whole.price!.currency));
        // once without what the dry fit finds, which takes longer, then with it
        expect(told.filter(one => 'house' in one).map(one => found(one).isLooking)).toEqual([true, false]);
    });

    test('nothing changed: no word, no piece, no cent; and a remark is no change', async () => {
        const { editor, settled, workspace } = await opened(house);
        editor.commit('a1', house);
        const same = found(await settled());
        const { pieces: { fresh, gone, from }, findings } = same.house;
        expect([same.said, fresh, gone, from, findings]).toEqual([[], [], [], [], { come: [], gone: [] }]);
        await workspace.edit({ 'den.coffer': `${house['den.coffer']}// a remark\n` });
        const remark = found(await settled());
        expect([remark.said, remark.house.pieces.gone, remark.house.price!.total.valueOf()]).toEqual([[], [], 0]);
    });

    test('follows what is typed, and stands still while it is', async () => {
        const { editor, settled, workspace, hand, known } = await opened(house);
        editor.commit('a1', house);
        const first = await settled();
        hand.now = true;
        await workspace.edit({ 'den.coffer': finer['den.coffer']! });
        for (let i = 0; i < 20; i++) {
            expect(known()).toBe(first);
            await new Promise(resolve => setTimeout(resolve, 1));
        }
        hand.rest();
        await new Promise(resolve => setTimeout(resolve, 1));
        expect(found(await settled()).said).toHaveLength(1);
        await workspace.edit({ 'den.coffer': house['den.coffer'] });
        expect(found(await settled()).said).toEqual([]);
    });

    test('an edit in the middle of it begins it again, with the text of then', async () => {
        const { editor, settled, workspace, known, told } = await opened(finer);
        editor.commit('a1', house);
        known();
        for (const width of [`12' 4"`, `12' 5"`, `12' 6"`]) {
            await new Promise(resolve => setTimeout(resolve, 1));
            await workspace.edit({ 'den.coffer': house['den.coffer'].replace(`12' 3 1/2"`, width) });
            known();
        }
        expect(found(await settled()).said.map(({ after }) => after?.value)).toEqual([`12' 6"`]);
        expect(told.filter(one => 'house' in one).every(one => found(one).said.length === 1)).toBe(true);
    });

    test('another last commit is another answer; a chosen one stays', async () => {
        const { editor, settled } = await opened(finer);
        editor.commit('a1', house);
        expect(found(await settled()).said).toHaveLength(1);
        editor.commit('b2', finer);
        expect(found(await settled()).said).toEqual([]);
        const chosen = found(await settled('den.coffer', 'a1'));
        expect([chosen.said.length, chosen.against, chosen.before.name]).toEqual([1, 'chosen', 'a1']);
    });

    test('an earlier state is read once, and a file of it once', async () => {
        const { editor, settled, workspace } = await opened(finer);
        editor.commit('a1', house);
        await settled();
        await workspace.edit({ 'den.coffer': house['den.coffer'] });
        await settled();
        expect(editor.asked.states).toBe(1);
        expect([...editor.asked.files].sort()).toEqual(Object.keys(house).map(path => `file:///house/${path}`).sort());
    });

    test('files that are gone, new or moved; what was imported then is read then, wherever it lay', async () => {
        const moved: Texts = { ...house, 'den.coffer': house['den.coffer'].replaceAll('from "yard.coffer"', 'from "stocks/yard.coffer"'), 'box.coffer': house['box.coffer'].replace('from "yard.coffer"', 'from "stocks/yard.coffer"') };
        const { 'yard.coffer': yard, ...rest } = moved, now: Texts = { ...rest, 'stocks/yard.coffer': yard! };
        const { editor, settled } = await opened(now);
        editor.commit('a1', house);
        const { house: change, said } = found(await settled());
        expect(change.pieces.same.length).toBe(change.after!.rooms[0]!.takeOff!.pieces.length);
        expect([...new Set(said.map(({ file }) => file))].sort()).toEqual(['box.coffer', 'den.coffer']);
        editor.commit('b2', { 'other/far.coffer': house['yard.coffer'] });
        expect(found(await settled()).house.before).toBeUndefined();
    });

    test('a file that was broken then, or cannot be read, is told and stops nothing', async () => {
        const { editor, settled } = await opened(house);
        editor.commit('a1', { ...house, 'box.coffer': 'profile box {' });
        const broken = found(await settled());
        // what nobody can tell is not called new, and has no price
        expect([broken.house.pieces.fresh, broken.house.price]).toEqual([[], undefined]);
        expect(broken.before.rooms[0]!.takeOff).toBeUndefined();
        editor.commit('b2', { ...house, 'box.coffer': 'TOO LARGE' });
        expect(found(await settled()).unread).toEqual([{ file: 'box.coffer', why: 'too-large' }]);
    });

    test('findings that come and go, those of the dry fit too; what is found in both is neither', async () => {
        const wide: Texts = { ...house, 'box.coffer': house['box.coffer'].replace('blocking { stock pine-1x6 }', 'blocking { stock pine-1x6\n    rip 5 1/4" }') };
        const { editor, settled } = await opened(wide), whole = (await compareTexts(house, wide)).houses[0]!;
        editor.commit('a1', house);
        const { come, gone } = found(await settled()).house.findings;
        expect(come.map(({ rule }) => rule).sort()).toEqual(whole.findings.come.map(({ rule }) => rule).sort());
        expect(gone.map(({ rule }) => rule).sort()).toEqual(whole.findings.gone.map(({ rule }) => rule).sort());
        expect(come.map(({ rule }) => rule)).toContain('bottom-wont-fit');
    });
});

describe('while a room is half written', () => {
    test('what was known of its house stays, and says that it is behind; until it is whole again', async () => {
        const { editor, settled, workspace } = await opened(finer);
        editor.commit('a1', house);
        const whole = found(await settled());
        await workspace.edit({ 'den.coffer': finer['den.coffer']!.replace('coffers-north  4', 'coffers-north') });
        const behind = found(await settled());
        expect([behind.isBehind, behind.house === whole.house]).toEqual([true, true]);
        await workspace.edit({ 'den.coffer': finer['den.coffer']! });
        expect(found(await settled())).toMatchObject({ isBehind: false, said: [{ what: ['room den', 'grid', 'coffers-north'] }] });
    });

    test('a room that was never whole stops nothing', async () => {
        const { editor, settled } = await opened({ ...house, 'den.coffer': house['den.coffer'].replace('coffers-north  3', 'coffers-north') });
        editor.commit('a1', house);
        expect(found(await settled()).isBehind).toBe(false);
    });
});

describe('what was signed', () => {
    const signed = (commit: string): Texts => ({ ...finer, 'job.coffer': finer['job.coffer']!.replace('cut-to  1/16"', `cut-to  1/16"\n  contract {\n    signed  4000 USD on 2026-03-02 at "${commit}"\n  }`) });

    test('is the commit that the contract names, by whatever name the editor knows it', async () => {
        const { editor, settled } = await opened(signed('v1'));
        editor.commit('v1', house);
        editor.commit('b2', signed('v1'));
        expect(found(await settled()).said).toEqual([]);
        const since = found(await settled('den.coffer', 'signed'));
        expect([since.against, since.before.name]).toEqual(['signed', 'v1']);
        expect(since.said.map(({ what }) => what.join(' › '))).toContain('room den › grid › coffers-north');
    });

    test('where there is none, or another, it is said', async () => {
        const { editor, settled } = await opened(finer);
        editor.commit('a1', house);
        expect(await settled('den.coffer', 'signed')).toEqual({ none: 'not-signed' });
        const other = await opened(signed('v9'));
        other.editor.commit('a1', house);
        expect(await other.settled('den.coffer', 'signed')).toEqual({ none: 'unknown-commit' });
    });
});

/** An editor that notes what it is asked. */
function askingEditor(asked: string[]): Connection {
    const sendRequest = (method: string): Promise<null> => {
        asked.push(method);
        return Promise.resolve(null);
    };
    return { sendRequest, console: { log: () => undefined } } as unknown as Connection;
}

describe('above a room', () => {
    test('how many pieces are otherwise since the last commit, and what the change costs; nothing where none is', async () => {
        const { editor, settled, comparisons, workspace } = await opened(finer);
        const { changes } = workspace.coffer.lsp.CodeLensProvider as CofferCodeLenses, asked: string[] = [];
        const titles = (): (string | undefined)[] => changes.provide(workspace.document('den.coffer')).map(lens => changes.resolve(lens).command?.title);
        expect(titles()).toEqual([]);
        changes.compareBy(comparisons, askingEditor(asked));
        editor.commit('a1', house);
        expect(titles()).toEqual([]);
        const { house: { pieces, price } } = found(await settled());
        const words = `since the last commit: ${pieces.fresh.length} pieces new, ${pieces.from.length} from old ones`;
        expect(titles()).toEqual([expect.stringContaining(words)]);
        expect(titles()[0]).toContain(`the house costs ${printMoney(price!.total, price!.currency)} more, without what has no price`);
        editor.commit('b2', finer);
        await settled();
        expect(titles()).toEqual([]);
        expect(asked).toEqual([]);
    });

    test('an editor that asks again when it is told so is told when a line says something else, and not before', async () => {
        const { editor, settled, comparisons, workspace } = await opened(finer), asked: string[] = [];
        const { changes } = workspace.coffer.lsp.CodeLensProvider as CofferCodeLenses;
        (changes as unknown as { client: { refreshesCodeLenses: boolean } }).client.refreshesCodeLenses = true;
        changes.compareBy(comparisons, askingEditor(asked));
        editor.commit('a1', house);
        await settled();
        const before = asked.length;
        expect(new Set(asked)).toEqual(new Set(['workspace/codeLens/refresh']));
        await workspace.edit({ 'den.coffer': `${finer['den.coffer']!}// a remark\n` });
        await settled();
        expect(asked.length).toBe(before);
        await workspace.edit({ 'den.coffer': house['den.coffer'] });
        await settled();
        expect(asked.length).toBe(before + 1);
    });
});

describe('where there is no earlier state', () => {
    test('it is said why: no git, no repository, no commit, an unknown one, an editor that is not asked', async () => {
        const { editor, settled } = await opened(house);
        expect(await settled()).toEqual({ none: 'no-commit' });
        for (const none of ['no-git', 'no-repository', 'switched-off'] as const) {
            editor.none = none;
            editor.commit(none, house);
            expect(await settled()).toEqual({ none });
        }
        editor.none = undefined;
        expect(await settled('den.coffer', 'ffff')).toEqual({ none: 'unknown-commit' });
        const other = await opened(house, { willing: false });
        expect(await other.settled()).toEqual({ none: 'not-asked' });
        expect(other.editor.asked.states).toBe(0);
    });
});
