import type { Stats } from 'node:fs';
import * as node from 'node:fs/promises';

/** What the command line does to the disk. Handed in with the world, so that tests can put a failing disk under every command. */
export type FileSystem = Pick<typeof node, 'open' | 'lstat' | 'stat' | 'realpath' | 'rename' | 'unlink' | 'mkdir' | 'readdir'>;

export const nodeFiles: FileSystem = node;

/** A file as it was found, to be told from another in its place. */
export type FoundFile = Pick<Stats, 'ino' | 'size' | 'mtimeMs' | 'mode' | 'uid' | 'gid'>;
