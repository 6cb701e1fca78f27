import { expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { dryFitOf, inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { inspect, layoutOf, takeOffOf } from '../../src/pipeline/inspect.ts';
import { surveyedHall } from '../../src/rules/support/examples.ts';
import { TestWorkspace } from '../support/workspace.ts';

const HUMP = surveyedHall('13 5/8"');

const all = (house: TestWorkspace): readonly string[] => {
    const file = readFile(house.document('hall.coffer'));
    return [...inspect(file).findings, ...inspectClosely(file)]
        .map(({ rule, message, at: { range: { start } } }) => `${start.line}:${start.character} ${rule} ${message}`);
};

test('a digit in a reading lays no beam out and takes no piece off again; all that is found is what a cold start finds', async () => {
    const house = await TestWorkspace.open({ 'hall.coffer': HUMP }), ceilingNow = () => layoutOf(readFile(house.document('hall.coffer')).rooms[0]!).ceiling!;
    const before = ceilingNow(), pieces = takeOffOf(before);
    const edits: readonly [text: string, isSame: boolean][] = [
        [HUMP.replace('13 5/8"', '13 1/8"'), true], [HUMP.replace('13 5/8"', '14"'), true], [HUMP.replace('9\' 5"', '9\' 6"'), false],
        [HUMP.replace('coffers-north  3', 'coffers-north  2'), false], [HUMP, true],
        // a line more: what stands behind it is elsewhere in the text
        [HUMP.replace('    point', '    point 3\', 3\' up 14"\n    point'), false],
    ];
    for (const [text, isSame] of edits) {
        await house.edit({ 'hall.coffer': text });
        expect(all(house), text).toEqual(all(await TestWorkspace.open({ 'hall.coffer': text })));
        const ceiling = ceilingNow();
        expect(takeOffOf(ceiling) === pieces, text).toBe(isSame);
        expect(ceiling.room).toBe(readFile(house.document('hall.coffer')).rooms[0]);
        if (isSame) expect(dryFitOf(ceiling)).toBe(dryFitOf(before));
    }
});
