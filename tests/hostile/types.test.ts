import { expect, test } from 'vitest';
import { openTerminal } from '../../src/cli/terminal.ts';
import type { OutputFile } from '../../src/cli/output-folder.ts';
import { paint } from '../../src/report/look.ts';
import { terminalLine, terminalLines, withStyles } from '../../src/text/terminal.ts';
import { EVIL } from './house.ts';

test('what has gone through no gate does not compile where it is printed or written', () => {
    const written: string[] = [];
    const stream = { isTTY: true, write: (text: string) => written.push(text) } as unknown as never;
    const terminal = openTerminal('always', { stdout: stream, stderr: stream, env: {} });
    // @ts-expect-error a plain string
    terminal.result('plain');
    // @ts-expect-error a plain string for a name and for a content
    const file: OutputFile = { name: 'plan.svg', content: '<svg/>' };
    expect(file.name).toBe('plan.svg');
    written.length = 0;
    terminal.say(`${paint.error('wrong:')} ${EVIL}\n${EVIL}`);
    expect(written).toHaveLength(1);
    expect(written[0]!.replace('\u001b[31m\u001b[1mwrong:\u001b[22m\u001b[39m', '')).toMatch(/^[^\p{Cc}\p{Cs}]*\n$/u);
});

test('a line keeps its columns and its styles, and nothing else that a terminal obeys; no letter is taken for a style', () => {
    expect(terminalLine('a   b\tc\r\nd')).toBe('a   b c d');
    const styles = (text: string): string => withStyles(terminalLines([text]), (style, begins) => (begins ? `<${style}>` : `</${style}>`));
    expect(styles(`${paint.strong('x')} ${paint.faint('y')} \u001b[1mz`)).toBe('<strong>x</strong> <faint>y</faint> [1mz\n');
    expect(styles('\u{1f401} \u{1f411}')).toBe('\u{1f401} \u{1f411}\n');
});
