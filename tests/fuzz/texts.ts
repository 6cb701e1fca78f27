import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A text that the fuzzing begins with, and where in the house it lies. */
export interface Seed { readonly path: string; readonly text: string }

/** The examples are the house; every other file of the tests comes to it as a guest. */
export interface Corpus { readonly house: Readonly<Record<string, string>>; readonly seeds: readonly Seed[] }

/** @param root the folder of the project */
export function corpusOf(root: string): Corpus {
    const house = Object.fromEntries(cofferFilesIn(join(root, 'examples')).map(path => [path, readFileSync(join(root, 'examples', path), 'utf8')]));
    const guests = cofferFilesIn(join(root, 'tests')).map(path => ({ path: 'guest.coffer', text: readFileSync(join(root, 'tests', path), 'utf8') }));
    return { house, seeds: [...Object.entries(house).map(([path, text]) => ({ path, text })), ...guests] };
}

function cofferFilesIn(folder: string): string[] {
    return readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(path => path.endsWith('.coffer')).map(path => path.replaceAll('\\', '/')).sort();
}
