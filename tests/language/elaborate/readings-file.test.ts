import { describe, expect, test } from 'vitest';
import { readCell, commaOf, spaceMissing, unitIn, type CellUnit } from '../../../src/language/elaborate/readings-cell.ts';
import { MOST_READINGS, MOST_TEXT, readReadings, type SaidOfFile } from '../../../src/language/elaborate/readings-file.ts';
import { inches, millimeters } from '../../../src/quantity/rational.ts';

const read = (text: string, said: Partial<SaidOfFile> = {}) => readReadings({ text }, 'den.csv', { from: 'north-west', ...said });
/** What was read, in millimeters, with its row. */
const inMillimeters = (text: string, said?: Partial<SaidOfFile>): number[][] => {
    const { readings, troubles } = read(text, said);
    expect(troubles).toEqual([]);
    return readings.map(({ x, y, up, row }) => [...[x, y, up].map(ticks => ticks / 640), row]);
};

describe('a table of readings', () => {
    const WANTED = [[0, 0, 361.5, 2], [2400, 0, 358, 3], [0, 1200.5, 360, 4]];

    test.each<[string, string, Partial<SaidOfFile>?]>([
        ['commas', 'x,y,reading\n0,0,361.5\n2400,0,358\n0,1200.5,360\n', { unit: 'millimeters' }],
        ['semicolons and decimal commas', 'x;y;reading\n0;0;361,5\n2400;0;358\n0;1200,5;360', { unit: 'millimeters' }],
        ['tabs', 'x\ty\treading\n0\t0\t361,5\n2400\t0\t358\n0\t1200,5\t360', { unit: 'millimeters' }],
        ['decimal commas within quotes', 'x,y,reading\n0,0,"361,5"\n2400,0,358\n0,"1200,5",360', { unit: 'millimeters' }],
        ['a byte order mark and line ends of another system', '\ufeffx,y,reading\r\n0,0,361.5\r\n2400,0,358\r\n0,1200.5,360\r\n', { unit: 'millimeters' }],
        ['line ends of an old system', 'x,y,reading\r0,0,361.5\r2400,0,358\r0,1200.5,360', { unit: 'millimeters' }],
        ['units in the header', 'X (mm),Y [mm],Reading_cm\n0,0,36.15\n2400,0,35.8\n0,1200.5,36'],
        ['a unit in every cell', 'x,y,z\n0 mm,0 mm,36.15 cm\n2.4 m,0 mm,358 mm\n0 mm,1200.5 mm,360 mm'],
        ['other columns beside them, in any order', 'Point,Height,Easting,Southing,Note\n1,361.5,0,0,"by the door, left"\n2,358,2400,0,\n3,360,0,1200.5,', { unit: 'millimeters' }],
        ['columns that are said', 'a,b,c,x\n0,0,361.5,9\n2400,0,358,9\n0,1200.5,360,9', { unit: 'millimeters', columns: ['A', 'b ', 'c'] }],
        ['from the south, where a header counts north', 'east,north,up\n0,0,361.5\n2400,0,358\n0,1200.5,360', { unit: 'millimeters', from: 'south-west' }],
    ])('%s', (_, text, said) => {
        expect(inMillimeters(text, said)).toEqual(WANTED);
    });

    test.each(['_', ' .', '(', '1', '1 ', "1'", '1/', '1,', '"" '])('a cell without end, of %j, is told and not looked into, in the header and below', filling => {
        const endless = `"x${filling.repeat(400_000 / filling.length)}q"`, trouble = (row: number): string => `Row ${row} of \`den.csv\` has a cell of more than 200 characters, which is no reading.`;
        expect(read(`${endless},y,z\n1,2,3\n`, { unit: 'millimeters' }).troubles).toEqual([trouble(1)]);
        expect(read(`x,y,z\n${endless},2,3\n`, { unit: 'millimeters' }).troubles).toEqual([trouble(2)]);
    });

    test('of very many columns the first are named', () => {
        expect(read(`${'x,'.repeat(100_000)}z\n1,2,3\n`, { unit: 'millimeters' }).troubles).toEqual([expect.stringMatching(/^.{0,60}100000 columns.{0,100}`x` and 99992 more\. Say which/)]);
    });

    test('rows are counted as a spreadsheet counts them, empty ones too', () => {
        expect(inMillimeters('\n,,\nx,y,z\n0,0,1\n\n,,\n0,5,1\n', { unit: 'millimeters' }).map(([, , , row]) => row)).toEqual([4, 7]);
    });

    test('no header is lost where a name has a unit of its own kind behind it', () => {
        expect(read('x (in),y (ft),z_mm\n100,8,350\n').readings).toEqual([{ x: inches(100), y: inches(96), up: millimeters(350), row: 2 }]);
    });

    test.each<[string, Partial<SaidOfFile>]>([
        ['x (ft),y (ft),reading', { unit: 'inches' }], ['x,y,reading (in)', { unit: 'feet' }], ['x (ft),y,reading (in)', { unit: 'feet' }], ['x (ft),y (ft),reading (in)', { unit: 'inches' }],
    ])('the unit of the line is that of the columns that have none: %s', (header, said) => {
        expect(read(`${header}\n5,8,14 1/4\n`, said)).toEqual({ readings: [{ x: inches(60), y: inches(96), up: inches('14 1/4'), row: 2 }], troubles: [] });
    });

    test.each<[string, string, Partial<SaidOfFile> | undefined, string]>([
        ['nothing in it', ' \n', undefined, '`den.csv` holds nothing'],
        ['a header alone', 'x (mm),y (mm),z (mm)\n', undefined, 'holds no reading: below its row of headers'],
        ['no header', '0,0,361.5\n2400,0,358\n', undefined, 'Row 1 of `den.csv` holds figures, and no names of columns'],
        ['other columns', 'a,b,c\n1,2,3\n', undefined, 'has no column for how far along the north wall: its first row says `a`, `b` and `c`.'],
        ['two columns that may be meant', 'x,y,z,height\n1,2,3,4\n', undefined, 'has 2 columns for the reading: `z` and `height`'],
        ['a column that is said and not there', 'x,y,z\n1,2,3\n', { columns: ['x', 'y', 'up'] }, 'has no column `up`: its first row says `x`, `y` and `z`.'],
        ['a column that counts the other way', 'x,north,z\n1,2,3\n', undefined, 'The column `north` of `den.csv` counts the other way: say from which corner'],
        ['no unit', 'x,y,z\n1,2,3\n', undefined, 'Nothing says in which unit `den.csv` is'],
        ['two units', 'x (mm),y (mm),z (mm)\n1,2,3\n', { unit: 'inches' }, 'says millimeters in its header, and this line says inches'],
        ['a unit that is none of several', 'x (ft),y (ft),z (in)\n1,2,3\n', { unit: 'meters' }, 'says feet and inches in its header, and this line says meters'],
        ['commas that may part thousands', 'x;y;z\n1,200;2,400;3,500\n', { unit: 'millimeters' }, 'figures such as `1,200`, whose comma may part thousands'],
        ['a quote that is not closed', 'x,y,z\n1,2,3\n1,2,"14\n5,6,7\n', { unit: 'millimeters' }, 'Row 3 of `den.csv` opens a quote that is closed nowhere.'],
        ['a cell without a figure', 'x,y,z\n1,2,3\n1,,3\n', { unit: 'millimeters' }, 'Row 3 of `den.csv`: there is nothing in column `y`.'],
        ['a row that is cut off', 'x,y,z\n1,2\n', { unit: 'millimeters' }, 'Row 2 of `den.csv`: there is nothing in column `z`.'],
        ['a cell too many', 'x,y,z\n0,5,2,3\n', { unit: 'millimeters' }, 'Row 2 of `den.csv`: it has 4 cells, and the header has 3.'],
        ['words in a cell', 'x,y,z\n1,2,none\n', { unit: 'millimeters' }, 'Row 2 of `den.csv`: `none` in column `z` is no length.'],
        ['a reading below the level line', 'x,y,z\n1,2,-3\n', { unit: 'millimeters' }, '`-3` in column `z` is less than nothing'],
        ['a unit that cannot be right', 'x,y,z\n1,2,361.5\n', { unit: 'meters' }, '`361.5` in column `z` is more than 1000 feet. Is the unit right?'],
        ['what is no text', 'x,y\0,z\n', undefined, 'is no text that can be read'],
        ['letters of another encoding', 'x,y,H\ufffdhe\n', undefined, 'is no text that can be read'],
        ['more characters than any survey', `x,y,z\n${'1,2,3\n'.repeat(MOST_TEXT / 6)}`, undefined, `has more than ${MOST_TEXT} characters`],
        ['more rows than any survey', `x,y,z\n${'1,2,3\n'.repeat(MOST_READINGS + 1)}`, { unit: 'millimeters' }, `has more than ${MOST_READINGS} rows`],
    ])('%s: is told, and nothing of it used', (_, text, said, words) => {
        const { troubles, readings } = read(text, said);
        expect(troubles).toHaveLength(1);
        expect(troubles[0]).toContain(words);
        expect(readings.every(({ row }) => !troubles[0]!.includes(`Row ${row} `))).toBe(true);
    });

    test('as many rows as are read, and of many that cannot be read only the first are told one by one', () => {
        expect(read(`x,y,z\n${'1,2,3\n'.repeat(MOST_READINGS)}`, { unit: 'millimeters' }).readings).toHaveLength(MOST_READINGS);
        expect(read('x,y,z\n1,2,a\n1,2,b\n1,2,c\n4,5,6\n1,2,d\n1,2,e\n', { unit: 'millimeters' })).toEqual({
            readings: [{ x: 2560, y: 3200, up: 3840, row: 5 }],
            troubles: [...[2, 3, 4].map((row, i) => `Row ${row} of \`den.csv\`: \`${'abc'[i]}\` in column \`z\` is no length.`), 'Rows of `den.csv` that cannot be read either: 2, the first of them row 6.'],
        });
    });
});

