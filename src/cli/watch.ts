import { dirname } from 'node:path';
import { watch } from 'chokidar';
import { EXIT, type ExitCode } from './exit-code.ts';
import { findFiles, SUFFIX, type Found } from './find-files.ts';
import type { Asked } from './input.ts';
import type { World } from './world.ts';
import type { Workspace } from './workspace.ts';

export interface Watching {
    readonly workspace: Workspace;
    readonly paths: readonly string[];
    readonly world: World;
    readonly asked: Asked;
    /** Does the work again and prints it. */
    again(): Promise<unknown>;
}

/** Editors save in several steps; what happens within this time is one change. */
const SETTLE_MS = 60;

/**
 * Looks after the files in use and does the work again whenever one changes, comes or goes, in the same warm workspace.
 * Ends when it is told to.
 */
export async function keepChecking({ workspace, paths, world, asked, again }: Watching): Promise<ExitCode> {
    const folders = (): string[] => [...new Set([...paths, ...workspace.paths(), ...workspace.missing()].map(path => dirname(path)))];
    const watcher = watch([...folders(), ...asked.files.filter(name => name !== '-')], {
        cwd: world.cwd, ignoreInitial: true, awaitWriteFinish: { stabilityThreshold: SETTLE_MS, pollInterval: 20 },
        ignored: path => /[\\/](node_modules|\.[^\\/.]+)([\\/]|$)/.test(path.slice(world.cwd.length)),
    });
    let running: Promise<void> = Promise.resolve();
    let waiting = false;
    const changed = (): void => {
        if (waiting) return;
        waiting = true;
        running = running.then(async () => {
            waiting = false;
            const { files, problems } = await filesNow(asked, world, paths);
            if (!await workspace.refresh(files)) return;
            watcher.add(folders());
            world.terminal.say('');
            [...problems, ...workspace.problems()].forEach(problem => world.terminal.say(problem));
            await again();
            world.terminal.say(STANDING_BY);
        }).catch((error: unknown) => { world.terminal.say(String(error)); });
    };
    watcher.on('all', (_event, path) => { if (path.endsWith(SUFFIX)) changed(); });
    world.terminal.say(STANDING_BY);
    await new Promise<void>(done => {
        if (world.stop.aborted) done();
        world.stop.addEventListener('abort', () => done(), { once: true });
    });
    await watcher.close();
    await running;
    return EXIT.clean;
}
const STANDING_BY = 'Watching for changes; stop with Ctrl+C.';

/** What was asked for, as it is on the disk now: files of a folder come and go. */
async function filesNow(asked: Asked, { cwd, disk }: World, paths: readonly string[]): Promise<Found> {
    const found = await findFiles(asked.files.length === 0 ? ['.'] : asked.files.filter(name => name !== '-'), cwd, disk);
    return { ...found, files: [...new Set([...found.files, ...paths])] };
}
