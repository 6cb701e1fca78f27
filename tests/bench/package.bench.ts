import { execFileSync } from 'node:child_process';
import { readFileSync, readdirSync, statSync } from 'node:fs';

/** What is shipped: how large it is, and what a real editor measures of it: how long it takes to be there, and to repaint a pane. */
export default function measure(): Record<string, number> {
    execFileSync(process.execPath, ['src/build/test-editor.mjs', '--only', 'node'], { stdio: 'pipe' });
    const kilobytes = (path: string): number => statSync(path).size / 1000;
    const { figures } = JSON.parse(readFileSync('.cache/editor-suite/results-node.json', 'utf8')) as { figures: Record<string, number> };
    const vsix = readdirSync('dist').find(name => name.endsWith('.vsix'))!;
    const programs = ['extension/main.cjs', 'extension/browser.js', 'server/main.cjs', 'server/browser.js', 'cli/main.js', 'cli/command.js', ...readdirSync('.cache/package/dist/panes').filter(name => name.endsWith('.js')).map(name => `panes/${name}`)];
    return {
        'package, kB': kilobytes(`dist/${vsix}`),
        ...Object.fromEntries(programs.map(program => [`${program}, kB`, kilobytes(`.cache/package/dist/${program}`)])),
        'activation, as the editor says, ms': figures['activation']!,
        ...Object.fromEntries(Object.entries(figures).filter(([what]) => what !== 'activation').map(([what, value]) => [what.startsWith('memory') ? what : `${what}, ms`, value])),
    };
}
