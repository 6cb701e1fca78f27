import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { MOST_FILES } from '../../src/language/workspace/most-files.ts';
import { FILE_KIND, LIST_FOLDER, READ_FILE, type FileParams } from '../../src/server/messages.ts';
import { Client, hasNoErrors, hasRule, shipped } from './client.ts';

/** A folder inside of a repository: what belongs together is the repository, as for the command line. */
const FILES: Readonly<Record<string, string>> = {
    'shared/yard.coffer': 'edition 1\n\nstock ash-1x6 { size 1x6; lengths 8\', 12\' }\nstock ash-1x8 { size 1x8; lengths 8\', 12\' }\n',
    'job.coffer': 'edition 1\n\njob "Tern Street 2" {\n  cut-to  1/16"\n  kerf    6\'\n}\n',
    'barn/barn.coffer': 'edition 1\n\nstock oak { size one }\n',
    'house/rooms/pantry.coffer': `edition 1
from "../../shared/yard.coffer" use ash-1x6, ash-1x8

profile box { blocking { stock ash-1x6 }; sides { stock ash-1x8 }; bottom { stock ash-1x6; rip 5 15/32" } }
room pantry {
  wall north  9' 2"
  wall east   7'
  grid { coffers-north 2; coffers-east 2; beams box; through north-south }
}
`,
};
const FOLDER = 'house/rooms', PANTRY = 'house/rooms/pantry.coffer';

let client: Client;
afterEach(() => client.dispose());

const write = (name: string, text: string): void => {
    mkdirSync(dirname(join(client.folder, name)), { recursive: true });
    writeFileSync(join(client.folder, name), text);
};

