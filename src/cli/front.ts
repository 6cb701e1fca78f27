import { join } from 'node:path';
import { counted } from '../plain/words.ts';
import { EXIT, UsageError, worst, type ExitCode } from './exit-code.ts';
import { SIGNALS, type SignalName } from './interrupts.ts';
import type { Answered, Asked, ToCommand, ToFront } from './messages.ts';
import { OutputFolder } from './output-folder.ts';
import { leftOf, type Act, type Performance } from './rehearsal.ts';
import { replaceFile } from './replace-file.ts';
import { complain, type ColorChoice, type Terminal } from './terminal.ts';
import type { World } from './world.ts';

export interface FrontWays extends Pick<World, 'cwd' | 'disk' | 'readStdin'> {
    openTerminal(color: ColorChoice): Terminal;
    /** Tells the thread of the command. */
    tell(message: ToCommand): void;
    /** Becomes the editor's server. */
    serve(): void;
    /** Ends the thread of the command, which has nothing more to say. */
    endThread(): void;
    /** Ends the program. `stopped`: by what, and how long it may take at most. */
    leave(code: ExitCode, stopped?: { readonly signal: SignalName; readonly within: number }): void;
    readonly times: Times;
}

/** After a signal, in milliseconds. */
interface Times {
    /** So long the command may take to end its work with all that is known; then what was ready beforehand is taken. */
    readonly end: number;
    /** So long it may take where nothing is ready. */
    readonly first: number;
    /** After that no further file is begun. */
    readonly late: number;
    /** After that the one that is being written is given up. */
    readonly giveUp: number;
    /** After that the system ends the program. */
    readonly over: number;
}

/** With what the system takes to end it less than the 0.2 s that a person takes for at once. */
export const TIMES: Times = { end: 25, first: 80, late: 90, giveUp: 105, over: 120 };

const MOST_NAMED = 5;

/**
 * Does what the thread of the command tells: shows, writes, reads standard input. It computes nothing, so that it hears whoever stops the program
 * at any moment. A command that looks for cheaper boards, or has done so, is then told to end its work with the best that is known; where that takes too long,
 * what was ready beforehand is shown and written. Files that there is no time for are named.
 */
export class Front {
    private readonly queue: Act[] = [];
    private readonly done: Act[] = [];
    private readonly folders = new Map<string, OutputFolder>();
    private readonly late = new AbortController();
    private terminal: Terminal | undefined;
    private code: ExitCode = EXIT.clean;
    private ready: Performance | undefined;
    private ended: ExitCode | undefined;
    private searches = false;
    private isStopped = false;
    /** What is being done. */
    private work = Promise.resolve();
    private replacing: Promise<void> | undefined;
    private isOver = false;
    private progress = '';
    private tellEnd = (): void => {};
    private readonly end = new Promise<void>(resolve => { this.tellEnd = resolve; });

    constructor(private readonly ways: FrontWays) {}

    hear(message: ToFront): void {
        if (this.isOver) return;
        if ('color' in message) this.terminal ??= this.ways.openTerminal(message.color);
        else if ('progress' in message) this.showProgress(message.progress);
        else if ('act' in message) {
            this.queue.push(message.act);
            this.work = this.work.then(() => this.workOn());
        }
        else if ('searches' in message) this.searches = true;
        else if ('ready' in message) {
            this.ready = message.ready;
            this.showProgress(this.progress);
        }
        else if ('asked' in message) void this.answer(message.asked).then(answered => { this.ways.tell({ id: message.id, answered }); });
        else if ('serve' in message) this.ways.serve();
        else {
            this.ended = message.end;
            this.tellEnd();
            this.work = this.work.then(() => { if (!this.isStopped && !this.isOver) this.ways.leave(worst(message.end, this.code)); });
        }
    }

    /** Ends the program in a moment. Whoever asks once more does not wait for that. */
    async stop(signal: SignalName): Promise<void> {
        const { times, tell, endThread } = this.ways, began = performance.now();
        const leave = (): void => { this.ways.leave(SIGNALS[signal], { signal, within: times.over - (performance.now() - began) }); };
        if (this.isStopped) return leave();
        this.isStopped = true;
        setTimeout(() => { this.late.abort(); }, times.late);
        let rest = this.queue;
        const over = (): void => {
            if (this.isOver) return;
            this.isOver = true;
            this.nameUnwritten(rest);
            leave();
        };
        const givenUp = setTimeout(over, times.giveUp);
        if (this.searches) {
            tell({ stop: signal });
            await Promise.race([this.end, after(this.ready ? times.end : times.first)]);
            endThread();
            await this.work;
            const left = this.ended === undefined && this.ready ? leftOf(this.ready, this.done) : undefined;
            if (left) rest = [...left];
            else if (this.ended === undefined) this.terminal?.say(this.done.length + rest.length === 0 ? NOTHING_READY : NOT_ALL_READY);
        } else {
            endThread();
            this.late.abort();
            await this.work;
            await this.replacing?.catch(() => {});
        }
        this.terminal?.progress('');
        while (!this.late.signal.aborted && !this.isOver && rest.length > 0) await this.perform(rest.shift()!);
        clearTimeout(givenUp);
        over();
    }

    private showProgress(text: string): void {
        this.progress = text;
        if (!this.isStopped) this.terminal?.progress(text === '' || this.ready === undefined ? text : `${text} Ctrl+C takes the best so far.`);
    }

    private async workOn(): Promise<void> {
        if (!this.isStopped && !this.isOver && this.queue.length > 0) await this.perform(this.queue.shift()!);
    }

    private async perform(act: Act): Promise<void> {
        this.done.push(act);
        if ('say' in act) this.terminal!.say(act.say);
        else if ('result' in act) this.terminal!.result(act.result);
        else {
            const { options, files, from } = act.write, { cwd, disk } = this.ways;
            const folder = this.folders.get(options.out) ?? new OutputFolder(options, { cwd, disk, terminal: this.terminal! }, this.late.signal);
            this.folders.set(options.out, folder);
            try {
                await folder.write(files, from);
            } catch (error) {
                if (!(error instanceof UsageError)) throw error;
                complain(error, this.terminal!);
                // nothing is done after that
                if (this.isStopped) return;
                this.isOver = true;
                return this.ways.leave(worst(EXIT.usage, this.code));
            }
            this.code = worst(this.code, folder.code);
        }
    }

    private async answer(asked: Asked): Promise<Answered> {
        try {
            if (asked === 'stdin') return { bytes: await this.ways.readStdin() };
            await (this.replacing = replaceFile(this.ways.disk, asked.replace, asked.content, asked.before));
            return { done: true };
        } catch (error) {
            const { message, code } = error as NodeJS.ErrnoException;
            return { failed: message, ...code !== undefined && { code } };
        }
    }

    private nameUnwritten(rest: readonly Act[]): void {
        const names = [...this.folders.values()].flatMap(folder => folder.unwritten);
        for (const act of rest) if ('write' in act) names.push(...act.write.files.map(({ name }) => join(act.write.options.out, name)));
        if (names.length === 0) return;
        const more = names.length - MOST_NAMED;
        this.terminal?.say(`Stopped before it was written: ${names.slice(0, MOST_NAMED).join(', ')}${more > 0 ? ` and ${counted(more, 'more file')}` : ''}.`);
    }
}

const NOTHING_READY = 'Stopped before the first plan could be shown.';
const NOT_ALL_READY = 'Stopped before the rest could be shown.';

function after(ms: number): Promise<void> {
    return new Promise(resolve => { setTimeout(resolve, ms); });
}
