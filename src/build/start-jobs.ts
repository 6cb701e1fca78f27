import { createHash } from 'node:crypto';
import { serialize } from 'node:v8';
import { nodeFiles } from '../cli/file-system.ts';
import { run } from '../cli/program.ts';
import { notingTerminal } from '../cli/rehearsal.ts';
import { replaceFile } from '../cli/replace-file.ts';
import type { World } from '../cli/world.ts';
import type { BoardProver } from '../cutting/board-prover.ts';
import { USUAL_STEPS } from '../cutting/look-closer.ts';
import { withStyles } from '../text/terminal.ts';
import { boardsInThreads } from '../worker/boards-thread.ts';

/**
 * The commands of `npm start`, as the command line runs them, but all in one process: files are read once, and boards that several commands
 * ask about are looked for once.
 * @param commands the first of them read what all read; the rest begin together, so that while boards are looked for, in threads, others are done
 * @param boards the script of the search for boards, as it is shipped, or what looks for them in its place
 * @returns what each of them prints. Findings (exit code 1) are no failure here
 */
export async function printedBy(
    commands: readonly (readonly string[])[], { cwd, boards, first }: { readonly cwd: string; readonly boards: string | BoardProver; readonly first: number },
): Promise<string[]> {
    const prover = typeof boards === 'string' ? boardsInThreads(boards, { steps: USUAL_STEPS, keep: true, say: words => { throw new Error(words); } }) : boards;
    const world = { cwd, prover: askedOnce(prover), kept: {} }, printed: string[] = [];
    for (const argv of commands.slice(0, first)) printed.push(await printedByOne(argv, world));
    return [...printed, ...await Promise.all(commands.slice(first).map(argv => printedByOne(argv, world)))];
}

async function printedByOne(argv: readonly string[], world: Pick<World, 'cwd' | 'prover' | 'kept'>): Promise<string> {
    let said = '', result = '';
    const terminal = notingTerminal(act => {
        if ('say' in act) said += `${act.say}\n`;
        else if ('result' in act) result += withStyles(act.result, () => '');
    });
    const code = await run(argv, {
        ...world, disk: nodeFiles, stopped: new AbortController().signal, openTerminal: () => terminal,
        replace: (path, content, before) => replaceFile(nodeFiles, path, content, before),
        readStdin: () => Promise.resolve(new Uint8Array()), serveEditor: () => Promise.reject(new Error('There is no editor here.')),
    });
    if (code !== 0 && code !== 1) throw new Error(`cofferwright ${argv.join(' ')} ended with exit code ${code}\n${said}`);
    return result || said;
}

/** The same questions are looked into once, and whoever asks them hears all that is found. Nobody here breaks a search off. */
function askedOnce(prover: BoardProver): BoardProver {
    const searches = new Map<string, { readonly found: Heard[]; readonly tell: ((...heard: Heard) => void)[] }>();
    return {
        prove(asked, tell) {
            const key = createHash('sha256').update(serialize(asked)).digest('hex'), known = searches.get(key);
            if (known) {
                const before = [...known.found];
                known.tell.push(tell);
                queueMicrotask(() => { before.forEach(heard => { tell(...heard); }); });
                return () => {};
            }
            const search = { found: [] as Heard[], tell: [tell] };
            searches.set(key, search);
            return prover.prove(asked, (...heard) => {
                search.found.push(heard);
                search.tell.forEach(each => { each(...heard); });
            });
        },
    };
}
type Heard = Parameters<Parameters<BoardProver['prove']>[1]>;
