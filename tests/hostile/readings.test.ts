import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith } from '../cli/folder.ts';
import { cofferwright } from '../cli/world.ts';

/** Files of readings as they come from somebody else's instrument, or from somebody who means no good, through the whole program. */
const JOB = `edition 1
stock s { size 1x6; lengths 24' }
profile b { blocking { stock s }; sides { stock s }; bottom { stock s } }
room a {
  wall north 20'
  wall east 20'
  grid { coffers-north 2; coffers-east 2; beams b; through north-south }
  survey { readings "./table.csv" in millimeters }
}
`;
const bytes = (text: string, encoding: 'utf8' | 'utf16le' | 'latin1' = 'utf8'): Uint8Array => Buffer.from(text, encoding);
const utf16be = (text: string): Uint8Array => Buffer.from(text, 'utf16le').swap16();
const SOUND = 'x,y,z\n0,0,361\n2400,0,358\n0,1200,360\n2400,1200,359\n';

test.each<[string, Uint8Array, RegExp]>([
    ['a zero byte', bytes('x,y,z\n0,0\u0000,361\n'), /`\.\/table\.csv` is not a text file/],
    ['nothing but zero bytes', new Uint8Array(100_000), /`\.\/table\.csv` is not a text file/],
    ['UTF-16 with its mark', bytes(`\ufeff${SOUND}`, 'utf16le'), /`\.\/table\.csv` is UTF-16 text: save it as UTF-8/],
    ['UTF-16 without', bytes(SOUND, 'utf16le'), /`\.\/table\.csv` is not a text file/],
    ['UTF-16, the other way round', utf16be(`\ufeff${SOUND}`), /`\.\/table\.csv` is UTF-16 text: save it as UTF-8/],
    ['letters of an old encoding', bytes('x,y,höhe\n0,0,361\n', 'latin1'), /`\.\/table\.csv` is not UTF-8 text: save it as UTF-8/],
    ['a line of a megabyte', bytes(`x,y,z\n0,0,${'3'.repeat(999_000)}\n`), /Row 2 of `table\.csv` has a cell of more than 200 characters/],
    ['a line of a megabyte of cells', bytes(`x,y,z\n0,0,361${',1'.repeat(400_000)}\n`), /Row 2 of `table\.csv`: it has 400003 cells, and the header has 3/],
    ['more than a megabyte', bytes(`${SOUND}${'0,0,361\n'.repeat(130_000)}`), /more than 1000000 characters/],
    ['more than any file', new Uint8Array(9_000_000).fill(49), /8 000 000|more than/],
    ['a quote that is closed nowhere', bytes('x,y,z\n0,0,361\n0,"5,361\n7,7,7\n'), /Row 3 of `table\.csv` opens a quote that is closed nowhere/],
    ['quotes within a cell', bytes('x,y,z\n0,0,36"1\n'), /Row 2 of `table\.csv`/],
    ['a quote over several lines', bytes('x,y,z\n0,0,"361\n\n"\n0,0,"a\nb"\n'), /Row \d of `table\.csv`/],
    ['semicolons in the rows alone', bytes('x,y,z\n0;0;361\n'), /Row 2 of `table\.csv`/],
    ['semicolons in one row', bytes('x,y,z\n0,0,361\n5;5;361\n'), /Row 3 of `table\.csv`/],
    ['a formula', bytes('x,y,z\n0,0,=1+1\n'), /Row 2 of `table\.csv`: `=1\+1` in column `z` is no length/],
    ['a command', bytes('x,y,z\n0,0,"=cmd|\'/C calc\'!A0"\n'), /Row 2 of `table\.csv`: .* in column `z` is no length/],
    ['an error of a spreadsheet', bytes('x,y,z\n0,0,#DIV/0!\n'), /Row 2 of `table\.csv`: `#DIV\/0!` in column `z` is no length/],
    ['what is no number to a computer', bytes('x,y,z\n0,0,NaN\n0,1,Infinity\n0,2,1e308\n'), /Row 2 of `table\.csv`: `NaN` in column `z` is no length/],
    ['a figure without end', bytes(`x,y,z\n0,0,${'9'.repeat(150)}\n`), /Row 2 of `table\.csv`: `9+` in column `z` is (no length|more than 1000 feet)/],
    ['farther than any room', bytes('x,y,z\n0,0,361\n99999999,0,361\n'), /Row 3 of `table\.csv`: `99999999` in column `x` is more than 1000 feet/],
    ['below the level line', bytes('x,y,z\n0,0,-361\n'), /Row 2 of `table\.csv`: `-361` in column `z` is less than nothing/],
    ['signs that a terminal obeys', bytes('x,y,z\n0,0,\u001b[31m\u202e1\n'), /Row 2 of `table\.csv`/],
    ['a row cut short', bytes('x,y,z\n0,0,361\n0,0'), /Row 3 of `table\.csv`: there is nothing in column `z`/],
])('%s: one clear error with its row, and nothing of it used', async (_, table, says) => {
    const cwd = folderWith({ 'job.coffer': JOB });
    writeFileSync(join(cwd, 'table.csv'), table);
    const { code, out, err } = await cofferwright(cwd, ['check', '--format', 'concise']);
    expect(err).toBe('');
    expect(code).toBe(1);
    expect(out.length).toBeLessThan(2500);
    expect(out).toMatch(says);
    // every one at the line that names the file, and none of the program's own
    expect(out).not.toMatch(/internal-error|TypeError|undefined/);
    expect(out.split('\n').filter(line => says.test(line)).every(line => line.startsWith('job.coffer:8:'))).toBe(true);
    expect(out).not.toMatch(/[\u0000\u001b\u202e]/);
    expect((await cofferwright(cwd, ['cut-list'])).code).toBe(1);
});

test('the same table as it should be is read', async () => {
    for (const text of [SOUND, `\ufeff${SOUND}`, SOUND.replaceAll('\n', '\r\n'), SOUND.replaceAll(',', ';'), SOUND.replaceAll(',', '\t')]) {
        const { out } = await cofferwright(folderWith({ 'job.coffer': JOB, 'table.csv': text }), ['check', '--format', 'concise']);
        expect(out).not.toContain('table.csv');
    }
});
