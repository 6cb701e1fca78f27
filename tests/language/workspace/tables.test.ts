import { describe, expect, test } from 'vitest';
import { readFile } from '../../../src/language/read-file.ts';
import { createServerServices } from '../../../src/server/services.ts';
import { surveyedHall } from '../../../src/rules/support/examples.ts';
import { TestWorkspace, uriOf } from '../../support/workspace.ts';

const POINTS = /(?: {4}point .*\n)+/;
const ROWS = '0,0,361.5\n3911.6,0,360\n3911.6,2870.2,362\n0,2870.2,361\n';
const TABLE = `x,y,reading\n${ROWS}`;

/** The hall with its readings in a file. */
const hallWith = (line: string): string => surveyedHall('14"').replace(POINTS, () => `    ${line}\n`);
const HALL = hallWith('readings "../surveys/hall.csv" in millimeters');

async function open(files: Readonly<Record<string, string>>): Promise<TestWorkspace> {
    return TestWorkspace.serve({ 'rooms/hall.coffer': HALL, ...files }, createServerServices);
}
const readings = (workspace: TestWorkspace): number | undefined => readFile(workspace.document('rooms/hall.coffer')).rooms[0]?.survey?.points.length;
const said = (workspace: TestWorkspace): string[] => workspace.published('rooms/hall.coffer').filter(({ rule }) => rule === 'readings-unread').map(({ message }) => message);

describe('a table that a survey names', () => {
    test('is read with the file, and again when it has changed, is gone, and is there again', async () => {
        const workspace = await open({ 'surveys/hall.csv': TABLE });
        expect([readings(workspace), said(workspace)]).toEqual([4, []]);
        await workspace.edit({ 'surveys/hall.csv': `${TABLE}1000,1000,370\n` });
        expect(readings(workspace)).toBe(5);
        await workspace.edit({ 'surveys/hall.csv': `${TABLE}1000,1000,high\n` });
        expect([readings(workspace), said(workspace)]).toEqual([4, ['Row 6 of `hall.csv`: `high` in column `reading` is no length.']]);
        await workspace.edit({ 'surveys/hall.csv': undefined });
        expect([readings(workspace), said(workspace)]).toEqual([0, ['There is no file `../surveys/hall.csv`, seen from this one.']]);
        await workspace.edit({ 'surveys/hall.csv': TABLE });
        expect([readings(workspace), said(workspace)]).toEqual([4, []]);
        // with its folder, which is all that is told then
        await workspace.edit({ surveys: undefined });
        expect(readings(workspace)).toBe(0);
    });

    test('what cannot be read is told once, at the words that name it', async () => {
        const workspace = await open({});
        expect(workspace.published('rooms/hall.coffer').map(({ rule }) => rule)).toEqual(['readings-unread']);
        const [finding] = readFile(workspace.document('rooms/hall.coffer')).findings;
        expect(workspace.words(finding!.at)).toBe('"../surveys/hall.csv"');
    });

    test('of a name that is nearly right the right one is told', async () => {
        expect(said(await open({ 'surveys/hal.csv': TABLE, 'surveys/den.csv': TABLE }))).toEqual(['There is no file `../surveys/hall.csv`, seen from this one. Similar names: `hal.csv`.']);
    });

    test.each([
        ['readings "../../elsewhere/hall.csv" in millimeters', 'is outside the repository'],
        ['readings "/etc/hall.csv" in millimeters', 'is not a path seen from this file'],
        ['readings "../surveys/hall.coffer" in millimeters', 'ends with .csv, .tsv or .txt'],
        ['readings "../surveys/hall" in millimeters', 'ends with .csv, .tsv or .txt'],
        ['readings "" in millimeters', 'Which file?'],
        ['readings "../surveys/hall.csv" in millimeters columns "x", "y"', 'Three columns are needed'],
    ])('%s', async (line, words) => {
        const [first, ...rest] = said(await open({ 'rooms/hall.coffer': hallWith(line), 'surveys/hall.csv': TABLE }));
        expect(first).toContain(words);
        expect(rest).toEqual([]);
    });

    test('an alternate may have another', async () => {
        const alternate = 'alternate again "Surveyed again" { hall.survey.readings "../surveys/again.csv" in millimeters }\n';
        const workspace = await open({ 'rooms/hall.coffer': HALL + alternate, 'surveys/hall.csv': TABLE, 'surveys/again.csv': `${TABLE}1000,1000,370\n` });
        const { rooms, alternates } = readFile(workspace.document('rooms/hall.coffer'));
        expect([rooms[0]?.survey?.points.length, alternates[0]?.rooms[0]?.room.survey?.points.length]).toEqual([4, 5]);
    });

    test('a row outside of the room is told by its row, and of many only the first', async () => {
        const workspace = await open({ 'surveys/hall.csv': `${TABLE}5000,0,360\n5001,0,360\n5002,0,360\n5003,0,360\n5004,0,360\n0,0,370\n` });
        const unclear = workspace.published('rooms/hall.coffer').filter(({ rule }) => rule === 'survey-unclear').map(({ message }) => message);
        expect(unclear).toHaveLength(5);
        expect(unclear.filter(message => message.includes('beyond the east wall')).map(message => /^Row (\d+) of `hall\.csv`: this reading lies/.exec(message)?.[1])).toEqual(['6', '7', '8']);
        expect(unclear).toContain('Rows of `hall.csv` that lie outside of the room too: 2, the first of them row 9.');
        expect(unclear.some(message => message.startsWith('Row 11 of `hall.csv`: this place was read before in row 2:'))).toBe(true);
    });

    test('from another corner it is the same ceiling', async () => {
        const turned = ROWS.trim().split('\n').map(row => row.split(',').map(Number)).map(([x, y, up]) => [3911.6 - x!, 2870.2 - y!, up].map(each => each!.toFixed(1)).join(',')).join('\n');
        const places = async (line: string, rows: string): Promise<unknown> => {
            const workspace = await open({ 'rooms/hall.coffer': hallWith(line), 'surveys/hall.csv': `x,y,reading\n${rows}` });
            return workspace.published('rooms/hall.coffer').map(({ rule, message }) => [rule, message]);
        };
        expect(await places('readings "../surveys/hall.csv" in millimeters from south-east', turned)).toEqual(await places('readings "../surveys/hall.csv" in millimeters', ROWS));
    });

    test('its path leads there', async () => {
        const workspace = await open({ 'surveys/hall.csv': TABLE }), document = workspace.document('rooms/hall.coffer');
        const links = await workspace.coffer.lsp.DocumentLinkProvider!.getDocumentLinks(document, { textDocument: { uri: document.uri.toString() } });
        expect(links!.map(({ range, target }) => [document.textDocument.getText(range), target])).toEqual([['"../surveys/hall.csv"', uriOf('surveys/hall.csv').toString()]]);
    });
});
