import { describe, expect, test } from 'vitest';
import { projectFiles, read } from './files.ts';

const files = projectFiles();
const isCode = (path: string): boolean => /\.(ts|mjs|cjs|langium|coffer)$/.test(path);

describe('the repository', () => {
    test('the top level is fixed', () => {
        const allowed = new Set([
            'README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'LICENSE', 'package.json', 'package-lock.json', 'tsconfig.json', 'langium-config.json',
            'src', 'syntaxes', 'examples', 'tests',
        ]);
        const top = [...new Set(files.map(path => path.split('/')[0]!))];
        expect(top.filter(name => !name.startsWith('.') && !allowed.has(name))).toEqual([]);
        expect([...allowed].filter(name => !top.includes(name))).toEqual([]);
    });

    test('the README says in its first paragraph what job the program does', () => {
        const paragraphs = read('README.md').split(/\n\s*\n/).map(text => text.trim()).filter(text => text !== '' && !/^(#|!\[|<)/.test(text));
        expect(paragraphs[0]).toMatch(/coffered ceiling/i);
        expect(paragraphs[0]).toMatch(/box beam/i);
        expect(paragraphs[0]).toMatch(/cut list|piece/i);
    });

    test('no code file is longer than 400 lines', () => {
        // the vocabulary is a list that is read by looking a word up, and the editor shows it as the one file it is
        const long = files.filter(path => isCode(path) && path !== 'src/language/builtin/builtin.coffer').map(path => [path, read(path).split('\n').length - 1] as const).filter(([, lines]) => lines > 400);
        expect(long).toEqual([]);
    });

    test('the lock file records no download addresses, and every package\'s checksum', () => {
        const lock = JSON.parse(read('package-lock.json')) as { packages: Record<string, { resolved?: string; integrity?: string }> };
        const packages = Object.entries(lock.packages).filter(([path]) => path !== '');
        expect(packages.length).toBeGreaterThan(100);
        expect(packages.filter(([, entry]) => entry.resolved !== undefined).map(([path]) => path)).toEqual([]);
        expect(packages.filter(([, entry]) => !entry.integrity).map(([path]) => path)).toEqual([]);
        expect(read('package-lock.json')).not.toMatch(/https?:\/\/(registry|[\w.-]+\/.*\.tgz)/);
    });

    test('dependencies are pinned to exact versions', () => {
        const manifest = JSON.parse(read('package.json')) as Record<'dependencies' | 'devDependencies', Record<string, string>>;
        const versions = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });
        expect(versions.filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version))).toEqual([]);
    });

    test('nothing is left undone in the code, and no test is skipped', () => {
        const unfinished = new RegExp(`\\b(${['TO' + 'DO', 'FIX' + 'ME', 'X' + 'XX', 'HA' + 'CK'].join('|')})\\b`);
        const skipped = /\b(test|it|describe)\.(skip|only|todo|fails)\b/;
        const found = files.filter(isCode).filter(path => unfinished.test(read(path)) || skipped.test(read(path)) && path !== 'tests/structure/repository.test.ts');
        expect(found).toEqual([]);
    });
});
