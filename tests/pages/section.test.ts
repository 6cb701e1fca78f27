import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { sectionInSteps, type CaseShown, type SectionContent } from '../../src/pages/section/content.ts';
import { sectionPage } from '../../src/pages/section/page.ts';
import { renderSection, SECTION_STATE } from '../../src/pages/section/render.ts';
import { NOTHING_SHOWN } from '../../src/pages/shared/shown.ts';
import type { TestWorkspace } from '../support/workspace.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';
import { all, readXml } from '../drawing/support/xml.ts';
import { some } from '../support/full.ts';
import { HOSTILE, trespasses } from './hostile.ts';
import { parlor, type ParlorWords } from './parlor.ts';
import { madeBy } from './made.ts';
import { atOnce } from '../../src/plain/steps.ts';

const sectionContent = madeBy(sectionInSteps);

const NARROW = { width: 300, height: 700 }, WIDE = { width: 1600, height: 900 };
async function room(words: ParlorWords = {}): Promise<{ page: RoomOnPage; workspace: TestWorkspace }> {
    const workspace = await serve({ 'parlor.coffer': parlor(words) });
    return { workspace, page: roomOnPage(workspace, 'parlor.coffer') };
}
async function content(words: ParlorWords = {}, wishes = WIDE): Promise<SectionContent> {
    return sectionContent((await room(words)).page, wishes);
}
const caseOf = ({ sections, runs }: SectionContent, id: string): CaseShown => {
    const found = [...sections.flatMap(({ cases }) => cases), ...runs.flatMap(({ cases }) => cases)].find(each => each.id === id);
    if (!found) throw new Error(`no figure ${id}`);
    return found;
};

describe('the content of the section page', () => {
    test('holds every section of the room, once, with the lines that are built so', async () => {
        const { sections } = await content();
        expect(sections.map(({ label, lines, key }) => [label, lines, key])).toEqual([['deep-box', 'lines 1, 2 and A', '1 2 A'], ['clear-box', 'line B', 'B'], ['Band', 'north, east, south and west walls', 'along north east south west']]);
    });

    test('leads from every part of the picture to its words, and stands for all its pieces', async () => {
        const { page, workspace } = await room();
        const { sections: [section], sources } = sectionContent(page, WIDE);
        const parts = all(readXml(section!.svg)).filter(({ attributes }) => attributes['data-keys'] !== undefined);
        expect(parts.map(({ attributes }) => workspace.words(sources[Number(attributes['data-at'])]!))).toEqual(expect.arrayContaining(['blocking', 'spacers', 'sides', 'cleats', 'bottom']));
        const bottom = parts.find(({ attributes }) => attributes['aria-label'] === 'Bottom')!;
        const ofLines = page.takeOff.pieces.filter(({ part, line }) => part === 'bottom' && line !== 'B').map(({ id }) => id);
        expect(bottom.attributes['data-keys']!.split(' ')).toEqual(ofLines);
        expect(bottom.attributes).toMatchObject({ role: 'button', tabindex: '0' });
    });

    test('says in words what a narrow picture has no room for', async () => {
        const wide = (await content({}, WIDE)).sections[0]!, narrow = (await content({}, NARROW)).sections[0]!;
        expect(wide.notes).toEqual([]);
        expect(wide.svg).toContain('3⁄4" × 7 1⁄4"');
        expect(narrow.notes.map(({ name }) => name)).toEqual(expect.arrayContaining(['Blocking', 'Spacer, beyond', 'Cleats', 'Side', 'Bottom', 'Groove']));
        expect(narrow.notes.find(({ name }) => name === 'Side')!.words).toContain('3/4" × 7 1/4", held down 1/4"');
    });

    test('explains every length that follows from the parts, term by term', async () => {
        const { page, workspace } = await room();
        const { sections: [section], sources } = sectionContent(page, WIDE);
        const why = (name: string) => section!.lengths.find(each => each.name === name)!;
        expect(why('Room for the spacer')).toMatchObject({ figure: '5 1/4"', off: '' });
        expect(why('Room for the spacer').why.map(({ text }) => text).join('')).toBe('held down 1/4" + side 7 1/4" - bottom 3/4" - cleat 3/4" - blocking 3/4" = 5 1/4"');
        const heldDown = why('Depth of the beam').why.find(({ text }) => text.startsWith('held down'))!;
        expect(workspace.words(sources[heldDown.at!]!)).toBe('1/4"');
    });

    test('says nothing of the machine, draws in every size, and is the same for the same text', async () => {
        const { page } = await room();
        for (const [width, height] of [[20, 20], [300, 500], [640, 200], [1000, 2000], [1600, 900], [6000, 4000]] as const) {
            const markup = renderSection(sectionContent(page, { width, height }), SECTION_STATE, NOTHING_SHOWN).text;
            expect(markup).not.toMatch(/NaN|Infinity|file:|parlor\.coffer/);
        }
        expect(JSON.parse(JSON.stringify(await content()))).toEqual(await content());
    });
});

