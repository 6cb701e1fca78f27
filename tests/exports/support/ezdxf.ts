import { spawnSync } from 'node:child_process';

interface ReadByEzdxf {
    readonly version: string; readonly units: number; readonly troubles: readonly string[]; readonly counts: Readonly<Record<string, number>>;
    readonly layers: readonly string[]; readonly weights: Readonly<Record<string, number>>; readonly texts: readonly string[];
}

const SCRIPT = new URL('read-dxf.py', import.meta.url).pathname;

/** A Python that has ezdxf, which Debian installs for its own one (`apt install python3-ezdxf`), or null. */
export function pythonWithEzdxf(): string | null {
    return ['python3', '/usr/bin/python3'].find(python => spawnSync(python, ['-c', 'import ezdxf']).status === 0) ?? null;
}

export function readByEzdxf(python: string, paths: readonly string[]): readonly ReadByEzdxf[] {
    const { status, stdout, stderr } = spawnSync(python, [SCRIPT, ...paths], { encoding: 'utf8', maxBuffer: 1e8 });
    if (status !== 0) throw new Error(`ezdxf: ${stderr}`);
    return stdout.trim().split('\n').map(line => JSON.parse(line) as ReadByEzdxf);
}
