import { execFileSync } from 'node:child_process';
import { readFileSync, readdirSync, statSync } from 'node:fs';

/** What is shipped: how large it is, and how long a real editor says the extension took to be there. */
export default function measure(): Record<string, number> {
    execFileSync(process.execPath, ['src/build/test-editor.mjs', '--only', 'node'], { stdio: 'pipe' });
    const kilobytes = (path: string): number => statSync(path).size / 1000;
    const { figures } = JSON.parse(readFileSync('.cache/editor-suite/results-node.json', 'utf8')) as { figures: Record<string, number> };
    const vsix = readdirSync('dist').find(name => name.endsWith('.vsix'))!;
    const programs = ['extension/main.cjs', 'extension/browser.js', 'server/main.cjs', 'server/browser.js', 'cli/main.js'];
    return {
        'package, kB': kilobytes(`dist/${vsix}`),
        ...Object.fromEntries(programs.map(program => [`${program}, kB`, kilobytes(`.cache/package/dist/${program}`)])),
        'activation, as the editor says, ms': figures['activation']!,
    };
}
