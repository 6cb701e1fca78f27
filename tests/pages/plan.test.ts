import { describe, expect, test } from 'vitest';
import { planInSteps } from '../../src/pages/plan/content.ts';
import { planPage } from '../../src/pages/plan/page.ts';
import { PLAN_STATE, renderPlan } from '../../src/pages/plan/render.ts';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { NOTHING_SHOWN } from '../../src/pages/shared/shown.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';
import { all, readXml } from '../drawing/support/xml.ts';
import { some } from '../support/full.ts';
import { HOSTILE, trespasses } from './hostile.ts';
import { madeBy } from './made.ts';
import { atOnce } from '../../src/plain/steps.ts';

const planContent = madeBy(planInSteps);

const job = (title = 'Den', more = '', beam = ''): string => `edition 1
stock board-1x6 { size 1x6; lengths 12', 16' }
stock board-1x8 { size 1x8; lengths 12', 16' }
stock strip-1x2 { size 1x2; lengths 8' }
profile box {
  blocking { stock board-1x6; screws #8 x 2 1/2" every 16" }
  spacers { stock board-1x6; height 5"; every 24" }
  sides { stock board-1x8; held-down 1/4"; rabbet 1/4" x 1/4" on lower-back; corners mitered; nails 16 ga x 2" every 12" }
  cleats { rip 3/4" x 3/4" from strip-1x2; nails 18 ga x 1 1/4" every 8" }
  bottom { stock board-1x6; gap 0" to 1/32"; ease 1/16"; biscuits 1 x #10 ${beam} }
}
room den ${JSON.stringify(title)} {
  wall north 13'
  wall east 11'
  wall south 13'
  wall west 11'
  grid {
    coffers-north 3
    coffers-east 2
    beams box
    through north-south
    perimeter { kind band; stock board-1x8 }
  }
  fixture lamp light at 6' 6", 5' 6" diameter 6"
${more}}
`;
const den = async (title?: string, more?: string): Promise<RoomOnPage> => roomOnPage(await serve({ 'den.coffer': job(title, more) }), 'den.coffer');

