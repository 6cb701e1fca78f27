import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith } from '../cli/folder.ts';
import { cofferwright } from '../cli/world.ts';
import { OUTPUTS } from '../standing/outputs.ts';
import { some } from '../support/full.ts';
import { mustBeClean } from './clean.ts';
import { EVIL, evilHouse } from './house.ts';

const CHECKS = ['human', 'concise', 'json', 'sarif', 'github'].map(format => ({ argv: ['check', '--format', format] }));
const OTHERS: typeof OUTPUTS = [
    { argv: ['boards', '--quick', '--leftovers'] }, { argv: ['format', '--check'] }, { argv: ['format'] }, { argv: ['cut-list', EVIL] }, { argv: ['cut-list', '--room', EVIL] }, { argv: ['estimate', '--quick', '--with', EVIL] },
    { argv: ['explain', EVIL] }, { argv: ['draw', '--out', 'a\u001b[31mb\nc'], folder: 'a\u001b[31mb\nc' },
    { argv: ['bid', '--quick', '--out', 'pdf'], folder: 'pdf' }, { argv: ['invoice', '--number', EVIL, '--date', EVIL, '--out', 'bills'], folder: 'bills' }, { argv: ['bid', '--quick', '--format', 'html', '--date', EVIL, '--out', 'dated'], folder: 'dated' },
];
const ALL = [...CHECKS, ...OTHERS, ...OUTPUTS] as typeof OUTPUTS;

test.each(some(ALL, 5).map(one => [one.argv.join(' ').replaceAll(EVIL, '…'), one] as const))('%j', async (_name, { argv, folder }) => {
    const cwd = folderWith(evilHouse());
    const { code, out, err } = await cofferwright(cwd, argv);
    expect(code, err).toBeLessThan(3);
    const format = argv[argv.indexOf('--format') + 1]!;
    mustBeClean(folder === undefined && argv.includes('--format') ? format : 'human', out);
    mustBeClean('human', err);
    if (folder === undefined) return;
    const files = readdirSync(join(cwd, folder)).filter(name => !name.startsWith('.'));
    expect(files.length, err).toBeGreaterThan(0);
    for (const name of files) {
        expect(name).toMatch(/^[\p{L}\p{M}\p{N}_-]+\.\w+$/u);
        mustBeClean(name.slice(name.lastIndexOf('.') + 1), readFileSync(join(cwd, folder, name), name.endsWith('.glb') || name.endsWith('.pdf') ? 'latin1' : 'utf8'), `${argv.join(' ')} ${name}`);
    }
    rmSync(join(cwd, folder), { recursive: true });
});
