// From a keystroke to what the pane of changes is sent, by the server as it is shipped, in a process of its own, over the protocol, with files that are
// read out of a real repository: houses of 20 and of 200 rooms, and 20 rooms with a history of 10,000 commits. The hand rests for 400 ms before anything
// is compared, which is in every figure but the processor's. `first`: the prices and pieces; `whole`: with what does not go together any more;
// `processor`: what of its time all of that takes the server, which does not hang on what else the machine does (Linux). Milliseconds.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, realpathSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { readStored } from '../../src/extension/stored-files.ts';
import type { ChangesContent } from '../../src/pages/changes/content.ts';
import { OLD_FILES, OLD_STATE, PANE_CONTENT, PANE_SHOWS, type OldFilesParams, type OldFilesResult, type OldStateParams, type OldStateResult, type PaneContentParams } from '../../src/server/messages.ts';
import { Client } from '../server/client.ts';
import { madeHouse } from './made-house.ts';
import { median } from './spread.ts';

const TIMES = 7;

export default async function measure(keep: (figures: Record<string, number>) => void): Promise<Record<string, number>> {
    const figures: Record<string, number> = {};
    for (const [rooms, commits] of [[20, 1], [20, 10_000], [200, 1]] as const) {
        Object.assign(figures, await measured(rooms, commits));
        keep(figures);
    }
    return figures;
}

async function measured(rooms: number, commits: number): Promise<Record<string, number>> {
    const client = new Client(fileURLToPath(new URL('../../dist/server/main.cjs', import.meta.url))), house = join(realpathSync(client.folder), 'house');
    try {
        for (const { path, text } of madeHouse(rooms)) write(join(house, path.replace('/house/', '')), text);
        const hash = history(house, commits), top = pathToFileURL(house).href;
        client.answer(OLD_STATE, ({ commit }: OldStateParams): OldStateResult => ({
            commit: { hash: commit ?? hash, date: '2026-10-03', subject: 'As signed' }, top,
            others: git(house, ['diff', '--name-only', '-z', hash]).split('\0').filter(name => name.endsWith('.coffer')).map(name => `${top}/${name}`),
        }));
        client.answer(OLD_FILES, async ({ commit, files }: OldFilesParams): Promise<OldFilesResult> => {
            const stored = await readStored('git', house, commit, files.map(uri => fileURLToPath(uri)), 1e6);
            return files.flatMap((uri, i) => { const bytes = stored[i]; return bytes instanceof Uint8Array ? [{ uri, text: Buffer.from(bytes).toString('utf8') }] : []; });
        });
        let heard: (content: ChangesContent) => void = () => undefined;
        client.on(PANE_CONTENT, ({ content }: PaneContentParams) => { if (content) heard(content as ChangesContent); });
        await client.initialize(['house'], { readsHistory: true });
        const uri = await client.open('house/rooms/room-1.coffer'), text = client.text(uri), shown = ({ found }: ChangesContent): string => JSON.stringify(found?.said ?? null);
        const next = (typed: string): Promise<{ first: number; whole: number; processor: number }> => new Promise(resolve => {
            const began = performance.now(), spent = processorOf(client);
            let first: number | undefined;
            heard = content => {
                const { found, isWorking } = content;
                if (!found || isWorking || found.isBehind || !shown(content).includes(`"after":"${typed}"`)) return;
                first ??= performance.now() - began;
                if (!found.isLooking) resolve({ first, whole: performance.now() - began, processor: processorOf(client) - spent });
            };
        });
        const type = (coffers: number): Promise<{ first: number; whole: number; processor: number }> => {
            const told = next(String(coffers));
            void client.change(uri, text.replace(/coffers-north  \d/, `coffers-north  ${coffers}`));
            return told;
        };
        const cold = type(6);
        await client.notify(PANE_SHOWS, { pane: 'p', kind: 'changes', pinned: false, room: { uri, room: /room (\S+)/.exec(text)![1]! }, width: 700, height: 900 });
        const once = await cold, later: { first: number; whole: number; processor: number }[] = [];
        for (let time = 0; time < TIMES; time++) later.push(await type([5, 7, 6][time % 3]!));
        const name = `${rooms} rooms, ${commits === 1 ? 'one commit' : `${commits.toLocaleString('en-US')} commits`}`;
        return {
            [`${name}, the editor just opened, first, ms`]: once.first, [`${name}, the editor just opened, whole, ms`]: once.whole, [`${name}, the editor just opened, processor, ms`]: once.processor,
            [`${name}, a keystroke, first, median, ms`]: median(later.map(({ first }) => first)), [`${name}, a keystroke, whole, median, ms`]: median(later.map(({ whole }) => whole)),
            [`${name}, a keystroke, processor, median, ms`]: median(later.map(({ processor }) => processor)),
        };
    } finally {
        client.dispose();
    }
}

/** What the server has had of the processor, where the system tells it in hundredths of a second; else not a number. */
function processorOf(client: Client): number {
    try {
        const [, words = ''] = readFileSync(`/proc/${client['process']!.pid}/stat`, 'utf8').split(') '), fields = words.split(' ');
        return 10 * (Number(fields[11]) + Number(fields[12]));
    } catch {
        return NaN;
    }
}

/** The house as it lies, in so many commits, of which all but the last say something beside it. */
function history(house: string, commits: number): string {
    git(house, ['init', '-q', '-b', 'main']);
    const all = Array.from({ length: commits - 1 }, (_, i) => `commit refs/heads/main\ncommitter Nora <nora@example.org> ${1_760_000_000 + i * 60} +0100\ndata 6\nA word\nM 100644 inline notes.txt\ndata ${String(i).length}\n${i}\n`);
    if (all.length > 0) {
        git(house, ['fast-import', '--quiet'], all.join(''));
        git(house, ['reset', '-q', 'main']);
    }
    git(house, ['add', '-A']);
    git(house, ['-c', 'user.name=Nora', '-c', 'user.email=nora@example.org', 'commit', '-q', '-m', 'As signed']);
    return git(house, ['rev-parse', 'HEAD']).trim();
}

function git(cwd: string, words: readonly string[], input?: string): string {
    return execFileSync('git', words, { cwd, encoding: 'utf8', ...input !== undefined && { input }, stdio: ['pipe', 'pipe', 'ignore'], env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null' } });
}

function write(path: string, text: string): void {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
}