describe('a folder of a repository that is opened by itself', () => {
    test('has what its files import from above it, and the job above it; nothing else there is looked at', async () => {
        client = new Client(shipped);
        for (const [name, text] of Object.entries({ ...FILES, '.git/HEAD': '' })) write(name, text);
        await client.initialize([FOLDER]);
        const pantry = await client.open(PANTRY);
        await client.until(pantry, hasNoErrors);
        await client.until(client.uri('job.coffer'), hasRule('out-of-range'));
        expect(client.findings(client.uri('barn/barn.coffer'))).toBeUndefined();
        // what is imported is kept as it is said in the editor
        const yard = await client.open('shared/yard.coffer');
        await client.replace(yard, 'stock ash-1x8', 'stock ash-1x10');
        await client.until(pantry, findings => !hasNoErrors(findings));
    });

    test('hears of what changes above it on disk, where it is read there', async () => {
        client = new Client(shipped);
        const { 'shared/yard.coffer': yard, 'job.coffer': job, ...rest } = FILES;
        for (const [name, text] of Object.entries({ ...rest, '.git/HEAD': '' })) write(name, text);
        await client.initialize([FOLDER]);
        await client.untilSo(() => client.registered.some(({ registerOptions }) =>
            JSON.stringify(registerOptions) === JSON.stringify({ watchers: [{ globPattern: { baseUri: client.uri('').replace(/\/$/, ''), pattern: '**/*' } }] })));
        const pantry = await client.open(PANTRY), at = { job: client.uri('job.coffer'), sheds: client.uri('house/sheds.coffer') };
        await client.until(pantry, hasRule('missing-import'));
        // the yard is there now
        mkdirSync(join(client.folder, 'shared'));
        await client.onDiskChange('shared/yard.coffer', yard);
        await client.until(pantry, hasNoErrors);
        // a job above, which was not there, is there, is mended and is gone
        await client.onDiskChange('job.coffer', job);
        await client.until(at.job, hasRule('out-of-range'));
        await client.onDiskChange('job.coffer', job!.replace('6\'', '1/8"').replace('1/16"', '1/3"'));
        await client.until(at.job, findings => !hasRule('out-of-range')(findings));
        // what nobody reads stays unread: its findings would have come before those of the job that is told of later
        await client.onDiskChange('barn/barn.coffer', 'edition 1\n\nstock elm { size two }\n');
        await client.onDiskChange('house/sheds.coffer', 'edition 1\n\nstock elm { size two }\n');
        await client.onDiskChange('job.coffer', job);
        await client.until(at.job, hasRule('out-of-range'));
        for (const unread of [client.uri('barn/barn.coffer'), at.sheds]) expect(client.history.some(({ uri }) => uri === unread), unread).toBe(false);
        await client.onDiskChange('job.coffer', undefined);
        await client.until(at.job, findings => findings.length === 0);
        // a folder goes with what it holds, and comes back
        await client.onDiskChange('shared', undefined);
        await client.until(pantry, hasRule('missing-import'));
        write('shared/yard.coffer', yard!);
        await client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: client.uri('shared'), type: 1 }] });
        await client.until(pantry, hasNoErrors);
    });

    test('hears of a table that is named, wherever it lies in the repository', async () => {
        client = new Client(shipped);
        const surveyed = FILES[PANTRY]!.replace('  grid {', '  survey { readings "../../surveys/pantry.csv" in millimeters }\n  grid {');
        const table = 'x,y,reading\n0,0,350\n2700,0,350\n2700,2100,350\n0,2100,350\n';
        for (const [name, text] of Object.entries({ ...FILES, [PANTRY]: surveyed, '.git/HEAD': '' })) write(name, text);
        await client.initialize([FOLDER]);
        const pantry = await client.open(PANTRY);
        await client.until(pantry, hasRule('readings-unread'));
        mkdirSync(join(client.folder, 'surveys'));
        await client.onDiskChange('surveys/pantry.csv', table);
        await client.until(pantry, hasNoErrors);
        await client.onDiskChange('surveys/pantry.csv', `${table}5,5,?\n`);
        await client.until(pantry, hasRule('readings-unread'));
        await client.onDiskChange('surveys/pantry.csv', `\ufeff${table}`);
        await client.until(pantry, hasNoErrors);
        await client.onDiskChange('surveys', undefined);
        await client.until(pantry, hasRule('readings-unread'));
    });

    test('without a repository it stands for itself', async () => {
        client = new Client(shipped);
        for (const [name, text] of Object.entries(FILES)) write(name, text);
        await client.initialize([FOLDER]);
        await client.until(await client.open(PANTRY), hasRule('import-outside-workspace'));
    });

    test('where only the editor reaches the files it is asked for them', async () => {
        client = new Client(shipped);
        const at = ({ uri }: FileParams): string => uri.replace('vault:/', ''), there = Object.entries({ ...FILES, '.git/HEAD': '' });
        client.answer(FILE_KIND, (params: FileParams) => there.some(([name]) => name === at(params)) ? 'file' : there.some(([name]) => name.startsWith(`${at(params)}/`)) ? 'folder' : null);
        client.answer(READ_FILE, (params: FileParams) => FILES[at(params)] ?? null);
        client.answer(LIST_FOLDER, (params: FileParams) => {
            const folder = at(params) === '' ? '' : `${at(params)}/`, inside = there.filter(([name]) => name.startsWith(folder)).map(([name]) => name.slice(folder.length).split('/'));
            return [...new Map(inside.map(([first, ...rest]) => [first!, rest.length > 0 ? 'folder' : 'file']))].map(([name, kind]) => ({ uri: `vault:/${folder}${name}`, kind }));
        });
        await client.initialize([`vault:/${FOLDER}`], { readsFiles: true });
        await client.until(`vault:/${PANTRY}`, hasNoErrors);
        await client.until('vault:/job.coffer', hasRule('out-of-range'));
        expect(client.history.some(({ uri }) => uri.endsWith('barn.coffer'))).toBe(false);
    });
});

test('of a folder with more files than are read at once that is told, and what is opened is read all the same', async () => {
    client = new Client(shipped);
    for (let i = 0; i <= MOST_FILES; i++) write(`many/f${i}.coffer`, i === 999 ? 'edition 1\nstock oak { size one }\n' : '');
    await client.initialize(['many']);
    // the last by its name
    await client.until(await client.open('many/f999.coffer'), findings => !hasNoErrors(findings));
    await client.untilLogged('.coffer files', 1);
    expect(client.log.filter(words => words.includes('.coffer files'))).toEqual([
        'There are 1001 .coffer files in the open folder, and 1000 is the limit: open the folders of some houses instead. Files that you open are read all the same.',
    ]);
});