describe('a cell', () => {
    test.each<[string, CellUnit | undefined, boolean, number | 'no-unit' | undefined]>([
        ['14 1/4', 'inches', false, inches('14 1/4')], ['14-1/4', 'inches', false, inches('14 1/4')], ['14¼', 'inches', false, inches('14 1/4')], ['3/8', 'inches', false, inches('3/8')],
        ['14.25', 'inches', false, inches('14 1/4')], ['14,25', 'inches', true, inches('14 1/4')], ['14,25', 'inches', false, undefined], ['.5', 'inches', false, inches('1/2')],
        ['4\' 2 1/2"', undefined, false, inches('50 1/2')], ['4\'-2 1/2"', 'millimeters', false, inches('50 1/2')], ['3 ft', undefined, false, inches(36)],
        ['361.5 mm', 'inches', false, millimeters('361.5')], ['36,15 cm', undefined, true, millimeters('361.5')], ['1.2', 'feet', false, inches('14.4')],
        ['-12', 'inches', false, inches(-12)], ['−12', 'inches', false, inches(-12)], ['+12', 'inches', false, inches(12)], ['12', undefined, false, 'no-unit'],
        ['4\'2', 'inches', false, undefined], ['1e3', 'millimeters', false, undefined], ['1/0', 'inches', false, undefined], ['12 in 5', 'inches', false, undefined], ['', 'inches', false, undefined],
        ['9'.repeat(50), 'inches', false, undefined],
    ])('%s in %s', (cell, unit, comma, ticks) => {
        expect(readCell(cell, unit, comma)).toBe(ticks);
    });

    test.each<[string, string[]]>([
        ['145/16', ['14 5/16']], ['4\' 145/16"', ['4\' 14 5/16"']], ['1115/16', ['11 15/16', '111 5/16']], ['-145/16', ['-14 5/16']], ['3/2', []], ['14 5/16', []], ['15/16', []], ['14-45/16', []], ['101/16', ['10 1/16']], ['200/16', []],
    ])('a space is missing in %s, or not', (cell, likely) => {
        expect(spaceMissing(cell)).toEqual(likely);
    });

    test('a figure in which a space is missing is not read as another one', () => {
        expect(read('x,y,reading\n0,0,14 3/8\n10,0,145/16\n', { unit: 'inches' }).troubles)
            .toEqual(['Row 3 of `den.csv`: `145/16` in column `reading` is most likely `14 5/16`: a space is missing. Write it with the space.']);
    });

    test.each<[string[], boolean | undefined]>([
        [['1', '2'], false], [['1,5', '2'], true], [['1,200', '0,5'], true], [['0,200', '0,500'], true], [['1,200', '3,400'], undefined], [['1,200', '3.5'], false], [['1,200,300', '4'], undefined],
    ])('the comma of %j', (cells, is) => {
        expect(commaOf(cells)).toBe(is);
    });

    test.each<[string, CellUnit | undefined]>([
        ['x (mm)', 'millimeters'], ['Reading [in]', 'inches'], ['z_mm', 'millimeters'], ['height, ft', 'feet'], ['x (")', 'inches'], ['x', undefined], ['main', undefined], ['x (east)', undefined], ['m', undefined],
    ])('the unit of the header %s', (header, unit) => {
        expect(unitIn(header)).toBe(unit);
    });
});
