import { describe, expect, test } from 'vitest';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { NOTHING_SHOWN } from '../../src/pages/shared/shown.ts';
import { viewInSteps } from '../../src/pages/view/content.ts';
import { viewPage } from '../../src/pages/view/page.ts';
import { renderView } from '../../src/pages/view/render.ts';
import { share, VIEW_STATE } from '../../src/pages/view/state.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { all, readXml } from '../drawing/support/xml.ts';
import { exampleRoom } from '../support/example-room.ts';
import { layOut } from '../../src/ceiling/layout.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';
import { den, house } from '../cli/house.ts';
import { some } from '../support/full.ts';
import { HOSTILE, trespasses } from './hostile.ts';
import { madeBy } from './made.ts';
import { atOnce } from '../../src/plain/steps.ts';

const viewContent = madeBy(viewInSteps);

const denPage = async (title = 'Den'): Promise<RoomOnPage> => roomOnPage(await serve({ ...house, 'den.coffer': den.replace('room den', `room den ${JSON.stringify(title)}`) }), 'den.coffer');

describe('the content of the view', () => {
    test('holds every piece of the cut list, by its id, with its words and its place in the text', async () => {
        const workspace = await serve(house);
        const room = roomOnPage(workspace, 'den.coffer');
        const { pieces, sources } = viewContent(room);
        expect(pieces.map(({ key }) => key).sort()).toEqual(room.takeOff.pieces.map(({ id }) => id).sort());
        for (const { key, words, at } of pieces) {
            const piece = room.takeOff.pieces.find(({ id }) => id === key)!;
            expect(words).toContain(piece.where);
            expect(sources[at]).toEqual(piece.source);
        }
        expect(workspace.words(sources[pieces.find(({ part }) => part === 'side')!.at]!)).toBe('sides');
    });

    test('pieces of one form share it, and every corner is a whole tick inside the room', async () => {
        const { pieces, shapes, size } = viewContent(await denPage());
        expect(shapes.length).toBeLessThan(6);
        for (const { corners, shape } of pieces) {
            const { faces, edges } = shapes[shape]!;
            expect(Math.max(...faces.flat(), ...edges.flat())).toBe(corners.length / 3 - 1);
            const at = (axis: number) => corners.filter((_, i) => i % 3 === axis);
            expect(corners.every(Number.isInteger)).toBe(true);
            expect([
                Math.min(...at(0)) >= 0, Math.max(...at(0)) <= size.width, Math.min(...at(1)) >= 0, Math.max(...at(1)) <= size.length,
                Math.max(...at(2)) <= size.depth,
            ]).toEqual([true, true, true, true, true]);
        }
    });

    test('is plain data, the same for the same text, and short', async () => {
        const content = viewContent(await denPage());
        expect(JSON.parse(JSON.stringify(content))).toEqual(content);
        expect(viewContent(await denPage())).toEqual(content);
        // about what a photograph in a mail takes; a coordinate is a number and no more
        expect(JSON.stringify(content).length / content.pieces.length).toBeLessThan(420);
    });

    test('a clean room has nothing wrong in it; a side that is too long is, with what it runs into', async () => {
        expect(viewContent(await denPage()).wrong).toEqual([]);
        const { ceiling } = layOut(exampleRoom());
        const list = takeOff(ceiling!);
        const pieces = list.pieces.map(piece => (piece.id === 'parlor.side-B-2-north' ? { ...piece, back: piece.back + 2032, face: piece.face + 2032, cutBack: piece.cutBack + 2032, cutFace: piece.cutFace + 2032 } : piece));
        const { faults } = dryFit(ceiling!, { ...list, pieces });
        expect(faults.length).toBeGreaterThan(0);
        expect(faults.some(fault => fault.kind === 'misfit' && fault.piece.id === 'parlor.side-B-2-north')).toBe(true);
    });
});

