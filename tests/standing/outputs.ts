import { existsSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { PAGE_FORMATS, PRINTED_PAGES } from '../../src/cli/commands/print.ts';
import { LEAVES } from '../../src/pages/leaves/pages.ts';
import { PAGES } from '../../src/pages/pages.ts';
import { cofferwright } from '../cli/world.ts';

/** Everything the command line makes of a room: the command, and where its files go, if it writes any. */
export const OUTPUTS: readonly { readonly argv: readonly string[]; readonly folder?: string; readonly forClient?: boolean }[] = [
    ...['cut-list', 'boards', 'saw', 'order', 'estimate'].flatMap(command => ['human', 'json', 'csv'].map(format => ({
        argv: [command, '--format', format, ...command === 'cut-list' ? [] : ['--quick']],
    }))),
    ...['joists', 'bench', 'measure', 'walls', 'trades', 'seasons', 'survey', 'put-up'].flatMap(command => ['human', 'json', 'csv'].map(format => ({ argv: [command, '--format', format] }))),
    ...['human', 'json', 'csv'].map(format => ({ argv: ['suggest', '--format', format] })),
    ...['human', 'json'].map(format => ({ argv: ['dry-fit', '--format', format] })),
    { argv: ['saw', '--quick', '--sheets', 'sheets'], folder: 'sheets' },
    { argv: ['labels', '--quick', '--out', 'labels'], folder: 'labels' },
    ...['svg', 'dxf'].map(format => ({ argv: ['draw', '--format', format, '--out', 'drawn'], folder: 'drawn' })),
    ...['gltf', 'ifc', 'svg'].map(format => ({ argv: ['model', '--format', format, '--out', 'models'], folder: 'models' })),
    ...Object.values(PAGES).filter(({ kind }) => PRINTED_PAGES.some(page => page === kind)).flatMap(({ kind, exports }) => PAGE_FORMATS
        .filter(format => exports[format])
        .map(format => ({ argv: ['print', '--page', kind, '--format', format, '--quick', '--out', 'pages'], folder: 'pages' }))),
    ...Object.keys(LEAVES).flatMap(kind => ['html', 'csv'].map(format => ({ argv: ['print', '--page', kind, '--format', format, '--out', 'pages'], folder: 'pages' }))),
    ...['human', 'json', 'csv'].map(format => ({ argv: ['invoice', '--number', '3', '--format', format] })),
    { argv: ['invoice', '--number', '3', '--format', 'html', '--out', 'invoices'], folder: 'invoices', forClient: true },
    { argv: ['bid', '--quick', '--format', 'html', '--out', 'bids'], folder: 'bids', forClient: true },
];

interface Made { readonly code: number; readonly texts: readonly { readonly name: string; readonly text: string }[]; readonly err: string }

/** The list of what was made there, which is no output. */
export const MADE = '.cofferwright.sha256';

/** What one of them makes: what it prints, or its files. Fonts are left out of the texts. */
export async function made(cwd: string, { argv, folder }: (typeof OUTPUTS)[number]): Promise<Made> {
    const { code, out, err } = await cofferwright(cwd, argv);
    if (folder === undefined) return { code, err, texts: [{ name: argv.join(' '), text: out }] };
    const at = join(cwd, folder);
    const files = existsSync(at) ? readdirSync(at).filter(name => name !== MADE && statSync(join(at, name)).isFile()) : [];
    const texts = files.sort().map(name => ({ name, text: readFileSync(join(at, name), 'utf8').replaceAll(/url\(data:[^)]*\)/g, '') }));
    rmSync(at, { recursive: true, force: true });
    return { code, err, texts };
}

/** Words of a file, whatever is around them: escaped, broken into lines, split into runs of letters. */
export function wordsIn(text: string): string {
    return text.replaceAll(/<[^>]*>/g, ' ').replaceAll('&quot;', '"').replaceAll('&#39;', "'").replaceAll('&gt;', '>').replaceAll('&amp;', '&').replaceAll('\\"', '"').replaceAll(/\s+/g, ' ');
}