describe('the content of a plan', () => {
    test('leads from every part to its words', async () => {
        const workspace = await serve({ 'den.coffer': job() });
        const room = roomOnPage(workspace, 'den.coffer');
        const { svg, sources } = planContent(room, {});
        const parts = all(readXml(svg)).filter(({ attributes }) => attributes['data-key'] !== undefined);
        const words = (key: string): string => workspace.words(sources[Number(parts.find(({ attributes }) => attributes['data-key'] === key)!.attributes['data-at'])]!);
        expect(words('den.side-1-1-east')).toBe('sides');
        expect(words('den.band-north')).toBe('perimeter');
        expect(words('fixture.lamp')).toBe('lamp');
        expect(words('line.1')).toBe('3');
        expect(words('line.A')).toBe('2');
        expect(words('coffer.4')).toBe('3');
        // every piece that is seen is there once, and so are the coffers
        const keys = parts.map(({ attributes }) => attributes['data-key']!);
        expect(new Set(keys).size).toBe(keys.length);
        expect(keys.filter(key => key.startsWith('coffer.'))).toHaveLength(6);
        const visible = room.takeOff.pieces.filter(({ part }) => ['side', 'bottom', 'blocking', 'band'].includes(part)).map(({ id }) => id);
        expect(visible.filter(id => !keys.includes(id))).toEqual([]);
        for (const { attributes } of parts) expect(attributes).toMatchObject({ role: 'button', tabindex: '-1' });
        expect(parts.filter(({ attributes }) => !attributes['aria-label'])).toEqual([]);
    });

    test('leads from walls, lines and coffers of any room to what sets them', async () => {
        const workspace = await serve({ 'den.coffer': `edition 1
stock board-1x6 { size 1x6; lengths 16' }
stock board-1x8 { size 1x8; lengths 16' }
profile box { blocking { stock board-1x6 }; sides { stock board-1x8 }; bottom { stock board-1x6 } }
room den {
  wall north       18'
  wall east        8'
  wall wing-south  7' heading west
  wall inner-east  6' heading south
  wall south       heading west
  wall west        14'
  grid { lines-north 12' 6", 5' 4" from north-east; lines-east 4' 3"; beams box; through north-south }
  line own { at 2' 6" from wall-south; until 1 }
}
` });
        const { svg, sources } = planContent(roomOnPage(workspace, 'den.coffer'), {});
        const parts = all(readXml(svg)).filter(({ attributes }) => attributes['data-key'] !== undefined);
        const words = (key: string): string => workspace.words(sources[Number(parts.find(({ attributes }) => attributes['data-key'] === key)!.attributes['data-at'])]!);
        expect(['north', 'wing-south', 'inner-east', 'south'].map(name => words(`wall.${name}`))).toEqual([`18'`, `7'`, `6'`, 'south']);
        expect(['1', '2', 'A', 'own'].map(name => words(`line.${name}`))).toEqual([`12' 6"`, `5' 4"`, `4' 3"`, 'own']);
        expect(parts.filter(({ attributes }) => attributes['data-key']!.startsWith('coffer.')).length).toBeGreaterThan(4);
    });

    test('says nothing of the machine in its markup', async () => {
        const { svg } = planContent(await den(), {});
        expect(svg).not.toMatch(/file:|den\.coffer|\/house|data-source/);
    });

    test('is drawn for the room there is', async () => {
        const room = await den();
        for (const [width, height] of [[20, 20], [300, 500], [700, 200], [1600, 900], [6000, 4000]] as const) {
            const { svg, ground } = planContent(room, { width, height });
            expect(svg).toContain(`viewBox="0 0 ${Math.round(ground.width * 100) / 100} ${Math.round(ground.height * 100) / 100}"`);
            expect(svg).not.toMatch(/NaN|Infinity/);
        }
    });

    test('is plain data, the same for the same text', async () => {
        const content = planContent(await den(), { width: 600, height: 600 });
        expect(JSON.parse(JSON.stringify(content))).toEqual(content);
        expect(planContent(await den(), { width: 600, height: 600 })).toEqual(content);
    });

    test('draws a finding at the parts it is about, once', async () => {
        const files = { 'den.coffer': job('Den', '', '').replace('height 5"', 'height 6 1/2"') };
        const { findings, ground } = planContent(roomOnPage(await serve(files), 'den.coffer'), { width: 800, height: 700 });
        const [first] = findings.filter(({ rule }) => rule === 'spacer-hits-cleat');
        expect(first).toBeDefined();
        expect(first!.keys.length).toBeGreaterThan(5);
        expect(first!.keys.every(key => /^den\.(spacer|cleat)-/.test(key))).toBe(true);
        const [x, y] = first!.mark!;
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(ground.width);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(ground.height);
    });
});

describe('the plan as markup', () => {
    test.each(some(HOSTILE, 3))('shows a name as text: %s', async name => {
        const room = await den(name.replace(/["\\]/g, ''));
        const { text } = renderPlan(planContent(room, {}), PLAN_STATE, NOTHING_SHOWN);
        expect(trespasses(text)).toEqual([]);
        for (const make of Object.values(planPage.exports)) {
            const { bytes, name: file } = await atOnce(make(room, undefined));
            expect(file).toMatch(/^plan-den\.\w+$/);
            if (!/\.(csv|dxf)$/.test(file)) expect(trespasses(String(bytes))).toEqual([]);
        }
    });

    test('leaves out the layers that are switched off, and no others', async () => {
        const content = planContent(await den(), {});
        const { text } = renderPlan(content, { layers: { sides: false, dimensions: true } }, NOTHING_SHOWN);
        expect(text).toMatch(/class="plan-page without-sides"/);
        expect(text).not.toMatch(/data-state="layers.sides"[^>]* checked/);
        expect(text).toMatch(/data-state="layers.dimensions"[^>]* checked/);
        expect(content.layers).not.toContain('trim');
    });

    test('as CSV holds every piece', async () => {
        const room = await den();
        const rows = String((await atOnce(planPage.exports.csv!(room, undefined))).bytes).trim().split('\r\n');
        expect(rows).toHaveLength(1 + room.takeOff.pieces.length);
        expect(rows[0]).toBe('piece,part,where,west in,east in,north in,south in,length in,standing');
    });
});