/**
 * Arithmetic by hand, in inches. Play = blocking - bottom; worst: every cause at its worst at once; paint takes 0.008" to 0.012" of it
 * (common practice, no source: 0.004" to 0.006" an edge).
 */
describe('what the tolerances do', () => {
    const two = { blocking: 'rip 5 7/16" ± 1/64"', bottom: 'rip 5 13/32" ± 1/64"\n    gap 0" to 1/32"' };
    test.each([
        ['widths that are exact', {}, 'It just goes in, without any play, and no gap shows.', false],
        ['a bottom that is too wide', { blocking: 'rip 5 7/16"' }, 'It jams: it is 1/16" too wide.', true],
        ['a gap that everybody sees', { bottom: 'rip 5 3/8"' }, 'The gap shows: up to 1/8" in all, 1/16" a side.', true],
        ['a gap that is wider than asked for', { bottom: 'rip 5 29/64"' }, 'The gap may reach 3/64" in all, more than the 1/32" that is asked for.', true],
        // 1/32" - 2 x 1/64" - 0.012"; 1/32" + 2 x 1/64" - 0.008"
        ['two widths, each off by itself', two, 'At worst it jams: it is 0.012" too wide. The gap may reach 1/16" in all, more than the 1/32" that is asked for.', true],
        // off together, so nothing of the fit is off
        ['two widths of one fence setting', { blocking: 'rip 5 7/16" ± 1/64" with "fence A"', bottom: 'rip 5 13/32" ± 1/64" with "fence A"' }, 'It goes in with 1/32" of play, and no gap shows.', false],
        // 5 1/2" - 5 29/64" = 3/64" asked for, less 2 x 1/128" and 0.012"; plus 2 x 1/128" and less 0.008"
        ['two widths that may be off and still go in', { blocking: 'rip 5 1/2" ± 1/128"', bottom: 'rip 5 29/64" ± 1/128"\n    gap 0" to 3/64"' }, 'The gap may reach 1/16" in all, more than the 3/64" that is asked for.', true],
        ['the same with paint said', { job: 'paint-film 0.005" to 0.006"', bottom: 'rip 5 15/32"' }, 'It goes in with ~1/64" of play even at worst, and no gap shows.', false],
    ] as const)('%s', async (_, words, verdict, isWrong) => {
        expect(caseOf(await content(words), 'tolerance.fit')).toMatchObject({ verdict, isWrong });
    });

    test('what shares a fence setting cancels, and the figure says so', async () => {
        const reasons = (await content({ blocking: 'rip 5 7/16" ± 1/64" with "fence A"', bottom: 'rip 5 13/32" ± 1/64" with "fence A"' }));
        expect(caseOf(reasons, 'tolerance.fit').reasons.map(({ words }) => words)).toContain('Fence setting fence A: 1/64" either way on both, off together, so that it cancels');
        const apart = caseOf(await content(two), 'tolerance.fit').reasons.map(({ words }) => words);
        expect(apart).toEqual(expect.arrayContaining(['Rip of the blocking: 1/64" either way', 'Rip of the bottom: 1/64" either way', 'Between the sides: 5 7/16" ± 1/64"']));
    });

    test('worst and usual stand in the picture in figures: sqrt(2) x 1/64" = 0.022", with half the range of the paint 0.022"', async () => {
        const { svg } = caseOf(await content(two), 'tolerance.fit');
        const texts = all(readXml(svg)).map(({ text }) => text.trim()).filter(Boolean);
        // usual: 1/32" - 0.010" -+ sqrt(2 (1/64")² + 0.002²) = -0.001" and 0.043"
        expect(texts).toEqual(expect.arrayContaining(['at worst', '-0.012"', '~3\u204464"', 'root-sum-square', '-0.001"', 'jams', 'bottom', 'side']));
    });

    test.each([
        ['5"', 'The spacer stays 1/4" clear of the cleat.', false],
        ['5 1/2"', 'The spacer runs 1/4" into the cleat.', true],
        ['5 1/4" ± 1/32"', 'At worst the spacer runs 1/32" into the cleat.', true],
    ])('a spacer of %s', async (height, verdict, isWrong) => {
        const workspace = await serve({ 'parlor.coffer': parlor().replace('height 5"', `height ${height}`) });
        expect(caseOf(sectionContent(roomOnPage(workspace, 'parlor.coffer'), WIDE), 'tolerance.spacer')).toMatchObject({ verdict, isWrong });
    });

    test('press adds up along the run: 3 pieces of 1/64" are 3/64", of 1/32" 3/32"', async () => {
        const press = async (each: string) => caseOf(await content({ bottom: `gap 0" to 1/32"\n    press ${each}` }), 'tolerance.press.east-west.A');
        expect(await press('1/64"')).toMatchObject({ isWrong: false, verdict: '3 pieces press 3/64" in one run, of 1/16" at most.' });
        expect(await press('1/32"')).toMatchObject({ isWrong: true, verdict: '3 pieces press 3/32" in one run; 1/16" in all is the most.' });
    });

    test('a saw that is off pinches the channels: 3 x 1/32" / 2 = 0.047" each at worst, sqrt(2² + 1²) x 1/32" / 2 = 0.035"', async () => {
        const shown = caseOf(await content({ job: 'cut-tolerance 1/32"' }), 'tolerance.channel.east-west.1');
        expect(shown.isWrong).toBe(true);
        expect(shown.verdict).toMatch(/^Sides that are cut long pinch the channel: at worst its bottom is 3\/64" too wide\./);
        expect(all(readXml(shown.svg)).map(({ text }) => text.trim())).toEqual(expect.arrayContaining(['~-1\u204432"', '~1\u204432"']));
        const closer = caseOf(await content({ job: 'cut-tolerance 1/64"' }), 'tolerance.channel.east-west.1');
        expect(closer).toMatchObject({ isWrong: false, verdict: 'At worst the bottom is ~1/32" too wide: it is eased as it goes in.' });
        expect((await content()).runs.flatMap(({ cases }) => cases).filter(({ id }) => id.startsWith('tolerance.channel'))).toEqual([]);
    });

    test('what rounding leaves over is said, with who takes it', async () => {
        // north-south 11' 0" less the band and two beams of 7" is 116 1/2"; a third is 38.8333", cut 38 27/32": 1/32" too little
        const shown = caseOf(await content(), 'tolerance.rounding.north-south');
        expect(shown.verdict).toMatch(/^1\/32" is missing in the run\. The outer coffers take it: they are cut at 3' 2 13\/16" and 3' 2 27\/32"\.$/);
        expect((await content()).runs.map(({ title }) => title)).toEqual(['Along the north wall', 'Along the east wall']);
    });

    test('says how much larger than true it draws: about so many times as the axis is', async () => {
        const { svg, times } = caseOf(await content(two), 'tolerance.fit');
        const bar = all(readXml(svg)).find(({ attributes }) => attributes['id'] === 'tolerance.fit.bar.worst')!;
        const xs = [...all(bar).find(({ attributes }) => attributes['d'])!.attributes['d']!.matchAll(/M([\d.]+)/g)].map(([, x]) => Number(x));
        const [from, to] = [Math.min(...xs), Math.max(...xs)];
        // the bar is 4 x 1/64" + 0.004" long
        expect((to - from) / 72 / (4 / 64 + 0.004) / times).toBeCloseTo(1, 1);
    });
});

describe('the section page as markup', () => {
    test.each(some(HOSTILE, 3))('shows a name as text: %s', async name => {
        const { page } = await room({ title: name.replace(/["\\]/g, ''), job: `client "${name.replace(/["\\]/g, '')}"` });
        for (const wishes of [NARROW, WIDE]) expect(trespasses(renderSection(sectionContent(page, wishes), SECTION_STATE, NOTHING_SHOWN).text)).toEqual([]);
        for (const make of Object.values(sectionPage.exports)) {
            const { bytes, name: file } = await atOnce(make(page, { section: name }));
            expect(file).toMatch(/^sections?-parlor\.\w+$/);
            if (!/\.(csv|dxf)$/.test(file)) expect(trespasses(String(bytes))).toEqual([]);
        }
    });

    test('shows the section that is chosen, and the first where none of that name is left', async () => {
        const shown = await content();
        const pressed = (section: string) => /aria-pressed="true"><bdi>([\w-]+)/.exec(renderSection(shown, { section }, NOTHING_SHOWN).text)?.[1];
        expect([pressed(''), pressed('B'), pressed('1 2 A'), pressed('gone')]).toEqual(['deep-box', 'clear-box', 'deep-box', 'deep-box']);
    });

    test('of a room without a beam and with nothing round its walls says so, on the page and in every file', async () => {
        const page = roomOnPage(await serve({ 'parlor.coffer': parlor().replace('coffers-north 3', 'coffers-north 1').replace('coffers-east 3', 'coffers-east 1').replace('  line B { beams clear-box }\n', '').replace('    perimeter { kind band; stock board-1x8 }\n', '') }), 'parlor.coffer');
        expect(renderSection(sectionContent(page, WIDE), SECTION_STATE, NOTHING_SHOWN).text).toContain('No beam runs through this room.');
        expect(String((await atOnce(sectionPage.exports.svg!(page, undefined))).bytes)).toContain('No beam runs through this room.');
        for (const make of Object.values(sectionPage.exports)) expect(String((await atOnce(make(page, undefined))).bytes)).not.toMatch(/NaN|undefined/);
    });

    test('speaks millimeters where the job does', async () => {
        const shown = await content({ job: 'show millimeters\n  cut-tolerance 2 mm' });
        expect(caseOf(shown, 'tolerance.channel.east-west.1').verdict).toMatch(/at worst its bottom is 3 mm too wide/);
        const markup = renderSection(shown, SECTION_STATE, NOTHING_SHOWN).text;
        expect(markup).toContain('139.7 mm');
        expect(markup.replace(/<[^>]*>/g, '')).not.toMatch(/\d"/);
    });

    test('is kept as a sheet of the section that is chosen, and as a table of all', async () => {
        const { page } = await room();
        const svg = String((await atOnce(sectionPage.exports.svg!(page, { section: 'B' }))).bytes);
        expect(svg).toContain('Line B.');
        const { data, errors } = Papa.parse<Record<string, string>>(
            String((await atOnce(sectionPage.exports.csv!(page, undefined))).bytes), { header: true, skipEmptyLines: true },
        );
        expect(errors).toEqual([]);
        expect(data.filter(row => row['length'] === 'depth').map(row => [row['section'], row['lines'], row['in']])).toEqual([['deep-box', '1 2 A', '7.5'], ['clear-box', 'B', '7.5']]);
    });
});
