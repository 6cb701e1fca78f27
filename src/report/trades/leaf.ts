import type { JobSettings } from '../../job/model.ts';
import { tapeOf } from '../../job/tape.ts';
import { capitalized } from '../../plain/words.ts';
import { grouped } from '../../plain/groups.ts';
import { printMark } from '../../quantity/print-length.ts';
import { titleOf, type House, type RoomPieces } from '../house.ts';
import type { Leaf, LeafSection } from '../leaf.ts';
import type { TradeTask } from './content.ts';

/** A list for the other trades: room by room, trade by trade. */
export function tradesLeaf(house: House, tasksOf: (room: RoomPieces) => readonly TradeTask[] | undefined): Leaf {
    const rooms = house.rooms.map(room => ({ room, tasks: tasksOf(room) ?? [] })), all = rooms.flatMap(({ tasks }) => tasks);
    const has = (trade: string): boolean => all.some(task => task.trade.startsWith(trade));
    return {
        title: 'FOR THE OTHER TRADES', of: titleOf(house.job), house,
        sections: rooms.flatMap(({ room, tasks }) => sectionsOf(room, tasks, house.job)),
        notes: all.length > 0 ? ['Places are those of centers, from the room\'s north-west corner: along the north wall, then along the east wall. "Before" is the step of the work on this ceiling that it has to be done by; have the work inspected before it is closed in.'] : [],
        cautions: [
            ...has('electrician') ? ['Wiring, boxes and recessed lights: a licensed electrician, by the local code. Boxes stay reachable (NEC 314.29, from memory); a light that is not marked IC keeps 1/2" off wood (NEC 410.116, from memory); lamps by the maker\'s label.'] : [],
            ...has('sprinkler') ? ['Sprinklers: a licensed sprinkler contractor and the code in force (NFPA 13 or 13D). Beams are obstructions: heads that were right under a flat ceiling may not be between beams. Nothing is hung from the pipes, and no head is painted or covered.'] : [],
            ...has('alarm') ? ['Smoke alarms: the code in force (NFPA 72) and the maker. Where beams are deeper than a tenth of the ceiling\'s height it may want other places or more of them (from memory). No alarm is painted or covered; test them when the work is done.'] : [],
            ...has('HVAC') ? ['Registers: whoever balances the air says whether a beam beside one may turn its throw.'] : [],
            ...has('framer') ? ['Before a joist is touched or a block is fastened, know what runs between them. No joist is notched or cut but as the code and an engineer allow.'] : [],
        ],
    };
}

function sectionsOf({ room }: RoomPieces, tasks: readonly TradeTask[], job: JobSettings): LeafSection[] {
    const name = `room ${room.name}`;
    if (tasks.length === 0) return [{ heading: name, words: ['Nothing is said of what its ceiling holds, and nothing is wanting of its joists.'] }];
    return [...grouped(tasks, ({ trade }) => trade)].map(([trade, own]) => ({
        heading: `${name}: ${trade}`, words: [],
        table: {
            head: ['what', 'where it is', 'what to do', 'to', 'before', 'why'],
            rows: own.map(task => [`${task.of} (${task.kind.replace('-', ' ')})`, placeWords(task.at, job), capitalized([task.does, task.what].filter(Boolean).join(', ')), placeWords(task.to, job), task.does === 'leaves it' ? '' : task.before, task.why]),
            figures: [],
        },
    }));
}

function placeWords(at: TradeTask['at'], job: JobSettings): string {
    return at ? `${printMark(Math.round(at.x), tapeOf(job))} east, ${printMark(Math.round(at.y), tapeOf(job))} south` : '';
}
