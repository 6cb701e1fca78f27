import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fileName, fileNameOf } from '../../src/text/file-name.ts';

describe('a file\'s name', () => {
    test.each<[string, string]>([
        ['Plum Street 4', 'bid-plum-street-4.pdf'], ['Дом у реки', 'bid-дом-у-реки.pdf'], ['厨房', 'bid-厨房.pdf'], ['E\u0301tude', 'bid-étude.pdf'], ['../../etc/passwd', 'bid-etc-passwd.pdf'],
    ])('%s: %s', (words, name) => {
        expect(fileName('bid', words, 'pdf')).toBe(name);
    });

    test('titles without a letter stay apart, and so do those that differ only at a far end', () => {
        const names = ['!!!', '???', '—', '', ...['a', 'b'].map(end => `${'long '.repeat(80)}${end}`), ...['а', 'б'].map(end => `${'дом '.repeat(80)}${end}`)].map(title => fileName('bid', title, 'pdf'));
        expect(new Set(names).size).toBe(names.length);
        expect(names.filter(name => name === 'bid.pdf')).toEqual([]);
    });

    // learn.microsoft.com/windows/win32/fileio/naming-a-file: reserved whatever the ending
    test.each(['con', 'PRN', 'aux', 'NUL', 'com1', 'Lpt9'])('%s is kept by Windows for itself', name => {
        expect(fileNameOf(name, 'glb')).toBe(`${name}_.glb`);
        expect(fileName('', name, 'glb')).toBe(`${name.toLowerCase()}_.glb`);
    });

    test('whatever the words, it is one name in one folder, of at most 255 bytes', () => {
        fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 400 }), words => {
            for (const name of [fileName('plan', words, 'html'), fileNameOf(words, 'html')]) {
                expect(name).toMatch(/^[^\p{C}\\/:*?"<>|\s.]+\.html$/u);
                expect(new TextEncoder().encode(name).length).toBeLessThan(200);
                expect(name).toBe(name.normalize('NFC'));
            }
        }), { seed: 12, numRuns: 500 });
    });
});
