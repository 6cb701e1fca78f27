import { expect, test } from 'vitest';
import { folderWith } from './folder.ts';
import { house } from './house.ts';
import { cofferwright } from './world.ts';

/** The bottom is of a board that another file calls by the name of the blocking's board. */
const files = {
    ...house,
    'attic/yard.coffer': 'edition 1\nstock pine-1x6 {\n  size  1x6\n  species  mdf\n  lengths  10\'\n  price  9 USD per ft\n}\n',
    'box.coffer': house['box.coffer'].replace('\n\nprofile', '\nfrom "attic/yard.coffer" use pine-1x6 as smooth\n\nprofile').replace('bottom { stock pine-1x6 }', 'bottom { stock smooth }'),
    'rates.coffer': 'edition 1\nlabor { crew 1 rate 50 USD per h }\n', 'fewer.coffer': 'edition 1\nfrom "den.coffer" use den\nalternate fewer { den.grid.coffers-north 2 }\n',
};

test('two stocks of one name are kept apart, and told by their files', async () => {
    const cwd = folderWith(files);
    for (const command of [['cut-list'], ['boards'], ['saw'], ['order'], ['estimate'], ['cut-list', '--format', 'csv'], ['boards', '--format', 'csv'], ['order', '--format', 'csv'], ['saw', '--format', 'csv'], ['saw', '--format', 'json'], ['estimate', '--format', 'csv'], ['cut-list', '--format', 'json']]) {
        const { out } = await cofferwright(cwd, command);
        expect(out, command.join(' ')).toContain('pine-1x6 (house/yard.coffer)');
        expect(out, command.join(' ')).toContain('pine-1x6 (attic/yard.coffer)');
    }
    const { houses: [priced] } = JSON.parse((await cofferwright(cwd, ['estimate', '--format', 'json'])).out) as { houses: { alternates: { changes: { boards: { stock: string; before: number; after: number }[] } }[]; estimate: { materials: { stock: string }[] } }[] };
    const changes = priced!.alternates[0]!.changes.boards.map(({ stock }) => stock).filter(name => name.startsWith('pine-1x6'));
    expect(changes.length).toBeGreaterThan(0);
    expect(changes.filter(name => !/^pine-1x6 \((house|attic)\/yard\.coffer\)$/.test(name))).toEqual([]);
    expect(new Set(priced!.estimate.materials.map(({ stock }) => stock).filter(name => name.startsWith('pine-1x6'))).size).toBe(2);
});

test('a name that is the only one of its kind stands alone', async () => {
    expect((await cofferwright(folderWith(house), ['boards'])).out).not.toContain('.coffer)');
});
