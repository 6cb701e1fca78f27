import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';

const folder = fileURLToPath(new URL('../../examples', import.meta.url));

/** The files of the example houses, and the tables that they name, by their path in `examples`. */
export const EXAMPLES: Readonly<Record<string, string>> = { ...filesIn(folder), ...filesIn(folder, '.csv') };
/** Those of them that are written in the language. */
export const EXAMPLE_PATHS: readonly string[] = Object.keys(EXAMPLES).filter(path => path.endsWith('.coffer'));
/** The house with two of its rooms, for what takes its time for each: those that alternates are of. */
export const TWO_ROOMS: Readonly<Record<string, string>> = Object.fromEntries(Object.entries(EXAMPLES).filter(([path]) => !/parlor|library|garden-house/.test(path)));

/** Every file of a kind below a folder, by its path in it, with forward slashes. */
export function filesIn(at: string, ending = '.coffer'): Record<string, string> {
    const paths = readdirSync(at, { recursive: true, encoding: 'utf8' }).filter(path => path.endsWith(ending)).sort();
    return Object.fromEntries(paths.map(path => [path.replaceAll('\\', '/'), readFileSync(join(at, path), 'utf8')]));
}
