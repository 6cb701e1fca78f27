import { spawnSync } from 'node:child_process';
import { expect } from 'vitest';

/** Node makes no pipe that has a name; on a machine without this command the cases of pipes are skipped. */
export const hasPipes = spawnSync('mkfifo').error === undefined;

/** Makes a pipe that nobody ever writes to. */
export function makePipe(path: string): void {
    expect(spawnSync('mkfifo', [path]).status).toBe(0);
}
