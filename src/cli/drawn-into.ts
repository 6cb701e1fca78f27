import { UsageError } from './exit-code.ts';

/**
 * The folder that a command which can also print draws into: the one behind its own option, else that of `--out`, else one called as the option is. Undefined
 * where it prints. Throws a UsageError where `--out` is said and nothing is drawn, or where both name a folder.
 */
export function drawnInto(own: string | true | undefined, out: string | undefined, option: string): string | undefined {
    if (own === undefined && out !== undefined) throw new UsageError(`--out is where files are drawn to, and without --${option} nothing is drawn. Write --${option} --out ${out}`);
    if (typeof own === 'string' && out !== undefined) throw new UsageError(`Two folders to draw into: --${option} ${own} and --out ${out}. Take one of them out.`);
    return own === true ? out ?? option : own;
}
