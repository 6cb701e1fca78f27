import type { Statement } from '../job/statement.ts';
import { grouped } from '../plain/groups.ts';
import type { RoomChange, StatedFile } from './model.ts';
import { pairOnly } from './pair-by.ts';

/** What blocks of the state after were called before, `stock pine-1x6`; a name stands for one block of a file. */
export class Renamed {
    /** By address of the file and head of the block. */
    private readonly was = new Map<string, string>();
    private readonly stocks = new Map<string, string>();
    private readonly rooms = new Map<string, string>();

    constructor(before: readonly StatedFile[], after: readonly StatedFile[], rooms: readonly Pick<RoomChange, 'before' | 'after'>[]) {
        for (const { before: old, after: now } of rooms) {
            if (!old || !now || old.room.name === now.room.name) continue;
            this.was.set(`${now.room.at.uri} room ${now.room.name}`, `room ${old.room.name}`);
            this.rooms.set(now.room.name, old.room.name);
        }
        for (const { before: old, after: now } of renamedBlocks(before, after)) {
            this.was.set(`${now.uri} ${now.head}`, old.head);
            if (now.kind === 'stock') this.stocks.set(nameOf(now.head), nameOf(old.head));
        }
    }

    /** The blocks that a statement stands in, as they were called before. */
    withinBefore({ within: [block, ...inner], at: { uri } }: Statement): readonly string[] {
        return block === undefined ? [] : [this.was.get(`${uri} ${block}`) ?? block, ...inner];
    }

    /** What it says something of, by the old name of the room that it is in: an alternate says `den.grid.coffers-north`. */
    whatBefore({ within: [block = ''], what }: Statement): string {
        const [room = '', ...rest] = what.split('.'), was = this.rooms.get(room);
        return was !== undefined && block.startsWith('alternate ') ? [was, ...rest].join('.') : what;
    }

    /** Of a name that is in both states: the same. */
    stockBefore(name: string): string {
        return this.stocks.get(name) ?? name;
    }
}

interface Block { readonly kind: string; readonly head: string; readonly uri: string; readonly says: string }

/**
 * Blocks under another name: nowhere in the state before one of this name, in the other none of the old, and word for word the same in them; where
 * several are, nobody can tell which is which. Rooms are not looked at here: they are known by more than by their words.
 */
function renamedBlocks(before: readonly StatedFile[], after: readonly StatedFile[]): { readonly before: Block; readonly after: Block }[] {
    const was = blocksOf(before), is = blocksOf(after);
    const notIn = (others: readonly Block[], list: readonly Block[]): Block[] => {
        const heads = new Set(others.map(({ head }) => head));
        return list.filter(({ head }) => !heads.has(head));
    };
    return pairOnly(notIn(is, was), notIn(was, is), ({ kind, says }) => `${kind} ${says}`).pairs;
}

function blocksOf(files: readonly StatedFile[]): Block[] {
    return files.filter(({ isTable }) => !isTable).flatMap(({ statements }) => [...grouped(statements, ({ within: [head] }) => head ?? '')].flatMap(blockOf));
}

function blockOf([head, own]: [string, Statement[]]): Block[] {
    const [kind = '', name] = head.split(' ');
    if (name === undefined || kind === 'room') return [];
    const says = own.map(({ within, what, mark }) => JSON.stringify([within.slice(1), what, mark])).sort();
    return [{ kind, head, uri: own[0]!.at.uri, says: JSON.stringify(says) }];
}

function nameOf(head: string): string {
    return head.slice(head.indexOf(' ') + 1);
}
