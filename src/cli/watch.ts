import { dirname, resolve } from 'node:path';
import { watch } from 'chokidar';
import { EXIT, type ExitCode } from './exit-code.ts';
import { findFiles, SUFFIX, type Found } from './find-files.ts';
import type { Asked } from './input.ts';
import type { World } from './world.ts';
import type { Workspace } from './workspace.ts';

interface Watching {
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
    const changes = new Changes();
    watcher.on('all', (_event, path) => { if (path.endsWith(SUFFIX) || workspace.isTable(resolve(world.cwd, path))) changes.come(); });
    let isNews = true;
    const next = (stop: AbortSignal): Promise<boolean> => {
        if (isNews) world.terminal.say('Watching for changes; stop with Ctrl+C.');
        isNews = false;
        return changes.next(stop);
    };
    const look = async (): Promise<void> => {
        const { files, problems } = await filesNow(asked, world, paths);
        if (!await workspace.refresh(files)) return;
        watcher.add(folders());
        world.terminal.say('');
        [...problems, ...workspace.problems(), ...await workspace.leadingOut()].forEach(problem => world.terminal.say(problem));
        isNews = true;
        await again();
    };
    while (await next(world.stopped))
        await look().catch((error: unknown) => { world.terminal.say(String(error)); });
    await watcher.close();
    return EXIT.clean;
}

/** Changes that are waited for; those that come while nobody waits are one. */
class Changes {
    private has = false;
    private tell = (): void => {};

    come(): void {
        this.has = true;
        this.tell();
    }

    /** True when there is a change, false when it is told to stop. */
    next(stop: AbortSignal): Promise<boolean> {
        return new Promise(done => {
            const settle = (): void => {
                if (!this.has && !stop.aborted) return;
                stop.removeEventListener('abort', settle);
                this.tell = () => {};
                this.has = false;
                done(!stop.aborted);
            };
            this.tell = settle;
            stop.addEventListener('abort', settle);
            settle();
        });
    }
}

/** What was asked for, as it is on the disk now: files of a folder come and go. */
async function filesNow(asked: Asked, { cwd, disk }: World, paths: readonly string[]): Promise<Found> {
    const found = await findFiles(asked.files.length === 0 ? ['.'] : asked.files.filter(name => name !== '-'), cwd, disk);
    return { ...found, files: [...new Set([...found.files, ...paths])] };
}