test('spacers that are too high are wrong, and so are the cleats they run into', async () => {
    const high = { ...house, 'box.coffer': house['box.coffer'].replace('height  5"', 'height  5 1/2"') };
    expect(high['box.coffer']).not.toBe(house['box.coffer']);
    const { wrong, findings, pieces } = viewContent(roomOnPage(await serve(high), 'den.coffer'));
    const parts = new Set(wrong.map(key => pieces.find(piece => piece.key === key)!.part));
    expect([...parts].sort()).toEqual(['cleat', 'spacer']);
    expect(wrong.length).toBeGreaterThan(10);
    expect(findings.some(({ severity, message }) => severity === 'error' && /spacer/.test(message))).toBe(true);
});

describe('the view as markup', () => {
    test.each(some(HOSTILE, 3))('shows a name as text: %s', async name => {
        const room = await denPage(name.replace(/["\\]/g, ''));
        const content = viewContent(room);
        for (const state of [
            VIEW_STATE, { ...VIEW_STATE, list: true, piece: content.pieces[3]!.key },
        ]) expect(trespasses(renderView(content, state, NOTHING_SHOWN).text)).toEqual([]);
        for (const [format, make] of Object.entries(viewPage.exports)) {
            const { bytes, name: file } = await atOnce(make(room, undefined));
            expect(file).toMatch(/^ceiling-den\.(html|svg|glb|ifc)$/);
            expect(bytes.length).toBeGreaterThan(2000);
            if (format === 'html' || format === 'svg') expect(trespasses(String(bytes))).toEqual([]);
        }
    });

    test('lists every piece as a button that leads to its words, when it is asked for', async () => {
        const content = viewContent(await denPage());
        expect(renderView(content, VIEW_STATE, NOTHING_SHOWN).text).not.toContain('data-act="pick"');
        const { text } = renderView(content, { ...VIEW_STATE, list: true }, NOTHING_SHOWN);
        const buttons = [...text.matchAll(/<button[^>]*data-act="pick"[^>]*data-key="([^"]*)" data-at="(\d+)"/g)];
        expect(buttons.map(found => [found[1], Number(found[2])])).toEqual(content.pieces.map(({ key, at }) => [key, at]));
    });

    test('parts that are switched off are unchecked, sliders stand where they were left', async () => {
        const { text } = renderView(viewContent(await denPage()), { ...VIEW_STATE, parts: { bottom: false }, apart: '40', cut: 25, cutFrom: 'east' }, NOTHING_SHOWN);
        expect(text).toMatch(/<input type="checkbox" id="part-side"[^>]* checked>/);
        expect(text).toMatch(/<input type="checkbox" id="part-bottom" data-state="parts\.bottom" ?>/);
        expect(text).toMatch(/id="apart"[^>]* value="40"/);
        expect(text).toMatch(/id="cut"[^>]* value="25"/);
        expect(text).toMatch(/<option value="east" selected>/);
    });

    test('a slider says a share between nothing and all', () => {
        expect([0, '0', 50, '100', '250', -3, 'x', ''].map(share)).toEqual([0, 0, 0.5, 1, 1, 0, 0, 0]);
    });
});

describe('what it is kept as', () => {
    test('a page to print: the picture, and every piece by name', async () => {
        const room = await denPage();
        const { bytes } = await atOnce(viewPage.exports.html!(room, undefined));
        const page = String(bytes);
        expect(page).toContain('class="coffer-view"');
        const lists = [...page.matchAll(/<li>.*?<\/li>/g)].length;
        expect(lists).toBe(room.takeOff.pieces.length);
        expect(page).not.toMatch(/file:|den\.coffer/);
    });

    test('a picture with the pieces that are seen, by id', async () => {
        const room = await denPage();
        const svg = String((await atOnce(viewPage.exports.svg!(room, undefined))).bytes);
        const ids = all(readXml(svg)).flatMap(({ attributes }) => attributes['data-piece'] ?? []);
        const known = new Set(room.takeOff.pieces.map(({ id }) => id));
        expect(ids.length).toBeGreaterThan(20);
        expect(ids.filter(id => !known.has(id))).toEqual([]);
    });
});
