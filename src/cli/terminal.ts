import { styleText } from 'node:util';
import { paint, type Paint } from '../report/look.ts';
import type { UsageError } from './exit-code.ts';
import type { Printed } from '../text/fit.ts';
import { terminalLine, withStyles, type Style } from '../text/terminal.ts';

/** Where results and chatter go. Results are what was asked for; everything else is chatter. */
export interface Terminal {
    /** Standard output. */
    result(text: Printed): void;
    /** Standard error, a line; what is in it is cleaned. */
    say(line: string): void;
    /** Overwrites one line of standard error, or clears it; does nothing where nobody watches. */
    progress(text: string): void;
    readonly paint: Paint;
}

export type ColorChoice = 'auto' | 'always' | 'never';

export function openTerminal(color: ColorChoice, { stdout, stderr, env }: Pick<NodeJS.Process, 'stdout' | 'stderr' | 'env'>): Terminal {
    const watched = stderr.isTTY === true;
    let shown = '';
    const ofResult = wantsColor(color, stdout.isTTY === true, env) ? codeOf : none, ofChatter = wantsColor(color, watched, env) ? codeOf : none;
    const clear = (): void => { if (shown !== '') stderr.write('\r\u001b[2K'); shown = ''; };
    return {
        result: text => { clear(); stdout.write(withStyles(text, ofResult)); },
        say: line => { clear(); stderr.write(`${withStyles(terminalLine(line), ofChatter)}\n`); },
        progress: text => {
            if (!watched || text === shown) return;
            clear();
            shown = text;
            stderr.write(withStyles(terminalLine(text), none));
        },
        paint,
    };
}

/** `--color` wins over `FORCE_COLOR`, that over `NO_COLOR` (no-color.org), and a terminal over a file. */
export function wantsColor(choice: ColorChoice, isTerminal: boolean, env: NodeJS.ProcessEnv): boolean {
    if (choice !== 'auto') return choice === 'always';
    if (env.FORCE_COLOR !== undefined && env.FORCE_COLOR !== '') return env.FORCE_COLOR !== '0' && env.FORCE_COLOR !== 'false';
    if (env.NO_COLOR !== undefined && env.NO_COLOR !== '') return false;
    return isTerminal && env.TERM !== 'dumb';
}

const FORMATS = { error: ['red', 'bold'], warning: ['yellow', 'bold'], hint: ['cyan'], strong: ['bold'], faint: ['dim'] } as const satisfies Record<Style, readonly string[]>;
const none = (): string => '';

/** What a terminal is told before and after words of a style; without asking the stream, that has been done above. */
function codeOf(style: Style, begins: boolean): string {
    const [before, after] = styleText([...FORMATS[style]], '|', { validateStream: false }).split('|');
    return begins ? before! : after!;
}

/** What was asked wrongly or cannot be had. */
export function complain({ message }: UsageError, terminal: Terminal): void {
    terminal.progress('');
    terminal.say(`${terminal.paint.error('cofferwright:')} ${message}`);
}
