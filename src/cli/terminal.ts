import { styleText } from 'node:util';
import { noPaint, type Paint } from '../report/look.ts';

/** Where results and chatter go. Results are what was asked for; everything else is chatter. */
export interface Terminal {
    /** Standard output. */
    result(text: string): void;
    /** Standard error, a line. */
    say(text: string): void;
    /** Overwrites one line of standard error, or clears it; does nothing where nobody watches. */
    progress(text: string): void;
    readonly paint: Paint;
    /** The same for standard error. */
    readonly chatterPaint: Paint;
}

export type ColorChoice = 'auto' | 'always' | 'never';

export function openTerminal(color: ColorChoice, { stdout, stderr, env }: Pick<NodeJS.Process, 'stdout' | 'stderr' | 'env'>): Terminal {
    const watched = stderr.isTTY === true;
    let shown = '';
    const clear = (): void => { if (shown !== '') stderr.write('\r\u001b[2K'); shown = ''; };
    return {
        result: text => { clear(); stdout.write(text); },
        say: text => { clear(); stderr.write(`${text}\n`); },
        progress: text => {
            if (!watched || text === shown) return;
            clear();
            shown = text;
            stderr.write(text);
        },
        paint: wantsColor(color, stdout.isTTY === true, env) ? colors : noPaint,
        chatterPaint: wantsColor(color, watched, env) ? colors : noPaint,
    };
}

/** `--color` wins over `FORCE_COLOR`, that over `NO_COLOR` (no-color.org), and a terminal over a file. */
export function wantsColor(choice: ColorChoice, isTerminal: boolean, env: NodeJS.ProcessEnv): boolean {
    if (choice !== 'auto') return choice === 'always';
    if (env.FORCE_COLOR !== undefined && env.FORCE_COLOR !== '') return env.FORCE_COLOR !== '0' && env.FORCE_COLOR !== 'false';
    if (env.NO_COLOR !== undefined && env.NO_COLOR !== '') return false;
    return isTerminal && env.TERM !== 'dumb';
}

/** Without asking the stream: that has been done above. */
const style = (...format: ('red' | 'yellow' | 'cyan' | 'bold' | 'dim')[]) => (text: string): string => styleText(format, text, { validateStream: false });

const colors: Paint = { error: style('red', 'bold'), warning: style('yellow', 'bold'), hint: style('cyan'), strong: style('bold'), faint: style('dim') };
