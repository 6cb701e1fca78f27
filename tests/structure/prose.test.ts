import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { projectFiles, read, root } from './files.ts';

/** What is said of the program in prose goes stale unnoticed. What of it can be held against the program is. */
const developers = read('DEVELOPERS.md');
const prose = projectFiles().filter(path => /\.md$/.test(path) || path === 'src/language/builtin/builtin.coffer');

describe('prose', () => {
    test('promises nothing: what is not computed is said in the library alone, as `not computed`', () => {
        const promise = /\b(in (a|the) (later|next|future) version|computed later|coming soon|planned for (a|the)|to be (implemented|supported|computed)|not (yet )?(implemented|supported)|work in progress|wired in)\b/i;
        expect('read and checked; computed in a later version').toMatch(promise);
        expect(prose.filter(path => path !== 'src/rules/REFERENCE.md').flatMap(path => read(path).split('\n').filter(line => promise.test(line)).map(line => `${path}: ${line}`))).toEqual([]);
    });

    test('files and folders that the guides name are there', () => {
        const named = [...developers.matchAll(/`((?:src|tests|syntaxes|examples)\/[^`\s]*)`/g)].map(([, path]) => path!).filter(path => !/[<>*]|[A-Z]{3,}(?!\.md)/.test(path));
        expect(named.length).toBeGreaterThan(40);
        expect([...new Set(named)].filter(path => !existsSync(join(root, path)))).toEqual([]);
    });

    test('the table of folders names every folder of src, and no other', () => {
        const told = [...developers.matchAll(/^\| (`src\/.*?) \|/gm)].flatMap(([, cell]) => [...cell!.matchAll(/`src\/(\w+)`/g)].map(([, name]) => name!));
        const there = readdirSync(join(root, 'src'), { withFileTypes: true }).filter(entry => entry.isDirectory()).map(({ name }) => name);
        expect(told.sort()).toEqual(there.sort());
    });
});
