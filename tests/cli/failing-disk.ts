import { rmSync } from 'node:fs';
import type { FileHandle } from 'node:fs/promises';
import { dirname } from 'node:path';
import { nodeFiles, type FileSystem } from '../../src/cli/file-system.ts';

/** What is done to the disk to change it, in the order it is done. */
export type Step = 'open to write' | 'write' | 'sync' | 'chmod' | 'close' | 'rename' | 'unlink' | 'mkdir';
/**
 * Decides at each step: an error's code, `short` for a write that takes half of what it is given, `gone` for a folder that vanishes right
 * before it, `slow` for a step that takes its time, or nothing.
 */
export type Fault = (step: Step, path: string) => string | undefined;

/** The disk with faults where `fault` says. */
export function failingDisk(fault: Fault): FileSystem {
    const at = async (step: Step, path: string): Promise<boolean> => {
        const code = fault(step, path);
        if (code === 'gone') rmSync(dirname(path), { recursive: true, force: true });
        else if (code === 'slow') await new Promise(done => { setTimeout(done, 3); });
        else if (code !== undefined && code !== 'short') throw Object.assign(new Error(`${code}, as the test wants`), { code });
        return code === 'short';
    };
    return {
        ...nodeFiles,
        open: (async (path: string, flags: string, mode?: number) => {
            const writes = typeof flags === 'string' && /[wax+]/.test(flags);
            if (!writes) return nodeFiles.open(path, flags, mode);
            await at('open to write', path);
            return failingHandle(await nodeFiles.open(path, flags, mode), step => at(step, path));
        }) as FileSystem['open'],
        rename: (async (from: string, to: string) => { await at('rename', to); await nodeFiles.rename(from, to); }) as FileSystem['rename'],
        unlink: (async (path: string) => { await at('unlink', path); await nodeFiles.unlink(path); }) as FileSystem['unlink'],
        mkdir: (async (path: string, options: object) => { await at('mkdir', path); return nodeFiles.mkdir(path, options); }) as FileSystem['mkdir'],
    };
}

function failingHandle(handle: FileHandle, at: (step: Step) => Promise<boolean>): FileHandle {
    return new Proxy(handle, {
        get(target, name) {
            const own: unknown = Reflect.get(target, name, target);
            switch (name) {
                case 'write': return async (bytes: Uint8Array, from: number, length: number) => target.write(bytes, from, await at('write') ? Math.ceil(length / 2) : length);
                case 'sync': case 'chmod': return async (...args: unknown[]) => { await at(name); return (own as (...args: unknown[]) => unknown).apply(target, args); };
                // closed all the same, as the system does it
                case 'close': return async () => { await target.close(); await at(name); };
                default: return typeof own === 'function' ? (own as (...args: unknown[]) => unknown).bind(target) : own;
            }
        },
    });
}
